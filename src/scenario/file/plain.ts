import { type CST, isAlias, isMap, isNode, isPair, isScalar, isSeq } from 'yaml';
import type { Path } from '../types/problem.js';
import { SAFE_TEXT, unsafeMark } from '../values/marks.js';
import { exact } from '../values/thousands.js';

/** How deep maps and lists may nest: a full scenario needs about ten. */
export const DEEPEST = 60;

type Node = {
  readonly items?: readonly { readonly key?: unknown; readonly value?: unknown }[];
  readonly value?: unknown;
  readonly offset?: number;
};

/**
 * Offset of the first token that nests deeper than `DEEPEST`, or undefined.
 * Asked before the tree is composed, which recurses and could exhaust the stack.
 */
export function tooDeepAt(token: CST.Token): number | undefined {
  const waiting: { node: Node; depth: number }[] = [{ node: token, depth: 0 }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { node, depth } = next;
    if (depth > DEEPEST) return node.offset ?? 0;
    const add = (child: unknown): void => {
      if (typeof child === 'object' && child !== null) waiting.push({ node: child, depth: depth + 1 });
    };
    add(node.value);
    for (const item of node.items ?? []) {
      add(item.key);
      add(item.value);
    }
  }
  return undefined;
}

/** Where a value and its key begin in the text. */
export interface Spot {
  readonly key: number | undefined;
  readonly value: number;
}
/** Something that YAML allows and a scenario does not. */
export interface PlainFault {
  readonly offset: number;
  readonly path: Path;
  readonly wanted: string;
  readonly seen: string | undefined;
}
export interface Plain {
  readonly value: unknown;
  readonly spots: ReadonlyMap<string, Spot>;
  readonly faults: readonly PlainFault[];
}

/** How many values a scenario may hold once its aliases are written out. */
export const MOST_VALUES = 100_000;

export const spotKey = (path: Path): string => JSON.stringify(path);

class TooMuch extends Error {}

/**
 * A YAML tree as plain maps, lists, texts, numbers, booleans and null, with the place of each value in the
 * text.
 */
export function plainOf(root: unknown): Plain {
  const spots = new Map<string, Spot>();
  const faults: PlainFault[] = [];
  const anchors = new Map<string, unknown>();
  let count = 0;

  const fault = (offset: number, path: Path, wanted: string, seen?: string): void =>
    void faults.push({ offset, path, wanted, seen });

  function convert(node: unknown, path: Path, keyOffset: number | undefined, around: number): unknown {
    const offset = offsetOf(node) ?? around;
    spots.set(spotKey(path), { key: keyOffset, value: offset });
    count += 1;
    if (count > MOST_VALUES || path.length > DEEPEST) {
      fault(
        offset,
        [],
        count > MOST_VALUES
          ? `at most ${exact(MOST_VALUES)} values, aliases written out`
          : `maps and lists at most ${DEEPEST} deep, aliases written out`,
      );
      throw new TooMuch();
    }
    if (isAlias(node)) {
      if (!anchors.has(node.source)) {
        fault(offset, path, 'an alias of an anchor that stands earlier in the file', `*${node.source}`);
        return undefined;
      }
      return convert(anchors.get(node.source), path, keyOffset, offset);
    }
    if ((isMap(node) || isSeq(node) || isScalar(node)) && node.anchor !== undefined)
      anchors.set(node.anchor, node);
    if (isSeq(node)) return node.items.map((item, i) => convert(item, [...path, i], undefined, offset));
    if (isMap(node)) return convertMap(node.items, path, offset);
    if (!isScalar(node)) return null;
    const mark = typeof node.value === 'string' ? unsafeMark(node.value, false) : undefined;
    if (mark !== undefined) fault(offset, path, SAFE_TEXT, mark);
    return node.value;
  }

  function convertMap(items: readonly unknown[], path: Path, around: number): unknown {
    const map: Record<string, unknown> = {};
    for (const pair of items) {
      if (!isPair(pair)) continue;
      const offset = offsetOf(pair.key) ?? around;
      const key = keyText(pair.key),
        mark = key === undefined ? undefined : unsafeMark(key, true);
      if (key === undefined)
        fault(
          offset,
          path,
          'a text as key',
          isScalar(pair.key) || pair.key === null ? 'an empty key' : 'a map, a list or an alias as key',
        );
      else if (mark !== undefined) fault(offset, path, `a name that is ${SAFE_TEXT}`, mark);
      else if (key in Object.prototype)
        fault(offset, path, 'another name, this one is reserved', JSON.stringify(key));
      else if (Object.hasOwn(map, key))
        fault(offset, [...path, key], 'each key once in a map', `${JSON.stringify(key)} again`);
      else map[key] = convert(pair.value, [...path, key], offset, offset);
    }
    return map;
  }

  try {
    return { value: convert(root, [], undefined, 0), spots, faults };
  } catch (error) {
    if (!(error instanceof TooMuch)) throw error;
    return { value: undefined, spots, faults };
  }
}

/** Undefined for what cannot be a key: nothing, a map, a list, an alias. */
function keyText(key: unknown): string | undefined {
  if (!isScalar(key) || key.value === '') return undefined;
  const { value } = key;
  if (typeof value === 'number') return key.source ?? String(value);
  return typeof value === 'string' || typeof value === 'boolean' ? String(value) : undefined;
}

function offsetOf(node: unknown): number | undefined {
  return isNode(node) ? node.range?.[0] : undefined;
}
