import { z } from 'zod';
import type { Model } from '../../flow/model/model.js';
import { at, column, ragged } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { found } from '../lookup/ids.js';
import type { Lookup } from '../lookup/outline.js';
import { findsOf, type PlacedStep, routesOf, stationsOf, stepsOf } from '../lookup/placed.js';
import type { PulseLine } from '../types/plant.js';
import type { Finding, Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name } from '../values/keys.js';
import { listOf, mapOf, type RawMap } from '../values/raw.js';
import { duration } from '../values/scalars.js';

/** One entry of the top-level key `pulse lines`. */
export const pulseLineSchema = keys(
  {
    stations: z
      .array(name('the name of a station'), { error: 'a list of stations in the order of the route' })
      .min(1, { error: 'at least one station' })
      .describe(
        'Its stations in the order of the route, all of one site and one calendar, with one place ' +
          'each, and a buffer only ahead of the first. Example: [trim, marriage, final]',
      ),
    takt: duration.describe('Minimum time between moves, in working time of the stations. Example: 4 h'),
  },
  'a pulse line: a map with the keys stations and takt',
).transform(({ stations, takt }): PulseLine => ({ stations, taktMin: takt }));

export function pulseLineNames(raw: RawMap, { outline, look }: Lookup): void {
  for (const [name, line] of Object.entries(mapOf(raw['pulse lines'])))
    listOf(mapOf(line)['stations']).forEach((station, i) => {
      look(['pulse lines', name, 'stations', i], station, outline.stations, 'station of this name');
    });
}

/**
 * What a pulse line cannot do: hold more than one unit a station, be entered halfway, be left before its
 * end.
 */
export function pulseLineFindings(scenario: Scenario): Finding[] {
  const inLine = new Map<string, string>();
  return Object.entries(scenario.pulseLines).flatMap(([name, line]) => {
    const path = ['pulse lines', name, 'stations'];
    const twice = line.stations.flatMap((station, i): Finding[] => {
      const first = inLine.get(station),
        seen = `"${station}" again, first in ${first}`;
      inLine.set(station, name);
      if (first === undefined) return [];
      return [{ path: [...path, i], wanted: 'each station once over all pulse lines', seen }];
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
  const known = stationsOf(scenario),
    found: Finding[] = [];
  const sites = new Set(line.stations.flatMap((name) => known.get(name)?.siteName ?? []));
  if (sites.size > 1) found.push({ path, wanted: 'stations of one site', seen: [...sites].join(' and ') });
  const calendars = new Set<string>();
  line.stations.forEach((name, i) => {
    const placed = known.get(name);
    if (placed === undefined) return;
    const { station, site, siteName } = placed;
    const at = (key: string, wanted: string, seen: string): void => {
      const path = ['sites', siteName, 'stations', name, key];
      found.push({ path, wanted: `${wanted} at a station of a pulse line`, seen });
    };
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
    const open = 'always open';
    calendars.add(station.unattended ? open : (station.calendar ?? site.calendar ?? open));
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
  const steps = stepsOf(main).filter(isHere),
    visited = steps.map(({ step }) => step.at).filter((at, i, all) => at !== all[i - 1]);
  const isGapless = steps.every(({ index }, i) => i === 0 || index - 1 === steps[i - 1]?.index);
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
  { scenario, ids }: Compilation,
  { calendar }: Model['stations'],
): Model['pulseLines'] {
  const rows = Object.entries(scenario.pulseLines).map(([name, line]) => ({
    name,
    takt: line.taktMin,
    stations: line.stations.map((station) => found(ids.station, station, 'station')),
  }));
  const stations = ragged(rows, (row) => row.stations);
  return {
    count: rows.length,
    names: rows.map(({ name }) => name),
    stationStart: stations.start,
    station: Int32Array.from(stations.entries),
    takt: Float64Array.from(rows, ({ takt }) => takt),
    calendar: column(rows, (row) => at(calendar, at(row.stations, 0))),
  };
}
