import type { Finding, Path } from '../types/problem.js';
import { nearest } from '../values/nearest.js';
import { isRawMap, mapOf, type RawMap, valueAt } from '../values/raw.js';
import { sayPath, saySeen } from './problem.js';

type Fault = Omit<Finding, 'path'>;
/**
 * Where a path written by a planner leads in the data of a scenario; `isNew`: its last key is not there yet.
 */
export type Found =
  | { readonly path: Path; readonly isNew: boolean; readonly fault?: undefined }
  | { readonly fault: Fault };

const fault = (wanted: string, seen: unknown, suggestion?: string): Found => ({
  fault: { wanted, seen: saySeen(seen), suggestion },
});

/**
 * Finds `sites.hall.stations.paint booth.places`, `route[1].work` or, by the name of a step,
 * `route[prime].work` and `route.prime.work`. Names may hold spaces, and dots too: the longest name that fits
 * counts.
 */
export function findPath(root: unknown, text: string): Found {
  const path: (string | number)[] = [];
  let at = root,
    rest = text;
  while (rest !== '') {
    const isBracket = path.length > 0 && rest.startsWith('[');
    if (path.length > 0) rest = rest.slice(1);
    const here = path.length === 0 ? 'the scenario' : sayPath(path);
    const places = placesIn(at);
    if (places === undefined) return fault(`a path that ends with ${here}, which is no map`, rest);
    const ends = isBracket ? [']'] : ['.', '['];
    const [place] = [...places]
      .filter(([key]) =>
        rest === key ? !isBracket : rest.startsWith(key) && ends.includes(rest.charAt(key.length)),
      )
      .sort(([a], [b]) => b.length - a.length);
    if (place === undefined) {
      const [word = ''] = rest.split(isBracket ? ']' : /[.[]/);
      if (isRawMap(at) && word === rest && !isBracket && word !== '')
        return word in Object.prototype
          ? fault('another name, this one is reserved', word)
          : { path: [...path, word], isNew: true };
      return fault(
        Array.isArray(at)
          ? `an entry of ${here}, by the name of its step or by its number from 0`
          : `a key or name in ${here}`,
        word,
        /^\d+$/.test(word) ? undefined : nearest(word, places.keys()),
      );
    }
    const [name, way] = place;
    path.push(...way);
    at = valueAt(at, way);
    rest = rest.slice(name.length + (isBracket ? 1 : 0));
    if (isBracket && rest !== '' && !/^[.[]./.test(rest))
      return fault('a dot and a key behind the bracket', rest);
  }
  return path.length === 0
    ? fault('a path, such as sites.hall.stations.bench.places', text)
    : { path, isNew: false };
}

/** What can be named in a map or a list, with the way there; undefined for anything else. */
function placesIn(at: unknown): ReadonlyMap<string, Path> | undefined {
  if (isRawMap(at)) return new Map(Object.keys(at).map((key) => [key, [key]]));
  if (!Array.isArray(at)) return undefined;
  const places = new Map<string, Path>();
  const steps = (list: readonly unknown[], before: Path): void => {
    list.forEach((entry, i) => {
      const { step, 'side by side': beside } = mapOf(entry),
        path = [...before, i];
      if (typeof step === 'string' && !places.has(step)) places.set(step, path);
      if (Array.isArray(beside)) steps(beside, [...path, 'side by side']);
    });
  };
  steps(at, []);
  at.forEach((_, i) => places.set(String(i), [i]));
  return places;
}

/**
 * The data with another value at a path that `findPath` found, or, for undefined, without the key there;
 * nothing else is copied or changed.
 */
export function edited(root: unknown, path: Path, value: unknown): unknown {
  const [part, ...rest] = path;
  if (part === undefined) return value;
  if (Array.isArray(root))
    return root.map((item: unknown, i) => (i === part ? edited(item, rest, value) : item));
  const map = root as RawMap,
    inner = edited(map[part], rest, value);
  if (inner === undefined) return Object.fromEntries(Object.entries(map).filter(([key]) => key !== part));
  return { ...map, [part]: inner };
}
