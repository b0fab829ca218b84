import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import { unusualAmong, unusualClause } from '../../../src/study/answer/unusual-weeks.js';
import { unusualWeeks } from '../../../src/study/programme/unusual-weeks.js';
import { planned } from '../../../src/study/sample/planned.js';

/** Two sites from Monday 2027-03-01 on, ISO week 9; buckets are weeks from there. */
function plan({ days = '', late = '', outages = '', programme = 'until: 2027-05-03' } = {}) {
  const { scenario, problems } = readScenario(
    `
scenario: weeks
programme: { start: 2027-03-01, zone: UTC, rate: { per day: 2 }, ${programme} }
calendars:
  days: { hours: ["06:00-14:00"]${days} }
  late: { hours: ["14:00-22:00"], on: Mon-Thu${late} }
sites:
  hall: { zone: UTC, calendar: days, stations: { bench: { buffer: 2 }, oven: { unattended: true } } }
  yard: { zone: UTC, calendar: late, stations: { stand: {} } }
lanes: { road: { from: hall, to: yard, trucks: 1, capacity: 1, drive: 1 h } }
outages: [${outages}]
route:
  - { step: fit, at: bench, work: 1 h }
  - { step: bake, at: oven, process: 1 h }
  - { lane: road }
  - { step: look, at: stand, work: 1 h }
`,
    'weeks.yaml',
    () => '',
  );
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return planned(scenario, compile(scenario));
}
const weeks = (of: ReturnType<typeof plan>, first = 1, last = 6) =>
  unusualWeeks(of, first, last).map(({ label, workingDays, causes }) => [
    label,
    workingDays,
    ...causes.map(({ kind, what }) => `${kind} ${what}`),
  ]);

describe('weeks that are not like the others', () => {
  it('have a holiday of the first site, if it lies in the weeks asked for', () => {
    const with17 = plan({ days: ', holidays: [2027-03-17, 2027-04-20]' });
    // 17 March 2027 is the Wednesday of week 11, bucket 2; 20 April lies in week 16, bucket 7.
    expect(weeks(with17)).toEqual([['2027-W11', 4, 'holiday 2027-03-17']]);
    expect(weeks(with17, 3, 6)).toEqual([]);
    expect(weeks(plan())).toEqual([]);
    // A Saturday off is no day less.
    expect(weeks(plan({ days: ', holidays: [2027-03-20]' }))).toEqual([]);
  });

  it('have a shutdown, by its note, over as many weeks as it takes', () => {
    expect(
      weeks(plan({ days: ', shutdowns: [{ from: 2027-03-18, to: 2027-03-29, note: new oven }]' })),
    ).toEqual([
      ['2027-W11', 3, 'shutdown "new oven"'],
      ['2027-W12', 0, 'shutdown "new oven"'],
      ['2027-W13', 4, 'shutdown "new oven"'],
    ]);
  });

  it('have a day off of another site, with its calendar, and one of both sites once', () => {
    const late = ', holidays: [2027-03-17, 2027-03-25, 2027-04-02]';
    // The 2nd of April is a Friday, on which the yard does not work.
    expect(weeks(plan({ days: ', holidays: [2027-03-17]', late }))).toEqual([
      ['2027-W11', 4, 'holiday 2027-03-17'],
      ['2027-W12', 5, 'holiday 2027-03-25 in late'],
    ]);
  });

  it('have an outage in the working time of what it closes', () => {
    const outage = (what: string, from: string, to: string): string =>
      `{ ${what}, from: ${from}, to: ${to}, note: works }`;
    const of = (...all: string[]) => weeks(plan({ outages: all.join(', ') }));
    expect(of(outage('stations: bench', '2027-03-19', '2027-03-22'))).toEqual([
      ['2027-W11', 5, 'outage "works"'],
      ['2027-W12', 5, 'outage "works"'],
    ]);
    // A Saturday is nothing to the bench, but to the oven, which is always on; a Friday nothing to the stand.
    expect(of(outage('stations: bench', '2027-03-20', '2027-03-21'))).toEqual([]);
    expect(of(outage('stations: oven', '2027-03-20', '2027-03-20'))).toHaveLength(1);
    expect(of(outage('stations: stand', '2027-03-19', '2027-03-19'))).toEqual([]);
    // On the lane trucks load in the hours of the hall, from 06:00 to 14:00.
    expect(of(outage('lanes: road', '2027-03-18 14:00', '2027-03-18 22:00'))).toEqual([]);
    expect(of(outage('lanes: road', '2027-03-18 13:00', '2027-03-18 22:00'))).toHaveLength(1);
  });

  it('are in a steady-state run parts with an outage or days off', () => {
    // 240 hours in 60 parts of four: the second day, a Tuesday, is parts 7 to 12, of which the works are in
    // 8 and 9 (04:00-12:00) and 10 (12:00-16:00).
    const steady = plan({
      programme: 'length: 240 h',
      outages: '{ stations: bench, from: 2027-03-02, to: 2027-03-02 }',
    });
    expect(unusualWeeks(steady, 0, 59).map(({ label, usualDays }) => [label, usualDays])).toEqual([
      ['part 8', null],
      ['part 9', null],
      ['part 10', null],
    ]);
  });
});

describe('what is said of them', () => {
  const of = plan({
    days: ', holidays: [2027-03-17, "2027-03-29 to 2027-04-09"]',
    outages: '{ stations: bench, from: 2027-04-14, to: 2027-04-14, note: mains }',
  });
  const shipping = (...units: number[]) => ({ shippedIn: Int32Array.from([0, ...units, 0]) });

  it('is which they are and why, and what the other weeks ship', () => {
    // Buckets 1 to 6, weeks 10 to 15: the others are 10 and 12, ten working days; 18 and 20 units.
    const found = unusualAmong(
      of,
      { first: 1, last: 6 },
      [shipping(9, 8, 9, 0, 0, 5), shipping(10, 8, 10, 0, 0, 5)],
      0.95,
    );
    expect(found.weeks.map(({ label }) => label)).toEqual(['2027-W11', '2027-W13', '2027-W14', '2027-W15']);
    // Mean of 1.8 and 2, and Student's t of 1 degree of freedom 12.706 (tables): 1.9 -+ 1.27.
    expect(found.othersPerDay!.mean).toBeCloseTo(1.9, 12);
    expect(found.othersPerDay!.high).toBeCloseTo(1.9 + 12.706 * 0.1, 4);
    expect(unusualClause(found, 'judged')).toBe(
      '4 of the 6 weeks judged are short or hit by an outage: 2027-W11 (holiday 2027-03-17), 2027-W13 to 2027-W14 (holiday 2027-03-29 to 2027-04-09), 2027-W15 (outage "mains"); the other 2 ship 1.9 a working day (95 % CI 0.6 to 3.2)',
    );
  });

  it('is nothing where all are alike, and no rate where none is', () => {
    expect(unusualClause(unusualAmong(of, { first: 1, last: 1 }, [shipping(9)], 0.95), 'judged')).toBeNull();
    expect(unusualClause(unusualAmong(of, { first: 6, last: 6 }, [shipping(9)], 0.95), 'watched')).toBe(
      '1 of the 1 week watched is hit by an outage: 2027-W15 (outage "mains")',
    );
  });
});
