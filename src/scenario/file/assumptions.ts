import type { Finding, Path } from '../types/problem.js';
import type { Assumption, Basis, Measured } from '../types/scenario.js';
import { isTime } from '../values/forms.js';
import { isQuantity, isRawMap, type RawMap, textOf } from '../values/raw.js';
import { countFindings, readBasis } from './basis.js';
import { spotKey } from './plain.js';
import { sayPath, saySeen } from './problem.js';

export interface Taken {
  /** The data as the schema knows it: without what was said about its values. */
  readonly value: unknown;
  /** In the order of the file. */
  readonly assumptions: readonly FileAssumption[];
  /** With paths as in the file. */
  readonly findings: readonly Finding[];
  /** Where in the file stands what has this path in `value`. `atKey`: its key is meant. */
  readonly pathInFile: (path: Path, atKey?: boolean) => Path;
}

/**
 * Maps with a `note` of their own, names as `*`, items of a list as the list: there it belongs to the
 * scenario and is left in place.
 */
export const OWN_NOTES: readonly string[] = [
  '',
  'calendars.*.shutdowns',
  'calendars.*.overtime',
  'defects.*',
  'outages',
];

/** Here is said how far values may be moved, or what they could be, not what they are. */
const NO_VALUES: readonly string[] = ['levers', 'costs.changes'];

/** A basis at so short a path is that of a file or of a section: `sites`, `supplies`. */
const GENERAL = 1;
/** As far as its own file tells: what a step is called may stand in another. */
export type FileAssumption = Omit<Assumption, 'words'>;

interface Said {
  readonly basis: Basis;
  readonly note: string | undefined;
  readonly measured?: Measured;
  readonly inGeneral?: true;
}
/** What stands in the section `measured` is, unless it says otherwise. */
const MEASURED: Said = { basis: 'measured', note: undefined };

/**
 * Takes `basis` and `note` out of the data. They stand beside the keys of a map, or beside `value` where a
 * number, a text or a list is spoken of: `headcount: { value: 6, basis: guess }`. What is said of a map that
 * is no time holds for every quantity inside that does not speak for itself.
 */
export function takeAssumptions(raw: unknown): Taken {
  const assumptions: FileAssumption[] = [];
  const findings: Finding[] = [];
  const wrapped = new Set<string>();
  const remember = (at: Path, value: unknown, said: Said): void =>
    void assumptions.push({ path: sayPath(at), at, value: textOf(value), raw: value, ...said });

  function walk(value: unknown, at: Path, file: Path, said: Said | undefined): unknown {
    if (Array.isArray(value)) return value.map((item, i) => walk(item, [...at, i], [...file, i], said));
    if (!isRawMap(value)) {
      if (said !== undefined && isQuantity(value)) remember(at, value, said);
      return value;
    }
    const own = saidOf(value, at, file, said);
    const before = assumptions.length;
    const isWrapped = Object.hasOwn(value, 'value'),
      rest = isWrapped ? unwrap(value, at, file, own) : inside(value, at, file, own);
    if (Object.hasOwn(value, 'basis') && own?.measured !== undefined)
      findings.push(
        ...countFindings(own.measured, isWrapped ? value['value'] : value, at, [...file, 'basis']),
      );
    if (Object.hasOwn(value, 'basis') && own !== undefined && assumptions.length === before) {
      findings.push({
        path: [...file, 'basis'],
        wanted: 'a quantity that it describes: beside it in a map, or { value: 6, basis: guess }',
        seen: 'none',
        atKey: true,
      });
    }
    return rest;
  }

  function inside(map: RawMap, at: Path, file: Path, own: Said | undefined): unknown {
    const rest = Object.entries(map).filter(([key]) => key !== 'basis' && (key !== 'note' || hasOwnNote(at)));
    const isOne = isTime(Object.fromEntries(rest));
    const place = assumptions.length;
    const bare = Object.fromEntries(
      rest.map(([key, value]) => [
        key,
        walk(
          value,
          [...at, key],
          [...file, key],
          isOne || key === 'note' || NO_VALUES.includes(sayPath([...at, key]))
            ? undefined
            : at.length === 0 && key === 'measured' && own?.basis !== 'measured'
              ? MEASURED
              : own,
        ),
      ]),
    );
    if (isOne && own !== undefined) {
      const ofParts = assumptions.splice(place);
      remember(at, bare, own);
      assumptions.push(...ofParts);
    }
    return bare;
  }

  function unwrap(map: RawMap, at: Path, file: Path, own: Said | undefined): unknown {
    for (const key of Object.keys(map)) {
      if (!['value', 'basis', 'note'].includes(key))
        findings.push({
          path: [...file, key],
          wanted: 'only basis and note beside value; value can be no name',
          seen: JSON.stringify(key),
          atKey: true,
        });
    }
    wrapped.add(spotKey(at));
    const value = map['value'];
    if (isRawMap(value) && Object.hasOwn(value, 'value')) {
      findings.push({
        path: [...file, 'value'],
        wanted: 'a value, without another { value: ... } around it',
        seen: saySeen(value),
      });
      return undefined;
    }
    const isOne =
      !isRawMap(value) && !(Array.isArray(value) && value.some((item) => typeof item === 'object'));
    if (isOne && own !== undefined) remember(at, value, own);
    return walk(value, at, [...file, 'value'], isOne ? undefined : own);
  }

  /** What a map says of what is in it, else what was said around it. */
  function saidOf(map: RawMap, at: Path, file: Path, around: Said | undefined): Said | undefined {
    const { note } = map,
      read = Object.hasOwn(map, 'basis') ? readBasis(map['basis'], [...file, 'basis']) : undefined;
    findings.push(...(read?.findings ?? []));
    const isOwn = hasOwnNote(at);
    if (Object.hasOwn(map, 'note') && !isOwn && (typeof note !== 'string' || isQuantity(note))) {
      findings.push({
        path: [...file, 'note'],
        wanted: 'a remark in words; note can be no name',
        seen: saySeen(note),
      });
    }
    const remark = typeof note === 'string' && !isOwn ? note : undefined;
    if (read?.basis !== undefined) {
      const { basis, measured } = read;
      return {
        basis,
        note: remark,
        ...(measured && { measured }),
        ...(at.length <= GENERAL && { inGeneral: true }),
      };
    }
    return around === undefined ? undefined : { ...around, note: remark ?? around.note };
  }

  const value = walk(raw, [], [], undefined);
  const pathInFile = (path: Path, atKey = false): Path =>
    path.flatMap((part, i) =>
      wrapped.has(spotKey(path.slice(0, i + 1))) && !(atKey && i === path.length - 1)
        ? [part, 'value']
        : [part],
    );
  return { value, assumptions, findings, pathInFile };
}

function hasOwnNote(place: Path): boolean {
  const at = place.filter((part) => typeof part !== 'number');
  return OWN_NOTES.some((address) => {
    const parts = address === '' ? [] : address.split('.');
    return parts.length === at.length && parts.every((part, i) => part === '*' || part === at[i]);
  });
}
