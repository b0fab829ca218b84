import { saySeen } from '../file/problem.js';
import { nearest } from '../values/nearest.js';
import { isRawMap, mapOf, textOf } from '../values/raw.js';
import { askedOf } from './change.js';
import type { Asked, Wrong } from './edit.js';
import { SCALES } from './scaled.js';

/** A factor as it stands in the file: its levels with what each asks to be changed. */
export interface AskedFactor {
  readonly name: string;
  readonly note: string | null;
  readonly levels: readonly AskedLevel[];
}
interface AskedLevel {
  readonly name: string;
  readonly asked: readonly Asked[];
}

const KEYS = ['change', 'scale', 'of', 'levels', 'note'];
const FEWEST = 2,
  MOST = 3;
const LEVELS = `${FEWEST} or ${MOST} levels`;

/**
 * One of three forms: `change: path` with a list of values, `scale: spread` with a list of factors, or
 * neither with a map from names of levels to lists of changes.
 */
export function readFactor(name: string, entry: unknown, note: unknown, wrong: Wrong): AskedFactor {
  const at = ['factors', name],
    map = mapOf(entry),
    { change, scale, levels } = map,
    none = { name, note: typeof note === 'string' ? note : null, levels: [] };
  if (!isRawMap(entry)) {
    wrong(at, name, { wanted: 'a map with the keys change (or scale) and levels', seen: saySeen(entry) });
    return none;
  }
  for (const key of Object.keys(map).filter((each) => !KEYS.includes(each)))
    wrong([...at, key], name, {
      wanted: `one of the keys ${KEYS.join(', ')}`,
      seen: JSON.stringify(key),
      suggestion: nearest(key, KEYS),
      atKey: true,
    });
  if (change !== undefined && scale !== undefined)
    wrong([...at, 'scale'], name, { wanted: 'either a change or a scale', seen: 'both', atKey: true });
  if (change !== undefined && typeof change !== 'string')
    wrong([...at, 'change'], name, {
      wanted: 'the path of a value, such as sites.hall.stations.bench.places',
      seen: saySeen(change),
    });
  if (scale !== undefined && !SCALES.some((each) => each === scale))
    wrong([...at, 'scale'], name, {
      wanted: `one of ${SCALES.join(', ')}`,
      seen: saySeen(scale),
      suggestion: nearest(textOf(scale), SCALES),
    });
  if ('of' in map && scale === undefined)
    wrong([...at, 'of'], name, { wanted: 'of only beside scale', atKey: true });
  const found =
    change === undefined && scale === undefined
      ? bundles(name, levels, wrong)
      : valuesOf(name, map, levels, wrong);
  const twice = found.find((level, i) => found.findIndex((other) => other.name === level.name) < i);
  if (twice !== undefined)
    wrong([...at, 'levels'], name, { wanted: 'each level once', seen: `"${twice.name}" again` });
  return { ...none, levels: found };
}

/** A list of values of one path, or of factors of one scale. */
function valuesOf(
  name: string,
  { change, scale, of }: Readonly<Record<string, unknown>>,
  levels: unknown,
  wrong: Wrong,
): AskedLevel[] {
  const at = ['factors', name, 'levels'];
  if (!Array.isArray(levels) || levels.length < FEWEST || levels.length > MOST) {
    wrong(levels === undefined ? ['factors', name] : at, name, {
      wanted: `a list of ${LEVELS}`,
      seen: Array.isArray(levels) ? String(levels.length) : saySeen(levels),
      atKey: true,
    });
    return [];
  }
  return levels.map((value: unknown, i) => {
    const asked =
      scale === undefined
        ? {
            key: typeof change === 'string' ? change : textOf(change),
            given: value,
            pathAt: ['factors', name, 'change'],
          }
        : { key: 'scale', given: { [textOf(scale)]: value, ...(of === undefined ? {} : { of }) } };
    return { name: textOf(value), asked: [{ ...asked, at: [...at, i], of: name }] };
  });
}

/** A list of changes by the name of each level; an empty one leaves the scenario as it is. */
function bundles(name: string, levels: unknown, wrong: Wrong): AskedLevel[] {
  const at = ['factors', name, 'levels'],
    entries = Object.entries(mapOf(levels));
  if (entries.length < FEWEST || entries.length > MOST)
    wrong(levels === undefined ? ['factors', name] : at, name, {
      wanted: Array.isArray(levels)
        ? 'change: path (or scale: spread) beside a list of levels'
        : `levels: a map of ${LEVELS}, each a name with a list of changes`,
      seen: isRawMap(levels) ? String(entries.length) : saySeen(levels),
      atKey: true,
    });
  return entries.map(([level, changes]) => {
    if (!Array.isArray(changes) && !isRawMap(changes))
      wrong([...at, level], name, {
        wanted: 'a list of changes; [] leaves the scenario as it is',
        seen: saySeen(changes),
      });
    return {
      name: level,
      asked: isRawMap(changes) || Array.isArray(changes) ? askedOf(changes, [...at, level], name, wrong) : [],
    };
  });
}
