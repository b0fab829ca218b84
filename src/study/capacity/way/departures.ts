import type { Model } from '../../../flow/model/model.js';
import type { DailyMinutes } from '../days.js';
import { meanDraw } from '../means.js';

/** Units that one truck of a lane takes at most: it loads what waits, so never more than the bank holds. */
export const fullLoad = ({ lanes }: Model, lane: number): number =>
  Math.min(lanes.capacity[lane], lanes.bank[lane]);

interface Truck {
  /** When it is back, and when it is loaded. */
  readonly ready: number;
  readonly loaded: number;
}

/**
 * Units that a timetable takes away in the span looked at, with every space of the bank filled at each
 * departure and mean times on the way: at each departure those trucks leave that are back and find a dock,
 * with what waits. A truck that is not back misses it, so two departures within one round trip need two
 * trucks.
 */
export function unitsByTimetable(model: Model, lane: number, daily: DailyMinutes): number {
  const { lanes } = model,
    capacity = lanes.capacity[lane],
    docks = lanes.docksFrom[lane];
  const after = (from: number, calendar: number, draws: Int32Array): number => {
    const minutes = meanDraw(model, draws[lane]);
    return daily.calendar(calendar)?.advance(from, minutes) ?? from + minutes;
  };
  let trucks = Array.from({ length: lanes.trucks[lane] }, (): Truck => ({ ready: 0, loaded: 0 })),
    units = 0;
  for (const time of lanes.timetable[lane]) {
    if (time >= daily.spanMinutes) break;
    let waiting = lanes.bank[lane],
      free = docks - trucks.filter(({ loaded }) => loaded > time).length;
    trucks = trucks.map((truck) => {
      if (truck.ready > time || waiting <= 0 || free <= 0) return truck;
      free--;
      units += Math.min(capacity, waiting);
      waiting -= capacity;
      const loaded = after(time, lanes.loadCalendar[lane], lanes.loadDraw),
        there = after(loaded, lanes.driveCalendar[lane], lanes.driveDraw),
        empty = after(there, lanes.unloadCalendar[lane], lanes.unloadDraw);
      return { loaded, ready: after(empty, lanes.driveCalendar[lane], lanes.returnDraw) };
    });
  }
  return units;
}
