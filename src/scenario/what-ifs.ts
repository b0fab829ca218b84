import { checked } from './checked.js';
import { digest } from './digest.js';
import { edited, findPath } from './file/edit-path.js';
import { withIncludes } from './file/include.js';
import { CHANGES, MOST_WHAT_IFS, WHAT_IFS } from './file/ours.js';
import { sayPath, saySeen, sortProblems } from './file/problem.js';
import { readSource } from './file/source.js';
import { parseYaml } from './file/yaml.js';
import type { Finding, Path, Problem } from './types/problem.js';
import type { Scenario } from './types/scenario.js';
import { nearest } from './values/nearest.js';
import { isRawMap, listOf, mapOf, textOf, valueAt } from './values/raw.js';
import { wordsFor } from './words/words.js';

/** What a what-if changes: the path, also in words, and the values on one line; null where there is none. */
export interface Change {
  readonly path: string;
  readonly words: string;
  readonly before: string | null;
  readonly after: string | null;
}
/** A scenario that differs from the base by some changes. */
export interface WhatIf {
  readonly name: string;
  readonly note: string | null;
  readonly changes: readonly Change[];
  readonly scenario: Scenario;
}
export type WhatIfsRead =
  | { readonly whatIfs: readonly WhatIf[]; readonly problems?: undefined }
  | { readonly whatIfs?: undefined; readonly problems: readonly Problem[] };

/** An edit, where it stands in the file of what-ifs and where in the scenario. */
interface Edit {
  readonly at: Path;
  readonly path: Path;
  readonly change: Change;
}

/** The name of the scenario itself in a comparison. */
export const BASE = 'base';
/** What must be as in the base, or its weeks could not be set side by side. */
const SAME_TIME = ['start', 'zone', 'lengthMin', 'warmUpMin'] as const;

/**
 * Reads named changes of a scenario that was read without a problem from `base`. Each what-if is checked like
 * a scenario of its own; what is then wrong is said at the line of the change. `readFile` as for
 * `readScenario`: files are named from the folder of the scenario. Never throws itself.
 */
export function readWhatIfs(
  text: string,
  file: string,
  base: { readonly text: string; readonly file: string },
  readFile: (relativePath: string) => string,
): WhatIfsRead {
  const source = readSource(text, file, '.', WHAT_IFS),
    notes = mapOf(source.value === undefined ? undefined : parseYaml(text, file).value),
    problems: Problem[] = [...source.faults, ...source.problems];
  const whole = withIncludes(readSource(base.text, base.file), readFile),
    same = checked(whole.value, readFile).scenario;
  if (same === undefined)
    throw new RangeError(
      `${base.file}: expected a scenario that reads without a problem, to change things in`,
    );
  const wrong = (path: Path, label: string, finding: Omit<Finding, 'path'>): void =>
    void problems.push({ ...source.place({ ...finding, path }), path: label });

  const entries = Object.entries(mapOf(source.value));
  if (source.value !== undefined && (entries.length === 0 || entries.length > MOST_WHAT_IFS))
    wrong([], '', {
      wanted: WHAT_IFS.wanted,
      seen: isRawMap(source.value) ? `${entries.length}` : saySeen(source.value),
    });

  const seen = new Map([[digest(same), 'the scenario itself']]);
  const whatIfs = entries.flatMap(([name, entry]): WhatIf[] => {
    const before = problems.length,
      edits: Edit[] = [];
    let value = whole.value;
    if (name === BASE)
      wrong([name], name, { wanted: 'another name; this one means the scenario itself', atKey: true });
    for (const key of Object.keys(mapOf(entry)))
      if (key !== 'changes' && key !== 'note')
        wrong([name, key], name, {
          wanted: 'changes and note',
          seen: JSON.stringify(key),
          suggestion: nearest(key, ['changes', 'note']),
          atKey: true,
        });
    const { changes } = mapOf(entry),
      list = listOf(changes);
    if (list.length === 0)
      wrong(changes === undefined ? [name] : [name, 'changes'], name, {
        wanted: CHANGES,
        seen: saySeen(isRawMap(entry) ? changes : entry),
        atKey: changes === undefined,
      });
    list.forEach((item, i) => {
      const here = Array.isArray(changes) ? [name, 'changes', i] : [name, 'changes'];
      if (!isRawMap(item) || Object.keys(item).length === 0)
        wrong(here, name, { wanted: 'path: new value, or remove: path', seen: saySeen(item) });
      for (const [key, given] of Object.entries(mapOf(item))) edit(key, given, [...here, key]);
    });

    /** Makes one change in `value`. */
    function edit(key: string, given: unknown, at: Path): void {
      const isRemoval = key === 'remove',
        text = isRemoval ? given : key;
      if (typeof text !== 'string' || /[\t\n]/.test(text)) {
        wrong(at, name, { wanted: 'the path of a key to take out', seen: saySeen(text) });
        return;
      }
      const found = findPath(value, text),
        label = `${name}: ${text}`;
      if (found.fault !== undefined) {
        wrong(at, label, { ...found.fault, atKey: !isRemoval });
        return;
      }
      const { path, isNew } = found,
        old = valueAt(value, path);
      if (isRemoval && (isNew || typeof path.at(-1) === 'number')) {
        const parent = valueAt(value, path.slice(0, -1));
        wrong(at, label, {
          wanted: isNew
            ? 'a key that is there'
            : 'a key of a map; entries of a list stay, give the whole list anew',
          seen: saySeen(path.at(-1)),
          suggestion: isNew ? nearest(String(path.at(-1)), Object.keys(mapOf(parent))) : undefined,
        });
        return;
      }
      if (edits.some((other) => startsWith(path, other.path) || startsWith(other.path, path))) {
        wrong(at, label, {
          wanted: 'each value changed once; another change of this what-if has it, or a part of it, already',
          atKey: true,
        });
        return;
      }
      value = edited(value, path, isRemoval ? undefined : (given ?? null));
      edits.push({
        at,
        path,
        change: {
          path: sayPath(path),
          words: wordsFor(path, value),
          before: isNew ? null : textOf(old),
          after: isRemoval ? null : textOf(given),
        },
      });
    }
    if (problems.length > before) return [];

    const { scenario, findings } = checked(value, readFile);
    for (const finding of findings) {
      const under = edits.find(({ path }) => startsWith(finding.path, path)),
        around = edits.find(({ path }) => startsWith(path, finding.path));
      const label = `${name}: ${sayPath(finding.path)}`;
      if (under !== undefined) wrong([...under.at, ...finding.path.slice(under.path.length)], label, finding);
      else if (around !== undefined && finding.path.length > 0)
        wrong(around.at, label, { ...finding, atKey: true });
      else {
        // Some other line of the scenario does not go with the changes.
        const { file: there, line } = whole.place(finding);
        wrong([name], label, { ...finding, wanted: `${finding.wanted} (${there}:${line})`, atKey: true });
      }
    }
    if (scenario === undefined || findings.length > 0) return [];
    const moved = SAME_TIME.find((key) => scenario.programme[key] !== same.programme[key]);
    if (moved !== undefined)
      wrong([name], name, {
        wanted:
          'start, zone, length and warm up of the programme as in the scenario, so that weeks can ' +
          'be compared',
        atKey: true,
      });
    const key = digest(scenario),
      twin = seen.get(key);
    if (twin !== undefined)
      wrong([name], name, {
        wanted: 'changes that change something',
        seen: `the same as ${twin}`,
        atKey: true,
      });
    seen.set(key, JSON.stringify(name));
    const note = mapOf(notes[name])['note'];
    return [
      {
        name,
        note: typeof note === 'string' ? note : null,
        changes: edits.map(({ change }) => change),
        scenario: { ...scenario, assumptions: whole.assumptions },
      },
    ];
  });
  return problems.length > 0 ? { problems: sortProblems(problems, file) } : { whatIfs };
}

const startsWith = (path: Path, head: Path): boolean =>
  head.length <= path.length && head.every((part, i) => part === path[i]);
