import { describe, expect, it } from 'vitest';
import type { Lack, Stuck } from '../../../src/flow/gridlock/stuck.js';
import { programmeClock } from '../../../src/scenario/programme/clock.js';
import { readScenario } from '../../../src/scenario/read.js';
import { standstills, whoWaits } from '../../../src/study/answer/gridlock.js';
import { simulateStudy } from '../../../src/study/simulate/simulate.js';

/** One of a ring: `5 at mill`, `5 ahead of mill`, and what it lacks: kind, name, who has it by index. */
function member(where: string, lacks: readonly [Lack['kind'], string, ...number[]][], more?: Partial<Stuck>) {
  const [, number, at, name] = /^(\d+) (at|ahead of|in a truck of|outside) ?(.*)$/.exec(where)!,
    stands = { at: 'place', 'ahead of': 'space', 'in a truck of': 'truck', outside: 'outside' } as const;
  return {
    ...{
      number: Number(number),
      route: 'unit',
      in: stands[at as keyof typeof stands],
      where: name,
      keeps: [],
    },
    lacks: lacks.map(([kind, what, ...by]) => ({ kind, name: what, by })),
    ...more,
  };
}

describe('who waits for whom', () => {
  it('is the ring in its order, and how many wait behind it', () => {
    const ring = [
      member('2 at booth', [['room', 'oven', 1]]),
      member('3 at oven', [['room', 'tunnel', 2]]),
      member('9 at tunnel', [['room', 'booth', 0]]),
    ];
    expect(whoWaits({ ring, behind: 23 }, 'unit')).toBe(
      'unit 2 at booth waits for room at oven, unit 3 at oven waits for room at tunnel, unit 9 at tunnel waits for room at booth: each waits for the next, and the last for the first; 23 more wait behind',
    );
    // The same ring the other way round: told as it goes, not by number.
    const back = [
      member('2 at booth', [['room', 'tunnel', 2]]),
      member('3 at oven', [['room', 'booth', 0]]),
      member('9 at tunnel', [['room', 'oven', 1]]),
    ];
    expect(whoWaits({ ring: back, behind: 0 }, 'unit')).toBe(
      'unit 2 at booth waits for room at tunnel, unit 9 at tunnel waits for room at oven, unit 3 at oven waits for room at booth: each waits for the next, and the last for the first',
    );
  });

  it('names those that stand alike together, the first four of many', () => {
    const looms = (number: number): Stuck =>
        member(`${number} ahead of bench`, [['room', 'bench', 0, 1]], { route: 'looms' }),
      dashboards = (number: number): Stuck =>
        member(`${number} at bench`, [['parts', 'looms', 2, 3, 4, 5, 6]], { route: 'dashboards' });
    const ring = [dashboards(31), dashboards(32), ...[41, 42, 43, 44, 45].map(looms)];
    expect(whoWaits({ ring, behind: 1 }, 'unit')).toBe(
      'dashboards 31 and 32 at bench wait for looms, looms 41, 42, 43, 44 and 1 more ahead of bench wait for a place there: each waits for the next, and the last for the first; 1 more waits behind',
    );
  });

  it('says who has what another one lacks, and that a unit waits for its own part', () => {
    const ring = [
      member('2 at bay', [['room', 'mill', 1]], { keeps: ['dolly', 'cart'] }),
      member('3 at mill', [['carrier', 'dolly', 0]]),
    ];
    expect(whoWaits({ ring, behind: 0 }, 'unit')).toBe(
      'unit 2 at bay (with dolly) waits for room at mill, unit 3 at mill waits for dolly: each waits for the next, and the last for the first',
    );
    const own = [
      member('5 at fitting', [['own part', 'doors', 1]]),
      member('5 in a truck of ferry', [['room', 'fitting', 0]], { route: 'doors' }),
    ];
    expect(whoWaits({ ring: own, behind: 0 }, 'unit')).toBe(
      'unit 5 at fitting waits for its doors, doors 5 in a truck of ferry waits for room at fitting: each waits for the next, and the last for the first',
    );
  });

  it('is no ring in which each waits for the next where one waits for several, or for itself', () => {
    const knot = [
      member('1 at a', [
        ['crew', 'fitters', 1],
        ['parts', 'axles', 2],
      ]),
      member('2 at b', [['room', 'a', 0]]),
      member('7 at c', [['truck', 'ferry', 0]], { route: 'axles' }),
    ];
    expect(whoWaits({ ring: knot, behind: 0 }, 'unit')).toBe(
      'unit 1 at a waits for people of fitters and for axles, unit 2 at b waits for room at a, axles 7 at c waits for a truck of ferry: none of them can go on before another does',
    );
    expect(whoWaits({ ring: [member('1 at oven', [['room', 'oven', 0]])], behind: 0 }, 'unit')).toBe(
      'unit 1 at oven waits for room at oven, which it holds itself',
    );
    expect(whoWaits({ ring: [member('4 at line', [['supply', 'bolts']])], behind: 3 }, 'unit')).toBe(
      'unit 4 at line waits for bolts, of which no more will come; 3 more wait behind',
    );
  });
});

describe('what is said beside means', () => {
  const { scenario } = readScenario(
      'scenario: days\nprogramme: { start: 2027-03-01, arrivals: 1 h, quantity: 1 }\nsites: { a: { stations: { b: {} } } }\nroute: [{ step: c, at: b }]\n',
      'days.yaml',
      () => '',
    ),
    clock = programmeClock(scenario!);

  it('is how many replications stood still, and the earliest day', () => {
    expect(standstills([1440 * 30, 1440 * 4 + 60], 4, clock)).toEqual({
      replications: 2,
      first: '2027-03-05',
      note: '2 of 4 replications stood still (first on 2027-03-05); their values end there',
    });
    expect(standstills([1440 * 4], 2, clock)?.note).toBe(
      '1 of 2 replications stood still (on 2027-03-05); its values end there',
    );
  });

  it('is nothing where none did', () => {
    expect(standstills([], 3, clock)).toBeNull();
  });
});

describe('the finding of a gridlock', () => {
  it('calls units, and their own parts, as the planner does', async () => {
    // RT-1 has the bench and waits for its doors, which want the bench after the stand.
    const { scenario } = readScenario(
      `
scenario: stuck
programme: { arrivals: 1 h, quantity: 1, opening: [{ at: fit, build: RT-1 }] }
sites: { hall: { stations: { bay: {}, bench: {}, stand: {} } } }
feeders: { doors: { own: true, route: [{ step: trim doors, at: stand, work: 10 min }, { step: seal doors, at: bench, work: 1 min }] } }
route:
  - { step: prepare, at: bay, work: 1 min, takes off: doors }
  - { step: fit, at: bench, work: 5 min, parts: { doors: own } }
`,
      'stuck.yaml',
      () => '',
    );
    const { findings } = await simulateStudy({
      scenario: scenario!,
      file: 'stuck.yaml',
      replications: 1,
      seed: '1',
      workers: 1,
    });
    expect(findings.map(({ text }) => text)).toEqual([
      'gridlock, on 2001-01-01 in replication 1: unit RT-1 at bench waits for its doors, doors RT-1 at stand waits for room at bench: each waits for the next, and the last for the first. With a station of its own for doors, like bench, or with one place more at bench, the build goes on to its end; the other one tried does not help',
    ]);
  });

  it('is dated on the day on which the ring closed, also where the yard takes days to fill', async () => {
    // From Monday, 1 March, at 6, 8, 10 and 12. Unit 1: weld 6-11, check 11-14 and, the next day, 6-8, and is to
    // go back to weld; unit 2: weld in the same hours as that check; 3 to 6 are there. The 40th unit comes on Friday the 12th.
    const { scenario } = readScenario(
      `
scenario: sent back
programme: { start: 2027-03-01, rate: { per day: 4 }, quantity: 40, until: 2027-04-30 }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites: { hall: { calendar: days, stations: { yard: { buffer: unlimited }, weld: {}, check: {} } } }
defects: { gap: {} }
route:
  - { step: put down, at: yard }
  - { step: weld, at: weld, work: 5 h, creates: { gap: 100 % } }
  - { step: check, at: check, work: 5 h, finds: { gap: { chance: 99.999 %, back to: weld, limit: 1 } } }
`,
      'back.yaml',
      () => '',
    );
    const { findings, wip, standstill } = await simulateStudy({
      scenario: scenario!,
      file: 'back.yaml',
      replications: 1,
      seed: '1',
      workers: 1,
    });
    expect(findings[0].text).toBe(
      'gridlock, on 2027-03-02 in replication 1: unit 1 at check waits for room at weld, unit 2 at weld waits for room at check: each waits for the next, and the last for the first; 4 more wait behind. With one space for rework ahead of weld, or with one place more at check, the build goes on to its end; none of the 3 others tried helps',
    );
    expect(standstill).toMatchObject({ replications: 1, first: '2027-03-02' });
    // Nothing of the days after: units inside from 6, 8, 10, 12 and, on Tuesday, 6 to 8 o'clock, 32 h.
    expect(wip.total.mean).toBeCloseTo((26 + 24 + 22 + 20 + 2) / 32, 9);
  });
});
