import { z } from 'zod';
import type { Model } from '../../flow/model/model.js';
import { at, float64, int32, ragged } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { type Floor, floorOf, inOrder } from '../lookup/floor.js';
import { isForAll, stationsOf } from '../lookup/placed.js';
import type { PulseLine } from '../types/plant.js';
import type { Finding, Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name } from '../values/keys.js';
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

/**
 * What a pulse line cannot do: hold more than one unit a station, be entered halfway, be left before its
 * end.
 */
export function* pulseLineFindings(scenario: Scenario): Iterable<Finding> {
  const inLine = new Map<string, string>(),
    floor = floorOf(scenario);
  for (const [name, line] of Object.entries(scenario.pulseLines)) {
    const path = ['pulse lines', name, 'stations'];
    let isOnce = true;
    for (const [i, station] of line.stations.entries()) {
      const first = inLine.get(station);
      inLine.set(station, name);
      if (first === undefined) continue;
      isOnce = false;
      yield {
        path: [...path, i],
        wanted: 'each station once over all pulse lines',
        seen: `"${station}" again, first in ${first}`,
      };
    }
    yield* stationFindings(scenario, line, path);
    if (isOnce) yield* routeFindings(floor, line, path);
    yield* sendBackFindings(floor, line);
  }
}

/** One place, no spaces but ahead of the first, no lots; one site, one calendar. */
function* stationFindings(scenario: Scenario, line: PulseLine, path: Path): Iterable<Finding> {
  const known = stationsOf(scenario),
    stations = line.stations.flatMap((name) => known.get(name) ?? []);
  const sites = new Set(stations.map(({ siteName }) => siteName)),
    open = 'always open',
    calendars = new Set(
      stations.map(({ station, site }) =>
        station.unattended ? open : (station.calendar ?? site.calendar ?? open),
      ),
    );
  if (sites.size > 1) yield { path, wanted: 'stations of one site', seen: [...sites].join(' and ') };
  for (const [i, { path: here, station }] of stations.entries()) {
    const { places, buffer, reworkBuffer, lot } = station;
    const wrong = (key: string, wanted: string, seen: string): Finding => ({
      path: [...here, key],
      wanted: `${wanted} at a station of a pulse line`,
      seen,
    });
    if (places !== 1) yield wrong('places', 'one place', String(places));
    if (i > 0 && buffer !== 0)
      yield wrong('buffer', 'no buffer but ahead of the first station', String(buffer ?? 'unlimited'));
    if (reworkBuffer !== undefined) yield wrong('rework buffer', 'no rework buffer', String(reworkBuffer));
    if (lot !== undefined) yield wrong('lot', 'no lots', 'a lot');
  }
  if (calendars.size > 1)
    yield {
      path,
      wanted: 'stations of one calendar, in which the takt is counted',
      seen: [...calendars].join(' and '),
    };
}

/**
 * The unit's route goes through all its stations once, in order, without a step elsewhere between; each has a
 * step that every unit visits.
 */
function* routeFindings({ stepsAt }: Floor, { stations }: PulseLine, path: Path): Iterable<Finding> {
  const here = inOrder(stations, stepsAt),
    steps = here.filter(({ route }) => route.kind === 'unit');
  for (const { path: place, route, step } of here)
    if (route.kind !== 'unit')
      yield {
        path: [...place, 'at'],
        wanted: 'a station that is in no pulse line, since only units go through one',
        seen: `"${step.at}"`,
      };
  const visited = steps.map(({ step }) => step.at).filter((at, i, all) => at !== all[i - 1]);
  const isGapless = steps.every(({ index }, i) => i === 0 || index - 1 === steps[i - 1]?.index);
  if (visited.join('\n') !== stations.join('\n') || !isGapless)
    yield {
      path,
      wanted:
        'the stations in the order in which the route visits them, one after the other with no other ' +
        'step or lane between',
      seen:
        visited.length === 0
          ? 'none of them in the route'
          : `${visited.join(', ')} in the route${isGapless ? '' : ', with others between'}`,
    };
  for (const [i, station] of stations.entries()) {
    const own = inOrder([station], stepsAt).filter(({ route }) => route.kind === 'unit');
    if (own.length > 0 && !own.some(({ step }) => isForAll(step)))
      yield {
        path: [...path, i],
        wanted: 'a station with a step that every unit visits, without when, sample or rework',
        seen: `"${station}"`,
      };
  }
}

/** Nobody leaves or enters the line by a send-back; a unit may do steps of its station over. */
function* sendBackFindings({ jumpsAt }: Floor, { stations }: PulseLine): Iterable<Finding> {
  for (const { path, at, target } of inOrder(stations, jumpsAt))
    yield {
      path: [...path, 'back to'],
      wanted: stations.includes(at)
        ? 'a step at the same station, or a repair, on a pulse line'
        : 'a step that is not on a pulse line',
      seen: `a step at "${target}"`,
    };
}

/** Pulse lines in the order of the scenario; the takt counts in the calendar of their stations. */
export function compilePulseLines(
  { scenario, ids }: Compilation,
  { calendar }: Model['stations'],
): Model['pulseLines'] {
  const rows = Object.entries(scenario.pulseLines).map(([name, line]) => {
    const stations = line.stations.map((station) => ids.station(station));
    return { name, takt: line.taktMin, stations, calendar: at(calendar, at(stations, 0)) };
  });
  const stations = ragged(rows, (row) => row.stations);
  return {
    count: rows.length,
    names: rows.map(({ name }) => name),
    stationStart: stations.start,
    station: stations.column(Number),
    ...float64(rows, 'takt'),
    ...int32(rows, 'calendar'),
  };
}
