import { exact } from './format.js';
import { type Estimate, mapped } from './statistics/estimate.js';

/** The unit of time in which a planner gives the rate, and in which answers speak of it. */
export interface PlannersUnit {
  /** Of the highest rate of the plan; a working day where none is asked. */
  readonly per: 'day' | 'week';
  /** Working days in one: of a week those of a usual one. */
  readonly workingDays: number;
}

export const A_DAY: PlannersUnit = { per: 'day', workingDays: 1 };

/** `a day`, `a week`, behind a figure. */
export const each = ({ per }: PlannersUnit): string => `a ${per}`;
/** `a working day`, `a week`, where it is to be told from any day. */
export const eachWorking = ({ per }: PlannersUnit): string => (per === 'day' ? 'a working day' : 'a week');
/** `units a working day`, `units a week`. */
export const unitsEach = (unit: PlannersUnit): 'units a working day' | 'units a week' =>
  unit.per === 'day' ? 'units a working day' : 'units a week';

/**
 * Units a working day as units of the planner's time; without the last digits, so that a rate of 17 a week,
 * 3.4 a day, comes back as 17.
 */
export const inUnit = (perDay: number, { workingDays }: PlannersUnit): number =>
  Number((perDay * workingDays).toFixed(6));

/**
 * Working days that go into one unit of the planner's time where a throughput is counted: over the weeks of a
 * window each week is one, also a short one, as a rate by the week asks; over a whole run (null) that of a
 * usual week.
 */
export const daysInOne = (
  unit: PlannersUnit,
  window: { readonly workingDays: number; readonly weeks: number } | null,
): number => (unit.per === 'day' || window === null ? unit.workingDays : window.workingDays / window.weeks);

/** Working days that go into one unit of the planner's time in a bucket of a series: of a week its own. */
export const daysInBucket = (
  unit: PlannersUnit,
  { unit: bucket, workingDays }: { readonly unit: 'week' | 'part'; readonly workingDays: readonly number[] },
  b: number,
): number => (unit.per === 'week' && bucket === 'week' ? (workingDays[b] ?? NaN) : unit.workingDays);

/** What a build ships in the planner's unit: in the weeks judged, else over the whole run. */
export const shippedOf = ({
  answer: { held },
  throughput: { perDay },
  rateUnit,
}: {
  readonly answer: { readonly held: Estimate | null };
  readonly throughput: { readonly perDay: Estimate };
  readonly rateUnit: PlannersUnit;
}): Estimate => held ?? mapped(perDay, (value) => value * rateUnit.workingDays);

/** A rate of so many units a working day in words: `4 a day`, `20 a week`. */
export const rateText = (perDay: number, unit: PlannersUnit): string =>
  `${exact(inUnit(perDay, unit))} ${each(unit)}`;
