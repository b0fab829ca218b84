import { cpSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { anyKind } from './batch.js';
import { failed, judgeProcess, type Verdict } from './demands.js';
import type { Shown } from './kinds.js';
import { runProgram, withCopyOf } from './program.js';
import { editedTree, type TreeEdit, treeEdits } from './spoilt/trees.js';

/** Invented; random, so that a value that is lost or taken from elsewhere shows. */
const SCENARIO = `scenario: Tiny
programme: { start: 2027-03-01, quantity: 6, rate: { per day: 2 } }
sites: { works: { stations: { bench: { buffer: 2 } } } }
route: [{ step: build, at: bench, work: { exponential: { mean: 2 h } } }]
`;
const STUDY = ['simulate', 'tiny.yaml', '--replications', '4', '--workers', '1', '--finding-ok'];
const MERGE = ['merge', 'one', 'two', '--workers', '1', '--finding-ok', '--json'],
  RESUMED = [...STUDY, '--shard', '1/1', '--out', 'out'];

/** What is done to the files of a folder. */
type Damage =
  | {
      readonly how: 'bytes';
      readonly file: number;
      readonly at: number;
      readonly bits: number;
      readonly many: number;
    }
  | { readonly how: 'cut' | 'lose' | 'folder' | 'empty'; readonly file: number; readonly at: number }
  | { readonly how: 'insert'; readonly file: number; readonly at: number; readonly bytes: Uint8Array }
  | { readonly how: 'swap' | 'copy'; readonly file: number; readonly other: number }
  | { readonly how: 'again'; readonly file: number; readonly at: number; readonly many: number }
  | { readonly how: 'tree'; readonly file: number; readonly edits: TreeEdit[] };

const file = fc.nat(),
  at = fc.nat();
const damage: fc.Arbitrary<Damage> = fc.oneof(
  fc.record({
    how: fc.constant('bytes' as const),
    file,
    at,
    bits: fc.integer({ min: 1, max: 255 }),
    many: fc.integer({ min: 1, max: 40 }),
  }),
  fc.record({
    how: fc.constantFrom('cut' as const, 'lose' as const, 'folder' as const, 'empty' as const),
    file,
    at,
  }),
  fc.record({
    how: fc.constant('insert' as const),
    file,
    at,
    bytes: fc.uint8Array({ minLength: 1, maxLength: 30 }),
  }),
  fc.record({ how: fc.constantFrom('swap' as const, 'copy' as const), file, other: file }),
  fc.record({ how: fc.constant('again' as const), file, at, many: fc.integer({ min: 1, max: 2000 }) }),
  fc.record({ how: fc.constant('tree' as const), file, edits: treeEdits }),
);

function spoil(folder: string, files: readonly string[], damages: readonly Damage[]): void {
  const path = (which: number): string => join(folder, files[which % files.length] ?? '');
  for (const each of damages) {
    const target = path(each.file);
    // What an earlier one has taken away.
    const bytes = read(target);
    if (bytes === undefined) continue;
    const from = 'at' in each ? each.at % (bytes.length + 1) : 0;
    if (each.how === 'bytes') {
      for (let i = from; i < Math.min(bytes.length, from + each.many); i++)
        bytes[i] = (bytes[i] ?? 0) ^ each.bits;
      writeFileSync(target, bytes);
    } else if (each.how === 'cut') writeFileSync(target, bytes.subarray(0, from));
    else if (each.how === 'empty') writeFileSync(target, '');
    else if (each.how === 'insert')
      writeFileSync(target, Buffer.concat([bytes.subarray(0, from), each.bytes, bytes.subarray(from)]));
    else if (each.how === 'again')
      writeFileSync(target, Buffer.concat([bytes, bytes.subarray(from, from + each.many)]));
    else if (each.how === 'tree') {
      if (target.endsWith('.json')) writeFileSync(target, asJson(bytes.toString('utf8'), each.edits));
    } else if (!('other' in each)) {
      rmSync(target);
      if (each.how === 'folder') mkdirSync(target);
    } else {
      const other = path(each.other),
        theirs = read(other);
      if (theirs === undefined) continue;
      writeFileSync(target, theirs);
      if (each.how === 'swap') writeFileSync(other, bytes);
    }
  }
}

function read(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}

/** JSON is YAML; what an earlier damage has made unreadable stays. */
function asJson(text: string, edits: readonly TreeEdit[]): string {
  try {
    return editedTree(text, edits, (value) => JSON.stringify(value, null, 1));
  } catch {
    return text;
  }
}

/** The shards and the journal of the study, made once; what the whole study says, and all its values. */
interface Made {
  readonly shards: string;
  readonly journal: string;
  readonly answer: string;
  readonly values: Buffer;
}
let made: Promise<Made> | undefined;
async function make(): Promise<Made> {
  const root = mkdtempSync(join(tmpdir(), 'rateproof-fuzz-')),
    folder = join(root, 'shards'),
    journal = join(root, 'journal');
  process.on('exit', () => {
    rmSync(root, { recursive: true, force: true });
  });
  mkdirSync(folder);
  writeFileSync(join(folder, 'tiny.yaml'), SCENARIO);
  const run = async (...args: string[]): Promise<string> => {
    const { code, stdout, stderr } = await runProgram(folder, args, 120);
    if (code !== 0) throw new Error(`expected a study that runs, got ${code}: ${stderr}`);
    return stdout;
  };
  const answer = await run(...STUDY, '--json');
  await run(...STUDY, '--shard', '1/2', '--out', 'one');
  await run(...STUDY, '--shard', '2/2', '--out', 'two');
  await run(...STUDY, '--shard', '1/1', '--out', 'all');
  // The journal beside a folder that is on its way is the same file as that in it.
  mkdirSync(journal);
  cpSync(join(folder, 'tiny.yaml'), join(journal, 'tiny.yaml'));
  renameSync(join(folder, 'all', 'shard.journal'), join(journal, 'out.journal'));
  cpSync(join(folder, 'one', 'shard.journal'), join(journal, 'other.journal'));
  rmSync(join(folder, 'all'), { recursive: true });
  return { shards: folder, journal, answer, values: readFileSync(join(journal, 'out.journal')) };
}

/** An answer that is not refused must be the right one, whatever stood in the files. */
async function judgeIn(
  folder: string,
  args: readonly string[],
  isRight: (stdout: string) => boolean,
): Promise<Verdict> {
  const outcome = await runProgram(folder, args),
    verdict = judgeProcess(outcome, false);
  if (verdict.kind !== 'accepted' || isRight(outcome.stdout)) return verdict;
  return failed(`another answer than that of the whole study: ${outcome.stderr}`);
}

const SHARD_FILES = ['one/shard.json', 'one/shard.journal', 'two/shard.json', 'two/shard.journal'],
  JOURNAL_FILES = ['out.journal', 'out.journal', 'other.journal'];

const kindOf = (name: string, of: 'shards' | 'journal', files: readonly string[], args: readonly string[]) =>
  anyKind({
    name,
    batch: 15,
    cases: fc.array(damage, { minLength: 1, maxLength: 3 }),
    judge: async (damages: readonly Damage[]) => {
      const all = await (made ??= make());
      return withCopyOf(all[of], (folder) => {
        spoil(folder, files, damages);
        return judgeIn(folder, args, (stdout) =>
          of === 'shards'
            ? stdout === all.answer
            : read(join(folder, 'out', 'shard.journal'))?.equals(all.values) === true,
        );
      });
    },
    show: (damages): Shown => ({
      'tiny.yaml': SCENARIO,
      'damage.json': JSON.stringify({ damages, files }, null, 1),
      'command.txt': `rateproof ${args.join(' ')}\n`,
    }),
  });

export const shards = kindOf('shards', 'shards', SHARD_FILES, MERGE);
export const journals = kindOf('journals', 'journal', JOURNAL_FILES, RESUMED);
