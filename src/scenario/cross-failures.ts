import { meanOf } from '../random/moments.js';
import { siteOfStation } from './cross-routes.js';
import type { Finding } from './problem.js';
import type { Scenario } from './scenario.js';
import type { Moment, Outage } from './scenario-failures.js';

/** Equipment that fails without end. */
export function failureFindings(scenario: Scenario): Finding[] {
  return Object.entries(scenario.sites).flatMap(([site, { stations }]) =>
    Object.entries(stations).flatMap(([name, { failures }]) =>
      failures.flatMap((failure, i): Finding[] => {
        const path = ['sites', site, 'stations', name, 'failures', i, 'every'];
        return meanOf(failure.every) > 0
          ? []
          : [{ path, wanted: 'a time greater than 0 between failures', seen: '0' }];
      }),
    ),
  );
}

/** Outages that end before they begin, or before the programme does; over several sites, so that their dates have no zone; named twice. */
export function outageFindings(scenario: Scenario): Finding[] {
  const siteOf = siteOfStation(scenario),
    { start } = scenario.programme;
  return scenario.outages.flatMap((outage, i): Finding[] => {
    const path = ['outages', i],
      found: Finding[] = [];
    if (!comesAfter(outage))
      found.push({
        path: [...path, 'to'],
        wanted: `an end after the beginning, ${sayMoment(outage.from)}`,
        seen: `"${sayMoment(outage.to)}"`,
      });
    else if (outage.to.day < start)
      found.push({
        path: [...path, 'to'],
        wanted: `an end not before the start of the programme, ${start}`,
        seen: `"${sayMoment(outage.to)}"`,
      });
    for (const key of ['stations', 'lanes'] as const) {
      const twice = outage[key].findIndex((name, n) => outage[key].indexOf(name) < n);
      if (twice >= 0)
        found.push({
          path: [...path, key, twice],
          wanted: `each of the ${key} once`,
          seen: `"${outage[key][twice]!}" again`,
        });
    }
    const sites = new Set(outage.stations.flatMap((name) => siteOf.get(name) ?? []));
    if (sites.size > 1)
      found.push({
        path: [...path, 'stations'],
        wanted: 'stations of one site, whose zone the dates are in; write an outage for each site',
        seen: [...sites].join(' and '),
      });
    return found;
  });
}

/** A last day belongs to the outage. Days and clock times of the same form compare as texts. */
function comesAfter({ from, to }: Outage): boolean {
  if (from.day !== to.day) return from.day < to.day;
  return to.minute === undefined || (from.minute ?? 0) < to.minute;
}

function sayMoment({ day, minute }: Moment): string {
  if (minute === undefined) return day;
  return `${day} ${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}
