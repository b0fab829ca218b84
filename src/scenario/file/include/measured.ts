import type { Path, Problem } from '../../types/problem.js';
import { nearest } from '../../values/nearest.js';
import { isRawMap, mapOf, textOf, valueAt } from '../../values/raw.js';
import type { FileAssumption } from '../assumptions.js';
import { edited, findPath } from '../edit-path.js';
import { sayPath } from '../problem.js';
import type { Origins } from './origins.js';

/** The section of values that replace others, by path. */
export const MEASURED = 'measured';

/** Of a step that does not say it, it is 1: so it is a value, which may be measured. */
const FACTOR = 'work factor';

export interface Replaced {
  readonly value: Readonly<Record<string, unknown>>;
  readonly problems: readonly Problem[];
  /** What files say of values, with paths of the whole, without what is said of those that were replaced. */
  readonly said: (said: FileAssumption) => readonly FileAssumption[];
}

/**
 * Puts the values of the section `measured` where its paths lead, in a scenario with all that it includes.
 * Whatever is wrong with one later is told where it stands in the section.
 */
export function withMeasured(whole: Readonly<Record<string, unknown>>, origins: Origins): Replaced {
  const { [MEASURED]: section, ...rest } = whole,
    problems: Problem[] = [],
    paths: Path[] = [];
  // The schema says what is wrong with a section that is no map.
  if (!isRawMap(section)) return { value: whole, problems, said: (said) => [said] };
  let value: unknown = rest;
  for (const [key, given] of Object.entries(section)) {
    const at = [MEASURED, key],
      wrong = (wanted: string, seen?: string, suggestion?: string): void =>
        void problems.push(origins.place({ path: at, wanted, seen, suggestion, atKey: true }));
    const found = findPath(value, key);
    if (found.fault !== undefined) {
      wrong(found.fault.wanted, found.fault.seen, found.fault.suggestion);
      continue;
    }
    const { path, isNew } = found,
      last = String(path.at(-1)),
      around = path.slice(0, -1);
    if (isNew && !path.includes(FACTOR)) {
      wrong(
        `a value that the scenario gives, in ${around.length === 0 ? 'the scenario' : sayPath(around)}`,
        JSON.stringify(last),
        nearest(last, Object.keys(mapOf(valueAt(value, around)))),
      );
      continue;
    }
    const other = paths.find((before) => startsWith(path, before) || startsWith(before, path));
    if (other !== undefined) {
      wrong('each value measured once; another path leads to it or to a part of it', JSON.stringify(key));
      continue;
    }
    value = edited(value, path, given);
    paths.push(path);
    origins.setEntry(path, origins.of(at));
  }
  const said = (each: FileAssumption): readonly FileAssumption[] => {
    const at = paths.find((path) => startsWith(each.at, path) || startsWith(path, each.at));
    if (at === undefined) return [each];
    if (startsWith(each.at, at)) return [];
    // It is said of a map, of which a part was measured.
    const raw = valueAt(value, each.at);
    return [{ ...each, raw, value: textOf(raw) }];
  };
  return { value: value as Readonly<Record<string, unknown>>, problems, said };
}

const startsWith = (path: Path, head: Path): boolean =>
  head.length <= path.length && head.every((part, i) => part === path[i]);
