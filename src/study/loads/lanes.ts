import { LEAVE_FULL, LEAVE_TIMETABLE } from '../../flow/model/lanes.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { carriedMinutes } from '../capacity/carriers.js';
import { meanDraw } from '../capacity/means.js';
import { type Flow, type Load, stepsWhere, visitsInLoads, widestGap } from './load.js';

/** A timetable that departs every working day keeps step with the days that are counted. */
const EVERY_DAY = 1.001;

/**
 * Trucks that carry more than one unit.
 * - When full: a load is the capacity, and comes every capacity / units a working day on the lane.
 * - When full or after a longest wait: no more than come while the first one waits, or while the truck is on
 *   its way where that is longer.
 * - By a timetable: what comes in the widest gap between departures, if that is more than a working day.
 */
export function laneLoads(flow: Flow): Load[] {
  const { model, perDay } = flow,
    { lanes } = model;
  return lanes.names.flatMap((name, lane): Load[] => {
    const capacity = lanes.capacity[lane],
      steps = stepsWhere(flow, (step) => model.steps.lane[step] === lane),
      visits = visitsInLoads(flow, steps, capacity);
    if (capacity < 2 || visits === 0) return [];
    const aDay = visits * perDay,
      made = (what: string, carried: number): Load => ({
        what,
        units: carried / visits,
        cycleDays: carried / aDay,
        isTimed: lanes.rule[lane] === LEAVE_TIMETABLE,
        underWayDays: carriedMinutes(model, lane) / MINUTES_PER_DAY,
        step: steps[0],
      });
    if (lanes.rule[lane] === LEAVE_FULL) return [made(`trucks of ${capacity} on ${name}`, capacity)];
    if (lanes.rule[lane] === LEAVE_TIMETABLE) {
      const gap = widestGap(flow, lanes.timetable[lane]);
      return gap > EVERY_DAY ? [made(`departures of ${name}`, aDay * gap)] : [];
    }
    const carried = Math.min(capacity, Math.floor(1 + aDay * Math.max(waited(flow, lane), away(flow, lane))));
    return carried < 2 ? [] : [made(`trucks of up to ${capacity} on ${name}`, carried)];
  });
}

/** The longest wait, by the clock, in working days. */
const waited = ({ model: { lanes }, daily }: Flow, lane: number): number => lanes.wait[lane] / daily.of(-1);

/** Working days from one truck at hand to the next, where all trucks are always on their way. */
function away({ model, daily }: Flow, lane: number): number {
  const { lanes } = model,
    trip = carriedMinutes(model, lane) + meanDraw(model, lanes.returnDraw[lane]);
  return trip / lanes.trucks[lane] / daily.of(lanes.driveCalendar[lane]);
}
