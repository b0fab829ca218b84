import { askedOf } from './changes/change.js';
import type { Change, Changeable, Wrong } from './changes/edit.js';
import { checked } from './checked.js';
import { digest } from './digest.js';
import { CHANGES, MOST_WHAT_IFS, WHAT_IFS } from './file/ours.js';
import { saySeen, sortProblems } from './file/problem.js';
import { readSource } from './file/source.js';
import { wholeOf } from './file/whole-of.js';
import { parseYaml } from './file/yaml.js';
import { changedAndMade } from './made/changed.js';
import { withMade } from './made/with-made.js';
import type { Problem } from './types/problem.js';
import type { Scenario } from './types/scenario.js';
import { nearest } from './values/nearest.js';
import { isRawMap, listOf, mapOf } from './values/raw.js';

export type { Change };

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

/** The name of the scenario itself in a comparison. */
export const BASE = 'base';
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
  const same = changeable(base, readFile);
  const wrong: Wrong = (path, label, finding) =>
    void problems.push({ ...source.place({ ...finding, path }), path: label });

  const entries = Object.entries(mapOf(source.value));
  if (source.value !== undefined && (entries.length === 0 || entries.length > MOST_WHAT_IFS))
    wrong([], '', {
      wanted: WHAT_IFS.wanted,
      seen: isRawMap(source.value) ? `${entries.length}` : saySeen(source.value),
    });

  const seen = new Map([[digest(withMade(same).scenario ?? same.scenario), 'the scenario itself']]);
  const whatIfs = entries.flatMap(([name, entry]): WhatIf[] => {
    const before = problems.length;
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
    const asked = askedOf(changes, [name, 'changes'], name, wrong);
    if (problems.length > before) return [];

    const changed = changedAndMade(same, asked, { at: [name], of: name, is: 'this what-if' }, wrong);
    if (changed === undefined) return [];
    const key = digest(changed.scenario),
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
        ...changed,
      },
    ];
  });
  return problems.length > 0 ? { problems: sortProblems(problems, file) } : { whatIfs };
}

/**
 * A scenario that was read without a problem, as what is changed: as written, with nothing made.
 * @throws RangeError where it has one
 */
export function changeable(
  base: { readonly text: string; readonly file: string },
  readFile: (relativePath: string) => string,
): Changeable {
  const whole = wholeOf(base.text, base.file, readFile),
    { scenario } = checked(whole.value, readFile);
  if (scenario === undefined)
    throw new RangeError(
      `${base.file}: expected a scenario that reads without a problem, to change things in`,
    );
  return { ...whole, scenario, readFile };
}
