import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import { enteredAt, play } from '../run-yaml.js';

/** Rule 15, by hand: days of 7.5 h, 08:00-12:00 and 12:30-16:00; 1 March 2027 is a Monday. */
const programme = (keys: string, work = '1 min'): string => `
scenario: release
programme: { start: 2027-03-01, ${keys} }
calendars: { days: { hours: ["08:00-16:00"], on: Mon-Fri, breaks: ["12:00-12:30"] } }
sites: { hall: { calendar: days, stations: { bench: { places: 50 } } } }
route: [{ step: fit, at: bench, work: ${work} }]
`;
const DAY = 1440;

describe('release by rate', () => {
  it('spreads the units of a day over its working minutes', () => {
    // Every 150 working minutes: 08:00, 10:30, and after 240 + 60: 13:30.
    expect(enteredAt(play(programme('rate: { per day: 3 }, quantity: 3')))).toEqual([480, 630, 810]);
  });

  it('follows a ramp, and leaves out the weekend', () => {
    // Friday 5 March at 1 a day, from Monday 8 March at 2 a day.
    const entered = enteredAt(
      play(
        programme('rate: [{ from: 2027-03-05, per day: 1 }, { from: 2027-03-08, per day: 2 }], quantity: 3'),
      ),
    );
    expect(entered).toEqual([4 * DAY + 480, 7 * DAY + 480, 7 * DAY + 480 + 225]);
  });

  it('at less than one a day skips days', () => {
    expect(enteredAt(play(programme('rate: { per day: 0.5 }, quantity: 3')))).toEqual([
      480,
      2 * DAY + 480,
      4 * DAY + 480,
    ]);
  });
});

describe('the end of a run', () => {
  it('is the moment the last unit of the quantity is out', () => {
    expect(play(programme('rate: { per day: 3 }, quantity: 3')).seen).toMatchObject({
      outcome: 'finished',
      endedAt: 811,
      shipped: 3,
      entered: 3,
    });
  });

  it('is the date given, with whatever has been shipped by then', () => {
    // 8 h of work: Monday's units are out on Tuesday at 08:30, 11:00 and 14:00, Tuesday's are not.
    expect(play(programme('rate: { per day: 3 }, until: 2027-03-03', '8 h')).seen).toMatchObject({
      outcome: 'ended',
      endedAt: 2 * DAY,
      entered: 6,
      shipped: 3,
    });
  });

  it('cuts a steady-state run at its length after the warm-up', () => {
    const { seen } = play(`
scenario: steady
programme: { arrivals: 10 min, length: 100 min, warm up: 15 min }
sites: { hall: { stations: { bench: {} } } }
route: [{ step: fit, at: bench, work: 6 min }]
`);
    // Units at 10, 20, .. 110 (115 is the end); shipped 16, .. 106 and not 116: of these from 15 on.
    expect(seen).toMatchObject({
      outcome: 'ended',
      endedAt: 115,
      minutes: 100,
      entered: 10,
      shipped: 10,
      leadMean: 6,
    });
    // Work in process: 15-16, 20-26, .. 100-106, 110-115.
    expect(seen.wip).toBeCloseTo((1 + 9 * 6 + 5) / 100, 12);
  });
});

describe('a saturated source', () => {
  it('has the next unit ready the moment one enters', () => {
    const played = play(`
scenario: saturated
programme: { arrivals: saturated, quantity: 4 }
sites: { hall: { stations: { bench: { places: 2, buffer: 1 } } } }
route: [{ step: fit, at: bench, work: 10 min }]
`);
    expect(enteredAt(played)).toEqual([0, 0, 0, 10]);
  });
});

describe('a saturated source without end ahead of unlimited room', () => {
  it('is refused when the scenario is read: it would let in units for ever at time 0', () => {
    const { problems } = readScenario(
      `
scenario: flood
programme: { arrivals: saturated, length: 100 h }
sites: { hall: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: fit, at: bench, work: 10 min }]
`,
      'flood.yaml',
      () => '',
    );
    expect(problems?.length ?? 0).toBeGreaterThan(0);
  });
});

describe('units of a fixed pace on a line without chance', () => {
  it('come at the rate of the bottleneck with the raw process time as lead time: Penny Fab Two, 0.4 an hour and 20 h (Hopp & Spearman, Factory Physics, 3rd ed. 2008, ch. 7)', () => {
    const { seen } = play(`
scenario: penny fab two
programme: { arrivals: 2.5 h, length: 1000 h, warm up: 100 h }
sites: { fab: { stations: { punch: {}, stamp: { places: 2 }, rim: { places: 6 }, deburr: { places: 2 } } } }
route:
  - { step: punch, at: punch, work: 2 h }
  - { step: stamp, at: stamp, work: 5 h }
  - { step: rim, at: rim, work: 10 h }
  - { step: deburr, at: deburr, work: 3 h }
`);
    expect(seen.leadLeast).toBeCloseTo(1200, 9);
    expect(seen.leadGreatest).toBeCloseTo(1200, 9);
    expect(seen.shipped).toBe(400);
    // Critical WIP: 0.4 x 20.
    expect(seen.wip).toBeCloseTo(8, 9);
    expect(seen.utilisation[1]).toBeCloseTo(1, 9);
  });
});
