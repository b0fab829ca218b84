import type { Finding, Path } from '../types/problem.js';
import { isRawMap, mapOf, type RawMap } from '../values/raw.js';

/** Names that are known: a set of them, or a map from them. */
export interface Known {
  has(name: string): boolean;
  keys(): Iterable<string>;
}

/** What is missing where a name is not known, by the names among which it is looked up. */
export const MISSING = {
  calendars: 'calendar of this name',
  sites: 'site of this name',
  stations: 'station of this name',
  lanes: 'lane of this name',
  feeders: 'feeder of this name',
  supplies: 'supply of this name',
  carriers: 'carriers of this name',
  parts: 'feeder or supply of this name',
  defects: 'kind of defect of this name under defects',
  options: 'option of this name',
  steps: 'step of this name',
  unitSteps: 'step of this name in the route of the unit',
  pricedCrews: 'crew of this name in any site',
  pricedEquipment: 'equipment of this name in any site',
} as const;

/** Addresses of names, see `placesAt`, and where they are looked up; at a last `*` the key is the name. */
export type Uses = Readonly<Record<string, keyof typeof MISSING>>;

/** What a check of references works with. */
export interface Lookup {
  readonly outline: Outline;
  /** Reports a name that is not among the known ones; nothing if they could not be read. */
  readonly look: (path: Path, name: unknown, known: Known | undefined, what: string, atKey?: boolean) => void;
  /** The same of the names at all addresses below a path. */
  readonly lookAll: (path: Path, value: unknown, uses: Uses) => void;
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
  readonly equipmentOf: ReadonlyMap<string, Known> | undefined;
  /** Station -> its site. */
  readonly stations: ReadonlyMap<string, string> | undefined;
  readonly lanes: Known | undefined;
  readonly feeders: Known | undefined;
  readonly supplies: Known | undefined;
  readonly carriers: Known | undefined;
  /** What a step may take: feeders and supplies. */
  readonly parts: Known | undefined;
  readonly defects: Known | undefined;
  /** Option -> its values. */
  readonly options: ReadonlyMap<string, Known> | undefined;
  /** Crews of all sites, and the word for those without a price of their own. */
  readonly pricedCrews: Known | undefined;
  readonly pricedEquipment: Known | undefined;
  /** Steps of all routes, and of the unit's. */
  readonly steps: Known;
  readonly unitSteps: Known;
  /** The unit's route, then those of the feeders. */
  readonly routes: readonly RawRoute[];
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
  const insideSound = (inside: 'stations' | 'crews' | 'equipment'): boolean =>
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
  const crewsOf = new Map<string, Known>(),
    equipmentOf = new Map<string, Known>();
  for (const [name, site] of Object.entries(sites)) {
    crewsOf.set(name, new Set(Object.keys(mapOf(mapOf(site)['crews']))));
    equipmentOf.set(name, new Set(Object.keys(mapOf(mapOf(site)['equipment']))));
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

  const feeders = namesOf('feeders'),
    supplies = namesOf('supplies'),
    unit = routeOf(['route'], raw['route']);
  const routes = [
    unit,
    ...Object.entries(mapOf(raw['feeders'])).map(([name, feeder]) =>
      routeOf(['feeders', name, 'route'], mapOf(feeder)['route']),
    ),
  ];
  const areCrewsSound = insideSound('crews'),
    isEquipmentSound = insideSound('equipment');
  return {
    calendars: namesOf('calendars'),
    sites: namesOf('sites'),
    crewsOf: areCrewsSound ? crewsOf : undefined,
    equipmentOf: isEquipmentSound ? equipmentOf : undefined,
    pricedCrews: areCrewsSound
      ? new Set(['default', ...[...crewsOf.values()].flatMap((crews) => [...crews.keys()])])
      : undefined,
    pricedEquipment: isEquipmentSound
      ? new Set([...equipmentOf.values()].flatMap((equipment) => [...equipment.keys()]))
      : undefined,
    stations: insideSound('stations') ? stations : undefined,
    lanes: namesOf('lanes'),
    feeders,
    supplies,
    carriers: namesOf('carriers'),
    parts: feeders && supplies && new Set([...feeders.keys(), ...supplies.keys()]),
    defects: namesOf('defects'),
    options: optionsSound ? options : undefined,
    steps: new Set(routes.flatMap(({ steps }) => [...steps.keys()])),
    unitSteps: unit.steps,
    routes,
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
