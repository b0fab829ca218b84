import { type Calendar, calendarAt } from '../../flow/floor/calendar.js';
import { equipmentOf } from '../../flow/model/resources.js';
import type { KnownStations } from '../../records/table/stopped.js';
import { WallClock } from '../../records/table/wall-clock.js';
import type { Failure } from '../../scenario/types/plant.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { isRawMap, valueAt } from '../../scenario/values/raw.js';
import { type Between, byTheClock } from '../chances/spans.js';
import type { Begun } from '../validate/start/standing-start.js';

/** A station, or equipment that stations share, and how the scenario says that it fails. */
export interface FailingPlace {
  readonly path: string;
  readonly zone: string;
  readonly isStation: boolean;
  readonly site: string;
  /** Pieces that fail each by itself. */
  readonly pieces: number;
  readonly failures: readonly Failure[];
  /** Of the only way to fail; undefined where the scenario has none, or several. */
  readonly failure: { readonly path: string; readonly by: Failure['by'] } | undefined;
}

/** By name; of a station and equipment with one name the station. @param raw the scenario as data */
export function failingPlaces(scenario: Scenario, raw: unknown): ReadonlyMap<string, FailingPlace> {
  const places = new Map<string, FailingPlace>();
  for (const [siteName, site] of Object.entries(scenario.sites)) {
    const add = (
      name: string,
      key: 'stations' | 'equipment',
      pieces: number,
      failures: readonly Failure[],
    ): void => {
      const path = `sites.${siteName}.${key}.${name}`,
        [one, ...more] = failures,
        said = valueAt(raw, ['sites', siteName, key, name, 'failures']);
      if (places.get(name)?.isStation === true) return;
      places.set(name, {
        ...{ path, zone: site.zone, isStation: key === 'stations', site: siteName, pieces, failures },
        failure:
          one === undefined || more.length > 0
            ? undefined
            : { path: `${path}.failures${isRawMap(said) ? '' : '[0]'}`, by: one.by },
      });
    };
    // One with lots fails as a whole.
    for (const [name, { places: n, lot, failures }] of Object.entries(site.stations))
      add(name, 'stations', lot === undefined ? n : 1, failures);
    for (const [name, { count, failures }] of Object.entries(site.equipment ?? {}))
      add(name, 'equipment', count, failures);
  }
  return places;
}

/** What a scenario knows of a stop log. */
export function knownStations(places: ReadonlyMap<string, FailingPlace>): KnownStations {
  const clocks = new Map<string, WallClock>();
  return {
    names: places.keys(),
    clockOf: (station) => {
      const zone = places.get(station)?.zone;
      if (zone === undefined) return undefined;
      const clock = clocks.get(zone) ?? new WallClock(zone);
      clocks.set(zone, clock);
      return clock;
    },
  };
}

/**
 * Which minutes count of one station: up, those of its calendar where its failures go by operating time;
 * down, those in which repairs are worked on.
 * @param begun a model over the whole log, `calendars` those of it
 */
export function minutesOf(
  name: string,
  place: FailingPlace,
  { model, origin }: Begun,
  calendars: readonly Calendar[],
): { readonly up: Between; readonly down: Between } {
  const { stations, resources, failures, siteNames } = model,
    station = place.isStation ? stations.names.indexOf(name) : -1,
    resource = place.isStation
      ? -1
      : (equipmentOf(resources).find(
          (id) => resources.names[id] === name && siteNames[resources.site[id] ?? -1] === place.site,
        ) ?? -1),
    row = failures.station.findIndex(
      (of, i) => of === station && (station >= 0 || failures.resource[i] === resource),
    ),
    within =
      (id: number | undefined): Between =>
      (from, to) =>
        calendarAt(calendars, id ?? -1)?.worked(from - origin, to - origin) ?? to - from;
  return {
    up:
      place.failure?.by === 'calendar time'
        ? byTheClock
        : within(place.isStation ? stations.calendar[station] : resources.calendar[resource]),
    down: within(failures.repairCalendar[row]),
  };
}
