import { edited, findPath } from '../file/edit-path.js';
import type { Whole } from '../file/include/include.js';
import { sayPath, saySeen } from '../file/problem.js';
import type { Finding, Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { nearest } from '../values/nearest.js';
import { mapOf, textOf, valueAt } from '../values/raw.js';
import { wordsFor } from '../words/words.js';

/** What a what-if changes: the path, also in words, and the values on one line; null where there is none. */
export interface Change {
  readonly path: string;
  readonly words: string;
  readonly before: string | null;
  readonly after: string | null;
}

/** A change as it is asked: `remove`, `scale` or a path, what stands behind it, and where it stands. */
export interface Asked {
  readonly key: string;
  readonly given: unknown;
  readonly at: Path;
  /** Where its path stands, if not at its key. */
  readonly pathAt?: Path | undefined;
  /** Whose change it is, for messages. */
  readonly of: string;
}
/** The sound scenario that is changed, as data. */
export interface Changeable extends Pick<Whole, 'value' | 'place' | 'assumptions'> {
  readonly scenario: Scenario;
  readonly readFile: (relativePath: string) => string;
}
/** Told of each problem: its place in the file of changes, what it is said of, and what it is. */
export type Wrong = (path: Path, label: string, finding: Omit<Finding, 'path'>) => void;

/** Changes made together: where what is wrong with all of them is said, of whom, and what they are. */
export interface Together {
  readonly at: Path;
  readonly of: string;
  /** Such as `this what-if`. */
  readonly is: string;
}

/** An edit, whose it is, where it stands in the file of changes and where in the scenario. */
export interface Edit extends Pick<Asked, 'at' | 'of'> {
  readonly path: Path;
}

/** Makes one change by a path. */
export function editedBy(
  value: unknown,
  { key, given, at, pathAt, of }: Asked,
  before: readonly Edit[],
  { is }: Together,
  wrong: Wrong,
): { readonly value: unknown; readonly path: Path; readonly change: Change } | null {
  const refused = (...told: Parameters<Wrong>): null => {
    wrong(...told);
    return null;
  };
  const isRemoval = key === 'remove',
    text = isRemoval ? given : key;
  if (typeof text !== 'string' || /[\t\n]/.test(text))
    return refused(at, of, { wanted: 'the path of a key to take out', seen: saySeen(text) });
  const found = findPath(value, text),
    label = `${of}: ${text}`;
  if (found.fault !== undefined)
    return refused(pathAt ?? at, label, { ...found.fault, atKey: !isRemoval && pathAt === undefined });
  const { path, isNew } = found,
    old = valueAt(value, path);
  if (isRemoval && (isNew || typeof path.at(-1) === 'number')) {
    const parent = valueAt(value, path.slice(0, -1));
    return refused(at, label, {
      wanted: isNew
        ? 'a key that is there'
        : 'a key of a map; entries of a list stay, give the whole list anew',
      seen: saySeen(path.at(-1)),
      suggestion: isNew ? nearest(String(path.at(-1)), Object.keys(mapOf(parent))) : undefined,
    });
  }
  if (before.some((other) => startsWith(path, other.path) || startsWith(other.path, path)))
    return refused(at, label, {
      wanted: `each value changed once; another change of ${is} has it, or a part of it, already`,
      atKey: true,
    });
  const after = edited(value, path, isRemoval ? undefined : (given ?? null));
  return {
    value: after,
    path,
    change: {
      path: sayPath(path),
      words: wordsFor(path, after),
      before: isNew ? null : textOf(old),
      after: isRemoval ? null : textOf(given),
    },
  };
}

/** Says what is wrong with the changed scenario at the change that it comes of. */
export function saidOf(
  finding: Finding,
  edits: readonly Edit[],
  named: Together,
  base: Changeable,
  wrong: Wrong,
): void {
  const under = edits.find(({ path }) => startsWith(finding.path, path)),
    around = edits.find(({ path }) => startsWith(path, finding.path));
  const label = (of: string): string => `${of}: ${sayPath(finding.path)}`;
  if (under !== undefined)
    wrong([...under.at, ...finding.path.slice(under.path.length)], label(under.of), finding);
  else if (around !== undefined && finding.path.length > 0)
    wrong(around.at, label(around.of), { ...finding, atKey: true });
  else {
    // Some other line of the scenario does not go with the changes.
    const { file: there, line } = base.place(finding);
    wrong(named.at, label(named.of), {
      ...finding,
      wanted: `${finding.wanted} (${there}:${line})`,
      atKey: true,
    });
  }
}

const startsWith = (path: Path, head: Path): boolean =>
  head.length <= path.length && head.every((part, i) => part === path[i]);
