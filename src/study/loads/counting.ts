import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { endOf, startOf } from '../../scenario/calendar/days.js';
import { daysAWeek } from '../../scenario/programme/rates.js';
import { allowedUnits } from '../held/shortfall.js';
import { cumulated, type Planned } from '../sample/planned.js';
import { sum } from '../statistics/sums.js';
import type { Load } from './load.js';
import { type Arithmetic, loadsThatMatter } from './loads.js';
import { upset, type WorkWeek } from './upset.js';
import { weightsOver, wholeCycles } from './weights.js';

/** What is counted of a replication: units by bucket, and by day of 24 h (see `Observation`). */
export interface ShippedBy {
  readonly shippedIn: Int32Array;
  readonly shippedOn: Int32Array;
}

/** Whole buckets in which units are counted, both included, and what is asked in them. */
export interface Counted {
  readonly first: number;
  readonly last: number;
  readonly workingDays: number;
  readonly asked: number;
}

/** How units shipped in a window are counted. */
export interface Counting {
  /** Loads that it goes by; none: it is a plain count. */
  readonly loads: readonly Load[];
  /** Whether two cycles of each load fit into the window; if not it is a plain count none the less. */
  readonly isWhole: boolean;
  /** Units by which the loads alone can upset it, by arithmetic. */
  readonly upset: number;
  /** Units shipped in the window. */
  readonly shipped: (seen: ShippedBy) => number;
}

/**
 * Counts what is shipped in a window. Where nothing comes in loads it is what was shipped in its buckets.
 * Otherwise each day counts by its weight (see `weightsOver`), and so does what the plan asks on it: shipped
 * is what is asked in the window, times the weighted shipments over the weighted releases. How full the last
 * truck was makes no difference then.
 * @param loads of the build counted, which may be another than that of the plan
 */
export function countingOf(
  plan: Planned,
  window: Counted,
  loads: readonly Load[],
  { ceiling }: Pick<Arithmetic, 'ceiling'>,
): Counting {
  const { first, last, workingDays, asked } = window,
    week = weekOf(plan),
    matter = loadsThatMatter(loads, allowedUnits(asked));
  if (matter.length === 0) return plainCount(window);
  const boxes = wholeCycles(
      matter.map(({ cycleDays }) => cycleDays),
      { days: workingDays, week: week.days },
    ),
    grid = gridOf(plan, first, last),
    weights = weightsOver(workingDays, boxes ?? []);
  const counting = {
    loads: matter,
    isWhole: boxes !== null,
    upset: upset(matter, weights, {
      days: workingDays,
      cells: Math.min(Math.ceil(workingDays), grid.edges.length - 1),
      perDay: asked / workingDays,
      ceiling,
      week,
    }),
  };
  if (boxes === null) return { ...plainCount(window), ...counting };

  const days = cumulated(plan.calendar.workingDays, grid.edges, () => 1),
    released = cumulated(plan.calendar.releaseDays, grid.edges, ({ rate }) => rate),
    worth = Float64Array.from({ length: grid.edges.length - 1 }, (_, i) =>
      weights(days[i] - days[0], days[i + 1] - days[0]),
    );
  const weighted = worth.reduce((known, weight, i) => known + weight * (released[i + 1] - released[i]), 0);
  return {
    ...counting,
    shipped: (seen) => {
      const units = grid.of(seen);
      let counted = 0;
      for (let i = 0; i < worth.length; i++) counted += worth[i] * (units[grid.first + i] ?? 0);
      return (asked * counted) / weighted;
    },
  };
}

/** Without anything that goes in loads: units shipped in the window are counted. */
export const plainCount = ({ first, last }: Pick<Counted, 'first' | 'last'>): Counting => ({
  loads: [],
  isWhole: true,
  upset: 0,
  shipped: ({ shippedIn }) => sum(shippedIn.subarray(first, last + 1)),
});

/** A usual week of the first station's site, breaks worked through. */
export function weekOf({
  scenario,
  calendar: { workingDays },
}: Pick<Planned, 'scenario' | 'calendar'>): WorkWeek {
  const day = workingDays.at(0),
    share = day === undefined ? 1 : (endOf(day) - startOf(day)) / MINUTES_PER_DAY;
  return { days: daysAWeek(scenario), share: Math.min(1, share) };
}

/**
 * What is counted one by one in a window: days of 24 h; of a steady-state run, whose days are not, its parts.
 */
function gridOf({ model: { programme } }: Planned, first: number, last: number) {
  const { bucketEdges, days } = programme;
  if (days === 0)
    return {
      first,
      edges: bucketEdges.subarray(first, last + 2),
      of: ({ shippedIn }: ShippedBy) => shippedIn,
    };
  // Where the clocks have changed since the start, a week begins an hour off such a day.
  const day = (edge: number): number => Math.round(bucketEdges[edge] / MINUTES_PER_DAY),
    begin = day(first);
  return {
    first: begin,
    edges: Float64Array.from({ length: day(last + 1) - begin + 1 }, (_, i) => (begin + i) * MINUTES_PER_DAY),
    of: ({ shippedOn }: ShippedBy) => shippedOn,
  };
}
