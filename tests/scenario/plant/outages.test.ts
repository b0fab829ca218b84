import { describe, expect, it } from 'vitest';
import type { Model } from '../../../src/flow/model/model.js';
import { compile } from '../../../src/scenario/compile.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';

const read = (outages: string) =>
  readScenario(
    `scenario: A ferry that is laid up
programme: { start: 2027-03-01, quantity: 60, rate: { per day: 1 }, until: 2027-06-30 }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites:
  a: { zone: Europe/Oslo, calendar: days, stations: { press: {} } }
  b: { zone: Europe/Oslo, calendar: days, stations: { fit: { buffer: 1 } } }
lanes: { ferry: { from: a, to: b, trucks: 1, capacity: 1, drive: 2 h } }
outages: ${outages}
route: [{ step: press, at: press, work: 1 h }, { lane: ferry }, { step: fit, at: fit, work: 1 h }]
`,
    'ferry.yaml',
    () => '',
  );
const model = (outages: string): Model => {
  const { scenario, problems } = read(outages);
  if (scenario === undefined) throw new Error(problems.map(sayProblem).join('\n'));
  return compile(scenario);
};
const said = (outages: string): string =>
  (read(outages).problems ?? []).map((each) => sayProblem(each).replace(/^\S+ /, '')).join('\n');

describe('an outage that comes again', () => {
  it('is each of them written out, over the change of the clocks too', () => {
    // Clocks go forward in Oslo on 28 March 2027.
    const again = model('[{ lanes: ferry, from: 2027-03-09, to: 2027-03-10, every: 14 days, times: 4 }]'),
      written = model(
        `[${['03-09', '03-23', '04-06', '04-20']
          .map((day) => {
            const to = `2027-${day.slice(0, 3)}${String(Number(day.slice(3)) + 1).padStart(2, '0')}`;
            return `{ lanes: ferry, from: 2027-${day}, to: ${to} }`;
          })
          .join(', ')}]`,
      );
    expect(again.outages).toEqual(written.outages);
    expect(again.outages.count).toBe(4);
  });

  it('goes on to the end of the run where no number is given, and has its clock times', () => {
    const { outages, programme } = model(
        '[{ stations: press, from: 2027-03-02 08:00, to: 2027-03-02 10:00, every: 7 days, note: weekly check }]',
      ),
      inRun = outages.from.filter((from) => from < programme.end);
    // Tuesdays from 2 March to 29 June.
    expect(inRun.length).toBe(18);
    expect([...outages.from].every((from, i) => outages.to[i] - from === 120)).toBe(true);
    expect(new Set(outages.names)).toEqual(new Set(['weekly check']));
  });

  it.each([
    [
      '[{ lanes: ferry, from: 2027-03-09, to: 2027-03-10, every: 36 h }]',
      /every: whole days, such as "14 days"/,
    ],
    [
      '[{ lanes: ferry, from: 2027-03-09, to: 2027-03-12, every: 3 days }]',
      /every: at least the 4 days that it lasts; got 3 days/,
    ],
    [
      '[{ lanes: ferry, from: 2027-03-09, to: 2027-03-10, times: 3 }]',
      /times: every beside it, such as every: 14 days; got none/,
    ],
    [
      '[{ lanes: ferry, from: 2027-03-09, to: 2027-03-10, every: 14 days, times: 1 }]',
      /times: a whole number from 2 to 1,000/,
    ],
  ])('%s is refused', (outages, expected) => {
    expect(said(outages)).toMatch(expected);
  });
});
