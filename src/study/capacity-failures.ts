import type { Model } from '../flow/model.js';
import { meanOf } from '../random/moments.js';
import type { DailyMinutes } from './capacity-days.js';

/**
 * Share of its time for which a station is fit for its task, in the long run. By operating time 1 / (1 + sum of mean
 * repair / mean time between), by the clock mean time between / (mean time between + mean repair) for each way to fail
 * (Hopp & Spearman, Factory Physics, ch. 8: effective time te = t0 / A; quoted from memory). Repairs that keep hours last
 * longer by the clock; repairs of what fails in use are taken to cost their full time on shift. Outages are left out.
 */
export function availability({ failures, draws }: Model, station: number, daily: DailyMinutes): number {
  const mean = (draw: number): number => (draw < 0 ? 0 : meanOf(draws[draw].distribution));
  let inUse = 1,
    byClock = 1;
  for (let row = 0; row < failures.count; row++) {
    if (failures.station[row] !== station) continue;
    const every = mean(failures.everyDraw[row]),
      repair = mean(failures.repairDraw[row]);
    if (failures.byClock[row] === 1)
      byClock *= every / (every + (repair * daily.of(-1)) / daily.of(failures.repairCalendar[row]));
    else inUse += repair / every;
  }
  return byClock / inUse;
}
