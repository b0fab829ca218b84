import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { atRate, noRateReason, rampOf } from '../../../src/study/rate/at-rate.js';
import type { RateVerdict } from '../../../src/study/rate/results.js';
import { highestThatHolds, leastThatHolds } from '../../../src/study/rate/search.js';

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
