import fc from 'fast-check';
import { parse, stringify } from 'yaml';
import { hostileName, hostileNumber, hostileValue } from './hostile.js';
import { SOURCES } from './sources.js';

type Tree = Record<string, unknown> | unknown[];
interface Spot {
  readonly within: Tree;
  readonly key: string | number;
}

/** What is done to a key of a map or a place of a list. `where` and `other` are spots, by their number. */
export interface TreeEdit {
  readonly way: Way;
  readonly where: number;
  readonly other: number;
  readonly name: string;
  readonly number: number;
  readonly value: unknown;
}
type Way = keyof typeof WAYS;

const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null;
const keysOf = (tree: Tree): (string | number)[] =>
  Array.isArray(tree) ? [...tree.keys()] : Object.keys(tree);
const at = ({ within, key }: Spot): unknown => Reflect.get(within, key);

/** Every key of every map and every place of every list. */
function spotsOf(value: unknown): Spot[] {
  if (!isTree(value)) return [];
  return keysOf(value).flatMap((key) => [{ within: value, key }, ...spotsOf(Reflect.get(value, key))]);
}

/** The value of a key of this name in one of the scenarios, by number; undefined where none has it. */
export function alikeOf(key: string | number, which: number): unknown {
  const alike = PIECES.filter((piece) => piece.key === key),
    piece = alike.at(which % alike.length);
  return piece === undefined ? undefined : structuredClone(at(piece));
}

/** A key of a map with its value, from any scenario: what may be right somewhere. */
const PIECES: readonly Spot[] = SOURCES.flatMap(({ files, main }) =>
  spotsOf(parse(files[main] ?? '')),
).filter(({ key }) => typeof key === 'string');

/** Also where it would be the prototype. */
const put = (within: Tree, key: string | number, value: unknown): void =>
  void Object.defineProperty(within, key, { value, writable: true, enumerable: true, configurable: true });

function rename({ within, key }: Spot, name: string): void {
  if (Array.isArray(within)) return;
  const entries = Object.entries(within).map(([each, value]) => [each === key ? name : each, value] as const);
  for (const each of Object.keys(within)) Reflect.deleteProperty(within, each);
  for (const [each, value] of entries) put(within, each, value);
}

function renameAll(root: unknown, from: string, to: string): void {
  for (const spot of spotsOf(root)) if (at(spot) === from) put(spot.within, spot.key, to);
  for (const spot of spotsOf(root)) if (spot.key === from) rename(spot, to);
}

const asText = (value: unknown): string => (isTree(value) ? JSON.stringify(value) : String(value));

/** Ways to spoil, or to change what stays sound. */
const WAYS = {
  remove: ({ within, key }: Spot) => {
    if (Array.isArray(within)) within.splice(Number(key), 1);
    else Reflect.deleteProperty(within, key);
  },
  replace: (spot: Spot, { value }: TreeEdit) => {
    put(spot.within, spot.key, value);
  },
  number: (spot: Spot, { number }: TreeEdit) => {
    const old = at(spot);
    if (typeof old === 'number') put(spot.within, spot.key, number);
    else if (typeof old === 'string') put(spot.within, spot.key, old.replace(/\d+(\.\d+)?/, String(number)));
  },
  scale: (spot: Spot, { number }: TreeEdit) => {
    const factor = [0, 0.001, 0.1, 2, 10, 1000, 1e6][Math.abs(Math.trunc(number)) % 7] ?? 1,
      old = at(spot);
    if (typeof old === 'number') put(spot.within, spot.key, old * factor);
    else if (typeof old === 'string' && !/^\d{4}-/.test(old))
      put(
        spot.within,
        spot.key,
        old.replace(/\d+(\.\d+)?/, (digits) => String(Number(digits) * factor)),
      );
  },
  rename: (spot: Spot, { name }: TreeEdit) => {
    rename(spot, name);
  },
  everywhere: ({ within, key }: Spot, { name }: TreeEdit, root: unknown) => {
    const old = at({ within, key });
    renameAll(root, typeof old === 'string' ? old : String(key), name);
  },
  twice: ({ within, key }: Spot, { name, number }: TreeEdit) => {
    if (Array.isArray(within))
      within.splice(
        Number(key),
        0,
        ...Array.from({ length: number > 999 ? 200 : 1 }, () => structuredClone(within[Number(key)])),
      );
    else put(within, name, structuredClone(at({ within, key })));
  },
  swap: (spot: Spot, { other }: TreeEdit, root: unknown) => {
    const spots = spotsOf(root),
      second = spots.at(other % spots.length);
    if (second !== undefined) put(spot.within, spot.key, structuredClone(at(second)));
  },
  splice: ({ within, key }: Spot, { other }: TreeEdit) => {
    const piece = PIECES.at(other % PIECES.length),
      inner: unknown = Reflect.get(within, key);
    if (piece === undefined) return;
    const holder = isTree(inner) && !Array.isArray(inner) ? inner : within;
    if (!Array.isArray(holder)) put(holder, piece.key, structuredClone(at(piece)));
  },
  alike: ({ within, key }: Spot, { other }: TreeEdit) => {
    const value = alikeOf(key, other);
    if (value !== undefined) put(within, key, value);
  },
  wrap: (spot: Spot, { number }: TreeEdit) => {
    const old = at(spot);
    put(
      spot.within,
      spot.key,
      number > 1 ? [old] : number > 0 ? { value: old, basis: 'guess' } : asText(old),
    );
  },
  unwrap: (spot: Spot) => {
    const old = at(spot);
    if (isTree(old)) put(spot.within, spot.key, Array.isArray(old) ? old[0] : Object.values(old));
  },
  reverse: (spot: Spot) => {
    const old = at(spot);
    if (Array.isArray(old)) old.reverse();
    else if (isTree(old)) put(spot.within, spot.key, Object.fromEntries(Object.entries(old).reverse()));
  },
} satisfies Record<string, (spot: Spot, edit: TreeEdit, root: unknown) => void>;

const asYaml = (root: unknown): string => stringify(root, { aliasDuplicateObjects: false });

/** YAML text as data with edits, as text. */
export function editedTree(text: string, edits: readonly TreeEdit[], write = asYaml): string {
  const root: unknown = parse(text);
  for (const edit of edits) {
    const spots = spotsOf(root),
      spot = spots.at(edit.where % spots.length);
    if (spot !== undefined) WAYS[edit.way](spot, edit, root);
  }
  return write(root);
}

const edit = (...ways: Way[]): fc.Arbitrary<TreeEdit> =>
  fc.record({
    way: fc.constantFrom(...ways),
    where: fc.nat(),
    other: fc.nat(),
    name: hostileName,
    number: hostileNumber,
    value: hostileValue,
  });

/** Edits most of which break something. */
export const treeEdits = fc.array(edit(...(Object.keys(WAYS) as Way[])), { minLength: 1, maxLength: 4 });
/** Edits that often leave a sound scenario, if an odd one. */
export const mildEdits = fc.array(
  edit('scale', 'scale', 'alike', 'number', 'remove', 'everywhere', 'reverse'),
  {
    minLength: 1,
    maxLength: 2,
  },
);
