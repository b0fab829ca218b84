import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { dayNumber, isoDate } from '../calendar/date.js';
import type { Moment, Outage } from '../types/plant.js';
import type { Scenario } from '../types/scenario.js';
import { own } from '../values/raw.js';

/** The outages of a scenario, those that meet one of these things so many times as long; 0 takes them out. */
export function lengthened(
  { outages, sites }: Scenario,
  factor: number,
  of: readonly string[],
): { readonly outages: readonly Outage[]; readonly count: number } {
  const meets = ({ site, stations, lanes }: Outage): boolean => {
    const down = site === undefined ? stations : [site, ...Object.keys(own(sites, site)?.stations ?? {})],
      plants = Object.keys(sites).filter((name) =>
        stations.some((station) => own(sites, name)?.stations[station] !== undefined),
      );
    return of.length === 0 || [...down, ...plants, ...lanes].some((name) => of.includes(name));
  };
  const met = outages.filter(meets);
  return {
    outages: outages.flatMap((outage) =>
      !met.includes(outage) || factor === 1 ? [outage] : factor === 0 ? [] : [longer(outage, factor)],
    ),
    count: met.length,
  };
}

/** By the clock, from its own beginning on; whole days stay whole days where they can. */
function longer(outage: Outage, factor: number): Outage {
  const from = minutesOf(outage.from, 0),
    length = Math.max(1, Math.round(factor * (minutesOf(outage.to, MINUTES_PER_DAY) - from))),
    end = from + length;
  return {
    ...outage,
    to:
      end % MINUTES_PER_DAY === 0
        ? { day: isoDate(end / MINUTES_PER_DAY - 1), minute: undefined }
        : { day: isoDate(Math.floor(end / MINUTES_PER_DAY)), minute: end % MINUTES_PER_DAY },
  };
}

const minutesOf = ({ day, minute }: Moment, otherwise: number): number =>
  dayNumber(day) * MINUTES_PER_DAY + (minute ?? otherwise);
