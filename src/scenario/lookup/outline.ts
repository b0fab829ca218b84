import type { Finding, Path } from '../types/problem.js';
import { isRawMap, mapOf, type RawMap } from '../values/raw.js';

/** Names that are known: a set of them, or a map from them. */
export interface Known {
  has(name: string): boolean;
  keys(): Iterable<string>;
}

/** What a check of references works with. */
export interface Lookup {
  readonly outline: Outline;
  /** Reports a name that is not among the known ones; nothing if they could not be read. */
  readonly look: (path: Path, name: unknown, known: Known | undefined, what: string, atKey?: boolean) => void;
  /** The same of a name of a calendar. */
  readonly calendar: (path: Path, name: unknown) => void;
  readonly tell: (finding: Finding) => void;
}

/** A step of a route, or one of several side by side, which has the station of its group. */
export interface RawStep {
  readonly path: Path;
  readonly entry: RawMap;
  readonly index: number;
  /** Where its station is named. */
  readonly atPath: Path;
}

export interface RawRoute {
  readonly path: Path;
  /** Entries of the route, a group of steps side by side followed by its steps. */
  readonly entries: readonly RawStep[];
  /** Step name -> its first place in the route. */
  readonly steps: ReadonlyMap<string, number>;
}

/**
 * The names that a scenario gives to things, taken from the raw data, so that references can be checked in a
 * file that has other problems. Undefined where the names could not be read: then nothing is said about
 * references to them.
 */
export interface Outline {
  readonly calendars: Known | undefined;
  readonly sites: Known | undefined;
  readonly crewsOf: ReadonlyMap<string, Known> | undefined;
  /** Station -> its site. */
  readonly stations: ReadonlyMap<string, string> | undefined;
  readonly lanes: Known | undefined;
  readonly feeders: Known | undefined;
  readonly supplies: Known | undefined;
  readonly defects: Known | undefined;
  /** Option -> its values. */
  readonly options: ReadonlyMap<string, Known> | undefined;
  /** The unit's route, then those of the feeders. */
  readonly routes: readonly [RawRoute, ...RawRoute[]];
}

/**
 * `shape` is what the schema found wrong: a section with a misspelt heading is not held against those who
 * refer to it.
 */
export function outlineOf(raw: RawMap, shape: readonly Finding[]): Outline {
  const sound = (section: string): boolean =>
    !shape.some(({ path, atKey, suggestion, wanted }) => {
      // A section may stand in one file and, misspelt, in another.
      if (path.length === 1 && atKey === true)
        return suggestion === undefined ? !Object.hasOwn(raw, section) : suggestion === section;
      return (
        path.length === 1 && path[0] === section && !wanted.startsWith('missing;') && !isRawMap(raw[section])
      );
    });
  const namesOf = (section: string): Known | undefined =>
    sound(section) ? new Set(Object.keys(mapOf(raw[section]))) : undefined;

  const sites = mapOf(raw['sites']);
  const insideSound = (inside: 'stations' | 'crews'): boolean =>
    sound('sites') &&
    !shape.some(({ path, atKey, suggestion }) => {
      if (path[0] !== 'sites' || path.length < 2 || path.length > 3) return false;
      const site = sites[String(path[1])];
      if (!isRawMap(site)) return true;
      return path[2] === inside
        ? Object.hasOwn(site, inside) && !isRawMap(site[inside])
        : atKey === true && (suggestion === undefined ? !Object.hasOwn(site, inside) : suggestion === inside);
    });

  const stations = new Map<string, string>();
  const crewsOf = new Map<string, Known>();
  for (const [name, site] of Object.entries(sites)) {
    crewsOf.set(name, new Set(Object.keys(mapOf(mapOf(site)['crews']))));
    for (const station of Object.keys(mapOf(mapOf(site)['stations'])))
      if (!stations.has(station)) stations.set(station, name);
  }

  const programme = mapOf(raw['programme']);
  const options = new Map<string, Known>();
  for (const [name, mix] of Object.entries(mapOf(programme['options'])))
    options.set(name, new Set(isRawMap(mix) ? Object.keys(mix) : ['yes', 'no']));
  const optionsSound =
    sound('programme') &&
    !shape.some(
      (f) =>
        f.path[0] === 'programme' &&
        f.path.length === 2 &&
        (f.path[1] === 'options' || (f.atKey === true && f.suggestion === 'options')),
    );

  return {
    calendars: namesOf('calendars'),
    sites: namesOf('sites'),
    crewsOf: insideSound('crews') ? crewsOf : undefined,
    stations: insideSound('stations') ? stations : undefined,
    lanes: namesOf('lanes'),
    feeders: namesOf('feeders'),
    supplies: namesOf('supplies'),
    defects: namesOf('defects'),
    options: optionsSound ? options : undefined,
    routes: [
      routeOf(['route'], raw['route']),
      ...Object.entries(mapOf(raw['feeders'])).map(([name, feeder]) =>
        routeOf(['feeders', name, 'route'], mapOf(feeder)['route']),
      ),
    ],
  };
}

function routeOf(path: Path, value: unknown): RawRoute {
  const entries = (Array.isArray(value) ? value : []).flatMap((raw, index): RawStep[] => {
    const entry = mapOf(raw),
      here = [...path, index],
      inner = entry['side by side'],
      at = { index, atPath: [...here, 'at'] };
    const beside = Array.isArray(inner)
      ? inner.map((each, i) => ({
          ...at,
          path: [...here, 'side by side', i],
          entry: { ...mapOf(each), at: entry['at'] },
        }))
      : [];
    return [{ ...at, path: here, entry }, ...beside];
  });
  const steps = new Map<string, number>();
  for (const {
    entry: { step },
    index,
  } of entries)
    if (typeof step === 'string' && !steps.has(step)) steps.set(step, index);
  return { path, entries, steps };
}
