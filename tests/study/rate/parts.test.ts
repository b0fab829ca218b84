import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { atRate, noRateReason, rampOf } from '../../../src/study/rate/at-rate.js';
import type { RateVerdict } from '../../../src/study/rate/results.js';
import { highestThatHolds, leastThatHolds } from '../../../src/study/rate/search.js';
import { judge, type RateReading, slope, type Watched } from '../../../src/study/rate/verdict.js';
import { sum } from '../../../src/study/statistics/sums.js';

/** Every number is invented. 2027-03-01 is a Monday. */
function scenarioOf(programme: string): Scenario {
  const { scenario, problems } = readScenario(
    `
scenario: bench
programme: ${programme}
sites: { hall: { zone: UTC, stations: { bench: { buffer: unlimited } } } }
route: [{ step: work, at: bench, work: 5 h }]
`,
    'bench.yaml',
    () => '',
  );
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
}
const RAMP = scenarioOf(
  '{ start: 2027-03-01, quantity: 100, due after: 9 days, rate: [{ from: 2027-03-01, per day: 1 }, { from: 2027-03-29, per week: 14 }, { from: 2027-05-05, per day: 4 }, { from: 2027-08-02, per day: 3 }] }',
);

describe('a scenario at another rate', () => {
  it('keeps its ramp below the rate, and nothing behind its highest phase', () => {
    expect(rampOf(RAMP)).toEqual([
      { from: '2027-03-01', perDay: 1 },
      { from: '2027-03-29', perDay: 2 },
      { from: '2027-05-05', perDay: 4 },
    ]);
    const {
      scenario: { programme },
      ...watched
    } = atRate(RAMP, { perDay: 1.5, settleWeeks: 3, weeks: 4 });
    expect(programme.release).toEqual({
      kind: 'rate',
      phases: [
        { from: '2027-03-01', perDay: 1 },
        { from: '2027-03-29', perDay: 1.5 },
        { from: '2027-05-05', perDay: 1.5 },
      ],
    });
    expect(programme).toMatchObject({
      quantity: undefined,
      until: '2027-06-28',
      orders: { list: [], dueAfterMin: undefined },
    });
    // Wednesday 5 May and three weeks is the 26th; the next Monday is the 31st, 13 weeks after the start.
    expect(watched).toEqual({
      first: 13,
      end: 17,
      fromMin: 13 * 7 * 1440,
      toMin: 17 * 7 * 1440,
      from: '2027-05-31',
      to: '2027-06-27',
    });
    expect(programme.warmUpMin).toBe(13 * 7 * 1440);
  });

  it('raises its highest phase too, and leaves out phases from the day on which that is to begin', () => {
    expect(
      atRate(RAMP, { perDay: 5, settleWeeks: 1, weeks: 2, begins: '2027-03-29' }).scenario.programme.release,
    ).toEqual({
      kind: 'rate',
      phases: [
        { from: '2027-03-01', perDay: 1 },
        { from: '2027-03-29', perDay: 5 },
      ],
    });
    expect(
      atRate(RAMP, { perDay: 5, settleWeeks: 1, weeks: 2, begins: '2027-03-01' }).scenario.programme.release,
    ).toEqual({ kind: 'rate', phases: [{ from: '2027-03-01', perDay: 5 }] });
  });

  it('is refused where there is no rate to change', () => {
    expect(noRateReason(RAMP)).toBeNull();
    expect(noRateReason(scenarioOf('{ start: 2027-03-01, quantity: 9, arrivals: saturated }'))).toContain(
      'saturated',
    );
    expect(
      noRateReason(
        scenarioOf('{ start: 2027-03-01, length: 900 h, arrivals: { exponential: { mean: 6 h } } }'),
      ),
    ).toContain('by chance');
  });
});

describe('the verdict on a rate', () => {
  const WATCHED: Watched = {
    first: 1,
    end: 4,
    released: [20, 20, 20],
    isBuiltAgain: false,
    counting: {
      loads: [],
      isWhole: true,
      upset: 0,
      shipped: ({ shippedIn }) => sum(shippedIn.subarray(1, 4)),
    },
  };
  const made = (
    shipped: readonly number[],
    wip: readonly number[],
    rest: Partial<RateReading> = {},
  ): RateReading => ({
    outcome: 'ended',
    enteredIn: Int32Array.of(19, 20, 20, 20),
    shippedIn: Int32Array.from(shipped),
    shippedOn: new Int32Array(0),
    scrapped: 0,
    wipIn: Float64Array.from(wip),
    ...rest,
  });
  const keeps = made([0, 20, 19, 21], [0, 5, 5, 5]),
    grows = made([0, 20, 20, 20], [0, 5, 6, 7]),
    lacks = made([0, 20, 20, 18], [0, 5, 5, 5]);
  const times = (n: number, reading: RateReading): RateReading[] => Array.from({ length: n }, () => reading);

  it('counts units of the window: 58 of 60 are 97 %, which is not enough, and 59 are 98 %', () => {
    expect(judge(times(10, lacks), WATCHED, 0.8, 0.95)).toMatchObject({
      verdict: 'does not hold',
      keptUp: { count: 0 },
    });
    expect(judge(times(20, made([0, 20, 20, 19], [0, 5, 5, 5])), WATCHED, 0.8, 0.95)).toMatchObject({
      verdict: 'holds',
      keptUp: { count: 20 },
    });
  });

  it('holds only when the lower end of the Wilson interval is as high as is asked', () => {
    // All of n: the lower end is n / (n + 1.96^2), 0.722 of 10 and 0.839 of 20.
    expect(judge(times(10, keeps), WATCHED, 0.8, 0.95).verdict).toBe('not settled');
    expect(judge(times(20, keeps), WATCHED, 0.8, 0.95).verdict).toBe('holds');
    expect(judge([...times(10, keeps), ...times(10, lacks)], WATCHED, 0.8, 0.95)).toMatchObject({
      verdict: 'does not hold',
      keptUp: { count: 10, n: 20 },
    });
  });

  it('does not hold where open units grow, inside or waiting before the first door', () => {
    // One unit a week, three over the window.
    expect(judge(times(20, grows), WATCHED, 0.8, 0.95)).toMatchObject({
      verdict: 'does not hold',
      drift: { mean: 1 },
    });
    // One unit a week is not let in: 0.5, 1.5, 2.5 wait in the mean.
    const waiting = made([0, 20, 20, 20], [0, 5, 5, 5], { enteredIn: Int32Array.of(0, 19, 19, 19) });
    expect(judge(times(20, waiting), WATCHED, 0.8, 0.95)).toMatchObject({
      verdict: 'does not hold',
      drift: { mean: 1 },
    });
    // Three orders of scrapped units were let in beyond the plan: as many wait as before.
    const again = made([0, 20, 20, 20], [0, 5, 5, 5], {
      enteredIn: Int32Array.of(0, 21, 21, 21),
      scrapped: 3,
    });
    expect(judge(times(20, again), { ...WATCHED, isBuiltAgain: true }, 0.8, 0.95)).toMatchObject({
      verdict: 'holds',
      drift: { mean: 0 },
    });
  });

  it('does not hold with a single gridlock', () => {
    expect(
      judge(
        [...times(99, keeps), made([0, 20, 20, 20], [0, 5, 5, 5], { outcome: 'gridlock' })],
        WATCHED,
        0.8,
        0.95,
      ),
    ).toMatchObject({ verdict: 'does not hold', gridlocks: 1, why: 'gridlock in 1 of 100' });
  });

  it('takes the slope of the least squares line', () => {
    // (-1 * 2 + 0 * 3 + 1 * 7) / 2
    expect(slope([2, 3, 7])).toBe(2.5);
    expect(slope([4])).toBe(0);
  });
});

describe('the search', () => {
  const looking = (holds: (point: number) => boolean) => {
    const seen: number[] = [];
    return {
      seen,
      look: (point: number): Promise<RateVerdict> => {
        seen.push(point);
        return Promise.resolve(holds(point) ? 'holds' : 'does not hold');
      },
    };
  };

  it('finds every limit on a grid, looking at no point twice', async () => {
    for (let last = 0; last <= 30; last++) {
      for (let limit = -1; limit <= last; limit++) {
        const { seen, look } = looking((point) => point <= limit);
        expect(await highestThatHolds(last, look)).toEqual({
          highest: limit < 0 ? null : limit,
          above: limit === last ? null : limit + 1,
          contradictions: [],
        });
        expect(new Set(seen).size).toBe(seen.length);
      }
    }
  });

  it('stays below the first rate that does not hold, and tells of those above that hold', async () => {
    // Coarse points 0, 6, 12, 18, 24, 30.
    const { look } = looking((point) => point <= 7 || point === 18);
    expect(await highestThatHolds(30, look)).toEqual({ highest: 7, above: 8, contradictions: [18] });
  });

  it('finds the earliest week, or that there is none', async () => {
    for (let least = 0; least <= 52; least++)
      expect(await leastThatHolds(52, looking((week) => week >= least).look)).toBe(least);
    expect(await leastThatHolds(52, looking(() => false).look)).toBeNull();
  });
});
