import type { PulseLine } from '../types/plant.js';
import type { Finding, Path } from '../types/problem.js';
import { z } from 'zod';
import type { Model } from '../../flow/model/model.js';

import type { Scenario } from '../types/scenario.js';
import { duration, keys, name } from '../values/keys.js';
import { entriesOf, starts } from '../whole/columns.js';
import { found } from '../whole/ids.js';
import type { Names } from '../whole/ids.js';
import { findsOf, own, routesOf, siteOfStation, stepsOf } from '../whole/placed.js';
import type { PlacedStep } from '../whole/placed.js';

/** One entry of the top-level key `pulse lines`. */
export const pulseLineSchema = keys(
  {
    stations: z
      .array(name('the name of a station'), { error: 'a list of stations in the order of the route' })
      .min(1, { error: 'at least one station' })
      .describe(
        'Its stations in the order of the route, all of one site and one calendar, with one place ' +
          'each, and no buffer but ahead of the first. Example: [trim, marriage, final]',
      ),
    takt: duration.describe(
      'Least time from one move to the next, in working time of the stations. Example: 4 h',
    ),
  },
  'a pulse line: a map with the keys stations and takt',
).transform((line): PulseLine => ({ stations: line.stations, taktMin: line.takt }));

/**
 * What a pulse line cannot do: hold more than one unit a station, be entered in the midst, be left but at its
 * end.
 */
export function pulseLineFindings(scenario: Scenario): Finding[] {
  const inLine = new Map<string, string>();
  return Object.entries(scenario.pulseLines).flatMap(([name, line]) => {
    const path = ['pulse lines', name, 'stations'];
    const twice = line.stations.flatMap((station, i): Finding[] => {
      const first = inLine.get(station);
      inLine.set(station, name);
      return first === undefined
        ? []
        : [
            {
              path: [...path, i],
              wanted: 'each station once over all pulse lines',
              seen: `"${station}" again, first in ${first}`,
            },
          ];
    });
    return [
      ...twice,
      ...stationFindings(scenario, line, path),
      ...(twice.length > 0 ? [] : routeFindings(scenario, line, path)),
      ...sendBackFindings(scenario, line),
    ];
  });
}

/** One place, no spaces but ahead of the first, no lots; one site, one calendar. */
function stationFindings(scenario: Scenario, line: PulseLine, path: Path): Finding[] {
  const siteOf = siteOfStation(scenario),
    found: Finding[] = [];
  const sites = new Set(line.stations.flatMap((name) => siteOf.get(name) ?? []));
  if (sites.size > 1) found.push({ path, wanted: 'stations of one site', seen: [...sites].join(' and ') });
  const calendars = new Set<string>();
  line.stations.forEach((name, i) => {
    const site = siteOf.get(name),
      station = site === undefined ? undefined : own(scenario.sites[site]!.stations, name);
    if (site === undefined || station === undefined) return;
    const at = (key: string, wanted: string, seen: string): number =>
      found.push({
        path: ['sites', site, 'stations', name, key],
        wanted: `${wanted} at a station of a pulse line`,
        seen,
      });
    if (station.places !== 1) at('places', 'one place', String(station.places));
    if (i > 0 && station.buffer !== 0)
      at(
        'buffer',
        'no buffer but ahead of the first station',
        station.buffer === undefined ? 'unlimited' : String(station.buffer),
      );
    if (station.reworkBuffer !== undefined)
      at('rework buffer', 'no rework buffer', String(station.reworkBuffer));
    if (station.lot !== undefined) at('lot', 'no lots', 'a lot');
    calendars.add(
      station.unattended
        ? 'always open'
        : (station.calendar ?? scenario.sites[site]!.calendar ?? 'always open'),
    );
  });
  if (calendars.size > 1)
    found.push({
      path,
      wanted: 'stations of one calendar, in which the takt is counted',
      seen: [...calendars].join(' and '),
    });
  return found;
}

/**
 * The unit's route goes through all its stations once, in order, without a step elsewhere between; each has a
 * step that every unit visits.
 */
function routeFindings(scenario: Scenario, { stations }: PulseLine, path: Path): Finding[] {
  const [main, ...feeders] = routesOf(scenario),
    isHere = ({ step }: PlacedStep): boolean => stations.includes(step.at);
  const found: Finding[] = feeders.flatMap((route) =>
    stepsOf(route)
      .filter(isHere)
      .map((placed) => ({
        path: [...placed.path, 'at'],
        wanted: 'a station that is in no pulse line, since only units go through one',
        seen: `"${placed.step.at}"`,
      })),
  );
  const steps = stepsOf(main!).filter(isHere),
    visited = steps.map(({ step }) => step.at).filter((at, i, all) => at !== all[i - 1]);
  const isGapless = steps.every(({ index }, i) => i === 0 || index === steps[i - 1]!.index + 1);
  if (visited.join('\n') !== stations.join('\n') || !isGapless) {
    found.push({
      path,
      wanted:
        'the stations in the order in which the route visits them, one after the other with no other ' +
        'step or lane between',
      seen:
        visited.length === 0
          ? 'none of them in the route'
          : `${visited.join(', ')} in the route${isGapless ? '' : ', with others between'}`,
    });
  }
  for (const [i, station] of stations.entries()) {
    const here = steps.filter(({ step }) => step.at === station);
    if (
      here.length > 0 &&
      here.every(
        ({ step }) =>
          Object.keys(step.when).length > 0 || step.sample !== undefined || step.rework !== 'both',
      )
    ) {
      found.push({
        path: [...path, i],
        wanted: 'a station with a step that every unit visits, without when, sample or rework',
        seen: `"${station}"`,
      });
    }
  }
  return found;
}

/** Nobody leaves or enters the line by a send-back; a unit may do steps of its station over. */
function sendBackFindings(scenario: Scenario, { stations }: PulseLine): Finding[] {
  return routesOf(scenario).flatMap((route) => {
    const atOf = new Map(stepsOf(route).map(({ step }) => [step.name, step.at]));
    return stepsOf(route).flatMap((placed) =>
      findsOf(placed).flatMap(({ path, find }): Finding[] => {
        const target = find.then.kind === 'back' ? atOf.get(find.then.to) : undefined;
        if (
          target === undefined ||
          target === placed.step.at ||
          (!stations.includes(target) && !stations.includes(placed.step.at))
        )
          return [];
        return [
          {
            path: [...path, 'back to'],
            wanted: stations.includes(placed.step.at)
              ? 'a step at the same station, or a repair, on a pulse line'
              : 'a step that is not on a pulse line',
            seen: `a step at "${target}"`,
          },
        ];
      }),
    );
  });
}

/** Pulse lines in the order of the scenario; the takt counts in the calendar of their stations. */
export function compilePulseLines(
  scenario: Scenario,
  names: Names,
  stations: Model['stations'],
): Model['pulseLines'] {
  const rows = Object.entries(scenario.pulseLines).map(([name, line]) => ({
    name,
    takt: line.taktMin,
    stations: line.stations.map((station) => found(names.station, station, 'station')),
  }));
  return {
    count: rows.length,
    names: rows.map(({ name }) => name),
    stationStart: starts(rows, (row) => row.stations),
    station: entriesOf(
      rows,
      (row) => row.stations,
      (station) => station,
    ),
    takt: Float64Array.from(rows, ({ takt }) => takt),
    calendar: Int32Array.from(rows, (row) => stations.calendar[row.stations[0]]),
  };
}
