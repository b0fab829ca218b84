import { describe, expect, it } from 'vitest';
import type { Programme } from '../../../src/scenario/types/programme.js';

import { observation, resultsOf, twoPlants } from '../made-observation.js';

/**
 * `twoPlants` with four units, of which the planner knows two. Days of 1440 minutes since Monday 2027-03-01.
 */
const DAY = 1440;
const order = (build: string, due: string | undefined): Programme['orders']['list'][number] => ({
  build,
  due,
  release: undefined,
  options: {},
  at: undefined,
  written: { path: [] },
});
const four = {
  ...twoPlants,
  programme: {
    ...twoPlants.programme,
    quantity: 4,
    orders: {
      list: [order('A-1', '2027-03-03'), order('A-2', undefined)],
      dueAfterMin: undefined,
      replaceScrapped: false,
    },
  },
};
const due = Float64Array.of(3 * DAY, Infinity, Infinity, Infinity);
const shipping =
  (first: number, more: Parameters<typeof observation>[2] = {}) =>
  (replication: number) =>
    observation(four, replication, {
      dueAt: due,
      shippedAt: Float64Array.of(first, 4 * DAY, 5 * DAY, 6 * DAY),
      endedAt: 6 * DAY,
      late: first > 3 * DAY ? 1 : 0,
      lateMinutes: Math.max(0, first - 3 * DAY),
      ...more,
    });

describe('units late', () => {
  it('are those shipped after the end of their due day; on the last instant of it is in time', () => {
    const { due: result, units } = resultsOf(
      [shipping(3 * DAY), shipping(5 * DAY), shipping(4 * DAY), shipping(DAY)],
      four,
    );
    expect(units[0]).toMatchObject({ build: 'A-1', due: '2027-03-03', late: { share: 0.5, count: 2, n: 4 } });
    expect(units.slice(1).map(({ build, due: day, late }) => [build, day, late])).toEqual([
      ['A-2', null, null],
      ['3', null, null],
      ['4', null, null],
    ]);
    expect(result!.units.mean).toBe(1);
    expect(result!.late.mean).toBe(0.5);
    // Two and one days; the other two have none.
    expect([result!.daysLate.mean, result!.daysLate.n]).toEqual([1.5, 2]);
  });

  it('are also those never shipped, unless the run was cut off before their date', () => {
    const late = (more: Parameters<typeof observation>[2]) =>
      resultsOf([shipping(NaN, more)], four).units[0].late;
    expect(late({ outcome: 'gridlock', endedAt: DAY })).toMatchObject({ share: 1, n: 1 });
    expect(late({ outcome: 'finished', endedAt: 2 * DAY, scrapped: 1 })).toMatchObject({ share: 1, n: 1 });
    expect(late({ outcome: 'ended', endedAt: 4 * DAY })).toMatchObject({ share: 1, n: 1 });
    expect(late({ outcome: 'ended', endedAt: 2 * DAY })).toBeNull();
  });

  it('have no result where nothing is due', () => {
    expect(resultsOf([(r) => observation(twoPlants, r)]).due).toBeNull();
  });
});

describe('shipped against plan', () => {
  it('adds up to the end of each day what is released by plan, due, and shipped, with quantiles over replications', () => {
    const { plan } = resultsOf([shipping(2 * DAY), shipping(3 * DAY), shipping(5 * DAY)], four);
    expect(plan!.unit).toBe('day');
    expect(plan!.starts).toEqual([
      '2027-03-01',
      '2027-03-02',
      '2027-03-03',
      '2027-03-04',
      '2027-03-05',
      '2027-03-06',
    ]);
    expect(plan!.ends.at(-1)).toBe('2027-03-07');
    // Two a day on Monday and Tuesday.
    expect(plan!.released).toEqual([2, 4, 4, 4, 4, 4]);
    expect(plan!.due).toEqual([0, 0, 1, 1, 1, 1]);
    // Shipped by the ends of days 1 to 6: 0 1 1 2 3 4, 0 0 1 2 3 4, 0 0 0 1 3 4.
    expect(plan!.shipped).toEqual({
      p10: [0, 0, 0, 1, 3, 4],
      p50: [0, 0, 1, 2, 3, 4],
      p90: [0, 1, 1, 2, 3, 4],
    });
  });

  it('goes by ISO weeks where the programme is longer', () => {
    const { plan } = resultsOf([shipping(100 * DAY)], four);
    expect([plan!.unit, plan!.starts[1], plan!.starts.length]).toEqual(['week', '2027-03-08', 15]);
  });
});
