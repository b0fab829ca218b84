import { describe, expect, it } from 'vitest';
import { readTimes, type TimesRead } from '../../../src/records/table/clocked.js';
import { minutesIn } from '../../../src/records/table/minutes.js';
import { dayText, tableLines } from '../../../src/records/table/table.js';

type Rest = Parameters<typeof readTimes> extends [unknown, ...infer Others] ? Others : never;
const read = (text: string, ...rest: Rest): TimesRead =>
  readTimes(tableLines(new TextEncoder().encode(text)), ...rest);
const used = ({ steps }: TimesRead): number => steps.reduce((sum, { minutes }) => sum + minutes.length, 0);

describe('a table of times', () => {
  it('is read in the dialects of Europe and America, with and without a mark and carriage returns', () => {
    const american = read('step,minutes\nprime,"1,042.5"\nprime,12.5\n'),
      european = read('\ufeffstep;minutes\r\nprime;1.042,5\r\nprime;12,5\r\n');
    for (const { steps } of [american, european])
      expect(steps.map(({ step, minutes }) => [step, minutes])).toEqual([['prime', [1042.5, 12.5]]]);
  });

  it('takes minutes with a unit and by the clock', () => {
    const all = (...texts: string[]) => texts.map((text) => minutesIn(text, '.'));
    expect(all('42.5', '1.5 h', '90 s', '1:30', '1:30:30', '-0:10', '7 min')).toEqual([
      42.5, 90, 1.5, 90, 90.5, -10, 7,
    ]);
    expect(minutesIn('1,5 h', ',')).toBe(90);
    expect(all('', 'abc', '1:75', '5 days', '1 2')).toEqual([NaN, NaN, NaN, NaN, NaN]);
  });

  it('leaves out what is no time, tells each by line, and loses no row', () => {
    const found = read(
      'unit,step,minutes\n1,prime,40\n1,prime,40\n2,prmie,41\n3,,42\n4,prime,abc\n5,prime,-3\n6,prime,0\n7,prime,44\n',
      {},
      ['prime', 'wash'],
    );
    expect(found.rows).toBe(used(found) + found.leftOut.length);
    expect(found.steps.map(({ minutes, lines }) => [minutes, lines])).toEqual([
      [
        [40, 44],
        [2, 9],
      ],
    ]);
    expect(found.leftOut.map(({ line, kind }) => [line, kind])).toEqual([
      [3, 'duplicate'],
      [4, 'unknown step'],
      [5, 'no step'],
      [6, 'unreadable number'],
      [7, 'negative time'],
      [8, 'no time at all'],
    ]);
    expect(found.oddities[1].told).toBe('The scenario has no step "prmie", did you mean "prime"? Left out.');
  });

  it('keeps equal times of which nothing says that they are one', () => {
    expect(used(read('step,minutes\nprime,40\nprime,40\n'))).toBe(2);
  });

  it('reads dates in three forms, and none of which day and month may be either', () => {
    const at = (...dates: string[]) =>
      read(`step,minutes,date\n${dates.map((date) => `prime,40,${date}`).join('\n')}\n`);
    const days = ({ steps }: TimesRead) =>
      steps[0].at.map((each) => (Number.isNaN(each) ? '' : dayText(each)));
    expect(days(at('2027-08-16', '16.08.2027', '2027-08-16 14:30'))).toEqual(Array(3).fill('2027-08-16'));
    expect(days(at('08/16/2027', '08/05/2027'))).toEqual(['2027-08-16', '2027-08-05']);
    const unsure = at('08/05/2027');
    expect(days(unsure)).toEqual(['']);
    expect(unsure.oddities).toMatchObject([{ kind: 'unreadable time', rule: 'taken as it is', lines: [2] }]);
  });

  it('refuses what can be read in two ways, or has no such column, with what may be meant', () => {
    expect(() => read('step,minutes\nprime,12.5\nprime,"12,5"\n')).toThrow('one decimal mark');
    expect(() => read('step;minutes\nprime;1,234\n')).toThrow('got 1,234');
    expect(() => read('setp,minutes\nprime,1\n')).toThrow('did you mean "setp"?');
    expect(() => read('step,minutes\nprime,1\n', { by: ['cab'] })).toThrow('expected a column cab');
    expect(() => read('step,minutes\n')).toThrow('at least one row');
  });
});
