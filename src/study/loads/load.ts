import type { Model } from '../../flow/model/model.js';
import type { WorkingDay } from '../../scenario/calendar/days.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { DailyMinutes } from '../capacity/days.js';
import type { Demand } from '../capacity/demand.js';
import { cumulated } from '../sample/planned.js';

/** What comes out, or goes on, several units at a time: a truck that waits until it is full. */
export interface Load {
  /** As in an answer: `trucks of 10 on road`. */
  readonly what: string;
  /** Units released for each load, mean. */
  readonly units: number;
  /** Working days of the first station's site from one load to the next, at the rate asked. */
  readonly cycleDays: number;
  /** It goes at its time, however many there are; if not, when enough units have come. */
  readonly isTimed: boolean;
  /** Then it is under way for so long, day and night: a drive, a bake; days of 24 h. */
  readonly underWayDays: number;
  /** The first step that it carries or holds up: loads are told in the order of the route. */
  readonly step: number;
}

/** What the loads of a build follow from. */
export interface Flow {
  readonly model: Model;
  readonly scenario: Scenario;
  readonly asks: Demand;
  readonly daily: DailyMinutes;
  /** Units released a working day. */
  readonly perDay: number;
  readonly workingDays: readonly WorkingDay[];
  /** Units released by plan up to each of sorted times, minutes. */
  readonly released: (times: ArrayLike<number>) => Float64Array;
  /** The time that is looked at, minutes since the start. */
  readonly from: number;
  readonly to: number;
}

/**
 * What goes that way, for each unit released: 0 where a stock of sub-assemblies covers the loads of its
 * feeder.
 */
export function visitsInLoads(
  { model: { steps, routes }, asks }: Flow,
  of: readonly number[],
  units: number,
): number {
  let visits = 0;
  for (const step of of) {
    const route = steps.route[step];
    // While one load is being made, the other half of the stock is there to be taken.
    if (routes.stock[route] < 0 || routes.target[route] < 2 * units) visits += asks.visits[step];
  }
  return visits;
}

/**
 * The widest gap between neighbours of sorted times in the time looked at, working days; NaN of fewer than
 * two.
 */
export function widestGap({ workingDays, from, to }: Flow, times: Float64Array): number {
  const days = cumulated(
    workingDays,
    times.filter((time) => time >= from && time <= to),
    () => 1,
  );
  let widest = NaN;
  for (let i = 1; i < days.length; i++)
    if (!(days[i] - days[i - 1] <= widest)) widest = days[i] - days[i - 1];
  return widest;
}

/** Steps that a condition is true of. */
export const stepsWhere = ({ model: { steps } }: Flow, is: (step: number) => boolean): number[] =>
  Array.from(steps.route.keys()).filter(is);
