import type { Finding, Path } from '../types/problem.js';
import { costNames } from '../plant/costs.js';
import { nearest } from '../values/nearest.js';
import { lookAtStretches } from '../plant/stretches.js';
import { failureNames, outageNames } from '../plant/failures.js';
import {
  isRawMap,
  listOf,
  mapOf,
  outlineOf,
  type Names,
  type Outline,
  type RawRoute,
  type RawStep,
} from './outline.js';
import { repeatedNames } from './unique.js';
import { changeoverValues } from '../plant/changeovers.js';
import { saySeen } from '../file/problem.js';

/** Reports a name that is not among the known ones; nothing if they could not be read. */
export type Look = (
  path: Path,
  name: unknown,
  known: Names | undefined,
  what: string,
  atKey?: boolean,
) => void;

/** Looking for near names takes time; nobody reads so many. */
const MOST_SUGGESTIONS = 200;

/**
 * Names that nothing defines, and names given twice; asked of the raw data, so also where the schema found
 * problems.
 */
export function nameFindings(raw: unknown, shape: readonly Finding[]): Finding[] {
  if (!isRawMap(raw)) return [];
  const outline = outlineOf(raw, shape);
  const found: Finding[] = repeatedNames(raw, outline);
  const look: Look = (path, name, known, what, atKey = false) => {
    if (typeof name !== 'string' || known === undefined || known.has(name)) return;
    const suggestion = found.length < MOST_SUGGESTIONS ? nearest(name, known.keys()) : undefined;
    found.push({ path, wanted: `no ${what}`, seen: saySeen(name), suggestion, atKey });
  };
  const calendar = (path: Path, name: unknown): void => {
    look(path, name, outline.calendars, 'calendar of this name');
  };

  for (const [name, value] of Object.entries(mapOf(raw['calendars']))) {
    listOf(mapOf(value)['overtime']).forEach((entry, i) => {
      look(
        ['calendars', name, 'overtime', i, 'when', 'at'],
        mapOf(mapOf(entry)['when'])['at'],
        outline.routes[0]!.steps,
        'step of this name in the route of the unit',
      );
    });
  }
  for (const [siteName, value] of Object.entries(mapOf(raw['sites']))) {
    const site = mapOf(value);
    const path = ['sites', siteName];
    calendar([...path, 'calendar'], site['calendar']);
    for (const [name, crew] of Object.entries(mapOf(site['crews'])))
      calendar([...path, 'crews', name, 'calendar'], mapOf(crew)['calendar']);
    for (const [name, station] of Object.entries(mapOf(site['stations']))) {
      calendar([...path, 'stations', name, 'calendar'], mapOf(station)['calendar']);
      look(
        [...path, 'stations', name, 'changeover', 'on'],
        mapOf(mapOf(station)['changeover'])['on'],
        outline.options,
        'option of this name',
      );
      changeoverValues(
        [...path, 'stations', name, 'changeover'],
        mapOf(mapOf(station)['changeover']),
        outline,
        look,
      );
      failureNames([...path, 'stations', name, 'failures'], mapOf(station)['failures'], calendar);
    }
  }
  for (const [name, value] of Object.entries(mapOf(raw['lanes']))) {
    const lane = mapOf(value);
    for (const end of ['from', 'to'])
      look(['lanes', name, end], lane[end], outline.sites, 'site of this name');
    calendar(['lanes', name, 'hours'], lane['hours']);
  }
  for (const [name, supply] of Object.entries(mapOf(raw['supplies'])))
    look(['supplies', name, 'site'], mapOf(supply)['site'], outline.sites, 'site of this name');
  costNames(raw, outline, look);
  outageNames(raw, outline, look);
  for (const [name, line] of Object.entries(mapOf(raw['pulse lines']))) {
    listOf(mapOf(line)['stations']).forEach((station, i) => {
      look(['pulse lines', name, 'stations', i], station, outline.stations, 'station of this name');
    });
  }
  lookAtStretches(raw, outline, look);
  for (const route of outline.routes) {
    for (const step of route.entries) checkEntry(step, route, outline, look, found);
  }
  return found;
}

function checkEntry(
  { entry, path, index, atPath }: RawStep,
  route: RawRoute,
  outline: Outline,
  look: Look,
  found: Finding[],
): void {
  look([...path, 'lane'], entry['lane'], outline.lanes, 'lane of this name');
  look(atPath, entry['at'], outline.stations, 'station of this name');
  const site = outline.stations?.get(String(entry['at']));
  for (const crew of Object.keys(mapOf(entry['crew']))) {
    if (site !== undefined)
      look(
        [...path, 'crew', crew],
        crew,
        outline.crewsOf?.get(site),
        `crew of this name in site ${site}`,
        true,
      );
  }

  const values = (at: Path, option: string, names: readonly unknown[], atKey: boolean): void => {
    look(at, option, outline.options, 'option of this name', true);
    names.forEach((name, i) => {
      const text =
        name === true ? 'yes' : name === false ? 'no' : typeof name === 'number' ? String(name) : name;
      look(
        [...at, ...(atKey ? [String(text)] : names.length > 1 ? [i] : [])],
        text,
        outline.options?.get(option),
        `value of this name in option ${option}`,
        atKey,
      );
    });
  };
  if (typeof entry['when'] === 'string') {
    look([...path, 'when'], entry['when'], outline.options, 'option of this name');
    if (outline.options?.get(entry['when'])?.has('yes') === false)
      found.push({
        path: [...path, 'when'],
        wanted: `the values of option ${entry['when']}, such as { ${entry['when']}: ... }, since yes is none of them`,
        seen: saySeen(entry['when']),
      });
  }
  for (const [option, wanted] of Object.entries(mapOf(entry['when'])))
    values([...path, 'when', option], option, listOf(wanted), false);
  for (const [option, factors] of Object.entries(mapOf(entry['work factor'])))
    values([...path, 'work factor', option], option, Object.keys(mapOf(factors)), true);
  const chance = (at: Path, value: unknown): void => {
    for (const [option, chances] of Object.entries(mapOf(value)))
      if (option !== 'usual') values([...at, option], option, Object.keys(mapOf(chances)), true);
  };

  const { feeders, supplies } = outline,
    parts = feeders && supplies && new Set([...feeders.keys(), ...supplies.keys()]);
  for (const part of Object.keys(mapOf(entry['parts'])))
    look([...path, 'parts', part], part, parts, 'feeder or supply of this name', true);
  const off = listOf(entry['takes off']);
  off.forEach((feeder, i) => {
    look(
      [...path, 'takes off', ...(Array.isArray(entry['takes off']) ? [i] : [])],
      feeder,
      outline.feeders,
      'feeder of this name',
    );
  });

  const defect = (at: Path, name: string): void => {
    look(at, name, outline.defects, 'kind of defect of this name under defects', true);
  };
  const find = (at: Path, value: unknown): void => {
    chance([...at, 'chance'], mapOf(value)['chance']);
    earlierStep([...at, 'back to'], mapOf(value)['back to'], index, true, route, outline, look, found);
  };
  for (const [kind, value] of Object.entries(mapOf(entry['creates']))) {
    defect([...path, 'creates', kind], kind);
    chance([...path, 'creates', kind], value);
  }
  for (const [kind, value] of Object.entries(mapOf(entry['finds']))) {
    defect([...path, 'finds', kind], kind);
    find([...path, 'finds', kind], value);
  }
  find([...path, 'fails'], entry['fails']);
  const comparison = entry['compares with'],
    inside = isRawMap(comparison);
  earlierStep(
    [...path, 'compares with', ...(inside ? ['step'] : [])],
    inside ? comparison['step'] : comparison,
    index,
    false,
    route,
    outline,
    look,
    found,
  );
}

/**
 * An earlier step of the same route, or perhaps this one: to which a unit goes back, with which a measurement
 * is compared.
 */
function earlierStep(
  path: Path,
  target: unknown,
  index: number,
  mayBeThis: boolean,
  route: RawRoute,
  outline: Outline,
  look: Look,
  found: Finding[],
): void {
  if (typeof target !== 'string') return;
  const place = route.steps.get(target);
  if (place !== undefined && (place < index || (mayBeThis && place === index))) return;
  if (place !== undefined)
    found.push({
      path,
      wanted: mayBeThis ? 'the same or an earlier step' : 'an earlier step',
      seen: `${saySeen(target)}, which ${place === index ? 'is this one' : 'comes later'}`,
    });
  else if (outline.routes.some((other) => other.steps.has(target)))
    found.push({ path, wanted: 'a step of the same route', seen: `${saySeen(target)}, which is in another` });
  else look(path, target, route.steps, 'step of this name in this route');
}
