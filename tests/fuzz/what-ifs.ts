import fc from 'fast-check';
import { parse, stringify } from 'yaml';
import { anyKind } from './batch.js';
import { judgeProcess, judgeRead, type Verdict } from './demands.js';
import type { Shown } from './kinds.js';
import { runProgram, withFiles } from './program.js';
import type { Read, Reader } from './reader.js';
import { hostileName, hostileValue } from './spoilt/hostile.js';
import { DEMO, DEMO_WHAT_IFS, type Files, type Source, STARTER } from './spoilt/sources.js';
import { editedText, type TextEdit, yamlEdits } from './spoilt/texts.js';
import { alikeOf, editedTree, type TreeEdit, treeEdits } from './spoilt/trees.js';

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

/** True once in so many. */
const once = (many: number): fc.Arbitrary<boolean> =>
  fc.integer({ min: 0, max: many - 1 }).map((n) => n === many - 1);

/** Of `odd` changes one has an odd value or path, the others what stands somewhere. */
const changed = (odd: number): fc.Arbitrary<readonly (readonly [string, readonly Change[]])[]> => {
  const change = fc.record({
    path: fc.nat(),
    part: fc.nat(),
    name: hostileName,
    isNamed: once(3 * odd),
    isRemoval: once(3 * odd),
    alike: fc.option(fc.nat(), { freq: odd }),
    value: hostileValue,
  });
  const name = fc.oneof(
    { weight: odd, arbitrary: fc.constantFrom('one', 'two', 'three') },
    { weight: 1, arbitrary: hostileName },
  );
  return fc.array(fc.tuple(name, fc.array(change, { minLength: 1, maxLength: 2 })), {
    minLength: 1,
    maxLength: 2,
  });
};

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

function ask(of: Case, reader: Reader): Promise<Read> {
  const {
    text,
    base: { main, files },
  } = written(of);
  const base = { text: files[main] ?? '', file: main };
  return reader.ask({ text, file: 'what-ifs.yaml', files, base, run: 'changes' in of });
}

const argsOf = (of: Case): string[] => [
  ...['compare', written(of).base.main, 'what-ifs.yaml'],
  ...['--replications', '2', '--workers', '1'],
];
const filesOf = (of: Case): Files => ({ ...written(of).base.files, 'what-ifs.yaml': written(of).text });
const show = (of: Case): Shown => ({
  ...filesOf(of),
  'command.txt': `rateproof ${argsOf(of).join(' ')}\n`,
});

export const whatIfs = anyKind<Case>({
  name: 'what-ifs',
  batch: 25,
  cases: fc.oneof(fc.record({ tree: treeEdits }), fc.record({ text: yamlEdits }), {
    weight: 4,
    arbitrary: fc.record({ changes: changed(1) }),
  }),
  judge: async (of, reader) => judgeRead(await ask(of, reader)),
  show,
});

/** Runs that take so long, in seconds, are not repeated. */
const QUICK = 0.3;

/** What is sound, if odd, with the whole program. */
export const comparisons = anyKind<Case>({
  name: 'comparisons',
  batch: 25,
  cases: fc.record({ changes: changed(6) }),
  judge: async (of, reader): Promise<Verdict> => {
    const read = await ask(of, reader),
      verdict = judgeRead(read);
    if (verdict.kind !== 'run') return verdict;
    if (read.seconds > QUICK) return { kind: 'skipped', why: 'too long' };
    return judgeProcess(await withFiles(filesOf(of), (folder) => runProgram(folder, argsOf(of))), true);
  },
  show,
});
