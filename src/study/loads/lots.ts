import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { sumOf } from '../statistics/sums.js';
import { type Flow, type Load, stepsWhere, visitsInLoads } from './load.js';

/**
 * Stations that take several units together. A lot is the most it may have or the least, or what comes while
 * its first unit waits or while the lot before it is worked on.
 */
export function lotLoads(flow: Flow): Load[] {
  const { model, asks, perDay, daily } = flow,
    { stations } = model;
  return stations.names.flatMap((name, station): Load[] => {
    const most = Math.min(stations.lotMost[station], stations.places[station]),
      least = Math.min(stations.lotLeast[station], most),
      steps = stepsWhere(flow, (step) => model.steps.station[step] === station),
      visits = visitsInLoads(flow, steps, most);
    if (most < 2 || visits === 0) return [];
    const all = sumOf(steps, (step) => asks.visits[step]),
      aDay = visits * perDay;
    const mean = (minutes: Float64Array): number => sumOf(steps, (step) => minutes[step]) / all;
    const waits = stations.lotWait[station] / daily.of(-1),
      works =
        mean(asks.attended) / daily.of(stations.calendar[station]) + mean(asks.unattended) / daily.of(-1);
    const units = Math.min(
      most,
      Math.max(least, Math.floor(1 + aDay * waits), Math.ceil(aDay * works - 1e-9)),
    );
    return units < 2
      ? []
      : [
          {
            what: `lots of ${least === most ? '' : 'up to '}${most} at ${name}`,
            units: units / visits,
            cycleDays: units / aDay,
            isTimed: false,
            underWayDays: mean(asks.unattended) / MINUTES_PER_DAY,
            step: steps[0],
          },
        ];
  });
}
