import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { endOf, startOf } from '../../scenario/calendar/days.js';
import { askedRate, daysAWeek } from '../../scenario/programme/rates.js';
import { cumulated, type Planned } from '../sample/planned.js';
import { sum } from '../statistics/sums.js';
import type { ShippedBy } from './counting.js';
import type { Load } from './load.js';
import { arithmeticOf, loadsOf, mayGoInLoads } from './loads.js';
import { cyclesToEvenOut, weightsOver } from './weights.js';

/** Loads that come less often than this, in weeks, make a saw of a picture by weeks. */
const SAW = 0.5;

/** Units shipped a working day around a bucket; NaN where it has no working day. */
export type OverLoads = (seen: ShippedBy, bucket: number) => number;

/**
 * Mean over whole cycles of the loads around the middle of each week of a programme, so that a week counts
 * alike whether a truck came in it or not: days have the weights of `weightsOver`, by the loads at the rate
 * that is asked in that week. null where no load comes less than twice a week: then weeks are even enough.
 */
export function overLoads(plan: Planned): OverLoads | null {
  const {
      model,
      scenario,
      clock: { buckets },
      calendar: { workingDays, releaseDays },
    } = plan,
    { programme } = model,
    highest = askedRate(scenario).highest;
  if (programme.days === 0 || highest === null || !mayGoInLoads(model)) return null;
  const arithmetic = arithmeticOf(plan),
    week = daysAWeek(scenario),
    atHighest = releaseDays.filter(({ usual }) => usual === highest),
    [first, last] = [atHighest.at(0), atHighest.at(-1)];
  if (first === undefined || last === undefined) return null;
  const stretch = { from: startOf(first), to: endOf(last) },
    at = (perDay: number): readonly Load[] => loadsOf(plan, perDay, stretch, arithmetic);
  if (!at(highest).some(({ cycleDays }) => cycleDays > SAW * week)) return null;

  const edges = Float64Array.from({ length: programme.days + 1 }, (_, day) => day * MINUTES_PER_DAY),
    worked = cumulated(workingDays, edges, () => 1),
    mondays = cumulated(workingDays, programme.bucketEdges, () => 1);
  const boxesAt = new Map<number, readonly number[]>();
  const boxesOf = (perDay: number): readonly number[] => {
    const known = boxesAt.get(perDay);
    if (known !== undefined) return known;
    const boxes = cyclesToEvenOut(
      at(perDay).map(({ cycleDays }) => cycleDays),
      week,
    );
    boxesAt.set(perDay, boxes);
    return boxes;
  };
  const rows = buckets.labels.map((_, b) => {
    const width = mondays[b + 1] - mondays[b];
    if (!(width > 0)) return null;
    return around((mondays[b] + mondays[b + 1]) / 2, width, boxesOf(rateAround(buckets.asked, b)), worked);
  });
  return ({ shippedOn }, bucket) => {
    const row = rows[bucket] ?? null;
    if (row === null) return NaN;
    let units = 0;
    for (let i = 0; i < row.weights.length; i++) units += row.weights[i] * (shippedOn[row.first + i] ?? 0);
    return units / row.days;
  };
}

/** The rate asked in a week; in weeks that ask for nothing that of the week before, or the first. */
function rateAround(asked: readonly (number | null)[], bucket: number): number {
  const known = asked.slice(0, bucket + 1).findLast((rate) => rate !== null && rate > 0);
  return known ?? asked.find((rate) => rate !== null && rate > 0) ?? 0;
}

/**
 * Weights of days around a point of working time, as far as the run has days, and the working days in them.
 */
function around(middle: number, width: number, boxes: readonly number[], worked: Float64Array) {
  const length = width + sum(boxes),
    from = middle - length / 2,
    weights = weightsOver(length, boxes),
    within = (time: number): number => Math.min(length, Math.max(0, time - from));
  const first = Math.max(0, worked.findIndex((time) => time > from) - 1),
    each: number[] = [];
  let days = 0;
  for (let day = first; day < worked.length - 1 && worked[day] < from + length; day++) {
    const begin = within(worked[day]),
      end = within(worked[day + 1]),
      weight = weights(begin, end);
    each.push(weight);
    days += weight * (end - begin);
  }
  return { first, weights: Float64Array.from(each), days };
}
