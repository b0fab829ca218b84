import fc from 'fast-check';
import { parse, stringify } from 'yaml';
import { anyKind } from './batch.js';
import { judgeRead } from './demands.js';
import { hostileName, hostileValue } from './hostile.js';
import type { Reader } from './reader.js';
import { DEMO, DEMO_WHAT_IFS, type Source, STARTER } from './sources.js';
import { editedText, type TextEdit, yamlEdits } from './texts.js';
import { alikeOf, editedTree, type TreeEdit, treeEdits } from './trees.js';

/** Changes of the starter: paths by number with a value; a name of its own is put in place of a part. */
interface Change {
  readonly path: number;
  readonly part: number;
  readonly name: string;
  readonly isNamed: boolean;
  readonly isRemoval: boolean;
  /** Its value is that of a key of the same name in some scenario, by number. */
  readonly alike: number | null;
  readonly value: unknown;
}

/** Paths as they are written in what-ifs. */
function pathsIn(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return path === '' ? [] : [path];
  const inner = Array.isArray(value)
    ? value.flatMap((each, i) => pathsIn(each, `${path}[${i}]`))
    : Object.entries(value).flatMap(([key, each]) => pathsIn(each, path === '' ? key : `${path}.${key}`));
  return path === '' ? inner : [path, ...inner];
}
const PATHS = pathsIn(parse(STARTER.files[STARTER.main] ?? ''));

const change: fc.Arbitrary<Change> = fc.record({
  path: fc.nat(),
  part: fc.nat(),
  name: hostileName,
  isNamed: fc.integer({ min: 0, max: 3 }).map((n) => n === 0),
  alike: fc.option(fc.nat(), { freq: 3 }),
  isRemoval: fc.integer({ min: 0, max: 3 }).map((n) => n === 0),
  value: hostileValue,
});
const made = fc.array(fc.tuple(hostileName, fc.array(change, { minLength: 1, maxLength: 2 })), {
  minLength: 1,
  maxLength: 2,
});

function pathOf({ path, part, name, isNamed }: Change): string {
  const known = PATHS[path % PATHS.length] ?? '',
    parts = known.split('.');
  if (isNamed) parts[part % parts.length] = name;
  return parts.join('.');
}
const valueOf = (each: Change): unknown =>
  each.alike === null ? each.value : alikeOf(/[^.]*$/.exec(pathOf(each))?.[0] ?? '', each.alike);
const ofChanges = (whatIfs: readonly (readonly [string, readonly Change[]])[]): string =>
  stringify(
    Object.fromEntries(
      whatIfs.map(([name, changes]) => [
        name,
        {
          changes: changes.map((each) =>
            each.isRemoval ? { remove: pathOf(each) } : { [pathOf(each)]: valueOf(each) },
          ),
        },
      ]),
    ),
    { aliasDuplicateObjects: false },
  );

type Case =
  | { readonly tree: TreeEdit[] }
  | { readonly text: TextEdit[] }
  | { readonly changes: readonly (readonly [string, readonly Change[]])[] };

function written(of: Case): { readonly text: string; readonly base: Source } {
  if ('changes' in of) return { text: ofChanges(of.changes), base: STARTER };
  const text = 'tree' in of ? editedTree(DEMO_WHAT_IFS, of.tree) : editedText(DEMO_WHAT_IFS, of.text);
  return { text, base: DEMO };
}

export const whatIfs = anyKind({
  name: 'what-ifs',
  batch: 25,
  cases: fc.oneof(fc.record({ tree: treeEdits }), fc.record({ text: yamlEdits }), {
    weight: 4,
    arbitrary: fc.record({ changes: made }),
  }),
  judge: async (of: Case, reader: Reader) => {
    const {
      text,
      base: { main, files },
    } = written(of);
    const base = { text: files[main] ?? '', file: main };
    return judgeRead(await reader.ask({ text, file: 'what-ifs.yaml', files, base, run: 'changes' in of }));
  },
  show: (of) => {
    const { text, base } = written(of);
    return {
      ...base.files,
      'what-ifs.yaml': text,
      'command.txt': `rateproof compare ${base.main} what-ifs.yaml --replications 2\n`,
    };
  },
});
