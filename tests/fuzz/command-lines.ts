import fc from 'fast-check';
import { optionName } from '../../src/cli/arguments/option.js';
import { readArguments } from '../../src/cli/arguments/parse.js';
import { COMMANDS } from '../../src/cli/commands/index.js';
import { UsageError } from '../../src/cli/usage-error.js';
import { shown } from '../../src/study/shown.js';
import { anyKind } from './batch.js';
import { failed, judgeProcess, rawMark, type Verdict } from './demands.js';
import type { Shown } from './kinds.js';
import { runProgram, withFiles } from './program.js';
import { NAMES } from './spoilt/hostile.js';
import type { Files } from './spoilt/sources.js';

/** A minute's work for any study. Invented. */
const TINY = `scenario: Tiny
programme: { start: 2027-03-01, quantity: 6, rate: { per day: 2 } }
sites: { works: { stations: { bench: { buffer: 2 }, trim bench: { buffer: 1 } } } }
route:
  - { step: build, at: bench, work: { value: { exponential: { mean: 2 h } }, basis: guess } }
  - { step: trim, at: trim bench, work: 1 h }
`;
const FILES: Files = {
  'tiny.yaml': TINY,
  'what-ifs.yaml': 'second bench: { changes: [{ sites.works.stations.bench.places: 2 }] }\n',
  'wrong.yaml': 'scenario: [\n',
  'folder.yaml/readme.md': 'a folder',
};

/** Words that are right for something; none leads out of the folder. */
const WORDS = [
  ...[
    'tiny.yaml',
    'tiny.yaml',
    'tiny.yaml',
    'what-ifs.yaml',
    'wrong.yaml',
    'folder.yaml',
    'nowhere.yaml',
    'out',
  ],
  ...[
    'deep/er/out',
    'tiny.yaml/out',
    '1',
    '2',
    '3',
    '5',
    '40',
    '0',
    '-1',
    '1.5',
    '1e3',
    '1 %',
    '5%',
    '100 %',
    '0 %',
  ],
  ...[
    'lead-time 5 %',
    'throughput',
    'throughput,lead-time,cost',
    'cost',
    'day',
    'week',
    'least',
    'present',
    'bench',
  ],
  ...[
    'trim bench',
    '1/2',
    '2/2',
    '3/2',
    '0/0',
    '999999/999999',
    '9999999999999999',
    '0.0000001',
    '--',
    '-',
    '.',
  ],
];
// What leads out of the folder, or ends a text for the system, is no word for a process.
const ODD = NAMES.filter((name) => !/[/\\\0]/.test(name));
const OPTIONS = [
  ...new Set(COMMANDS.flatMap(({ options }) => Object.keys(options).map((key) => `--${optionName(key)}`))),
];
const text = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...WORDS) },
  { weight: 2, arbitrary: fc.constantFrom(...ODD) },
  {
    weight: 1,
    arbitrary: fc.string({
      unit: fc.constantFrom('a', 'b', '0', '1', ' ', '-', '=', '%', ',', 'é', '"', "'", '💥'),
      maxLength: 8,
    }),
  },
);
const option = fc.oneof(
  { weight: 8, arbitrary: fc.constantFrom(...OPTIONS) },
  {
    weight: 1,
    arbitrary: fc.constantFrom('--help', '--version', '-h', '--no-json', '--Seed', '--see', '---seed', '--='),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom('--constructor', '--__proto__', '--toString', '--_', '--$0', '--seed.x'),
  },
);
const piece: fc.Arbitrary<readonly string[]> = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(option, text) },
  { weight: 2, arbitrary: fc.tuple(option, text).map(([name, value]) => [`${name}=${value}`]) },
  { weight: 2, arbitrary: fc.tuple(option) },
  { weight: 1, arbitrary: fc.tuple(text) },
);

/** A command with its words and some of its own options, and one thing more or less. */
const sensible = fc
  .constantFrom(...COMMANDS.filter(({ options }) => Object.keys(options).length > 0))
  .chain(({ name, words, options }) =>
    fc.tuple(
      fc.constant([
        name,
        ...Object.keys(words).map((key) => (key === 'whatIfsFile' ? 'what-ifs.yaml' : 'tiny.yaml')),
      ]),
      fc.array(
        fc
          .tuple(fc.constantFrom(...Object.entries(options)), text)
          .map(([[key, { isFlag }], value]) =>
            isFlag ? [`--${optionName(key)}`] : [`--${optionName(key)}`, value],
          ),
        { maxLength: 4 },
      ),
      fc.array(piece, { maxLength: 1 }),
    ),
  )
  .map(([first, own, more]) => [...first, ...own.flat(), ...more.flat()]);
const wild = fc
  .tuple(
    fc.oneof(fc.constantFrom(...COMMANDS.map(({ name }) => name)), text),
    fc.array(piece, { maxLength: 6 }),
  )
  .map(([first, rest]) => [first, ...rest.flat()]);
const lines = fc.oneof({ weight: 3, arbitrary: sensible }, { weight: 2, arbitrary: wild });

/** Words behind `--through` would be run, whatever they are. */
const isUnsafe = (args: readonly string[]): boolean =>
  args.some((arg) => /\0|\.\.|=\/|^\/|^--through/.test(arg));
const show = (args: readonly string[]): Shown => ({ ...FILES, 'command.json': `${JSON.stringify(args)}\n` });

/** Reads a command line, or gives why it is refused. Throws what is no error of the user. */
function readLine(args: readonly string[]): ReturnType<typeof readArguments> | UsageError {
  try {
    return readArguments(COMMANDS, args);
  } catch (error) {
    if (error instanceof UsageError) return error;
    throw error;
  }
}

/** As they are printed. */
function judgeLines(lines: readonly string[]): Verdict {
  const wrong = lines
    .map(shown)
    .find((line) => line === '' || line.includes('\n') || rawMark(line) !== undefined);
  return wrong === undefined ? { kind: 'refused' } : failed(`no line of text: ${JSON.stringify(wrong)}`);
}

/** The reader of the command line alone: thousands a minute. */
export const readLines = anyKind({
  name: 'arguments',
  batch: 100,
  cases: lines,
  judge: (args): Promise<Verdict> => {
    const read = readLine(args);
    if (read instanceof UsageError)
      return Promise.resolve(
        judgeLines([read.message, ...read.details, ...(read.hint === undefined ? [] : [read.hint])]),
      );
    return Promise.resolve(
      'run' in read || read.text !== '' ? { kind: 'accepted' } : failed('neither a command nor a text'),
    );
  },
  show,
});

/** What makes a study short, where the command knows it; the last value of an option counts. */
function short(args: readonly string[]): readonly string[] {
  const { options = {} } = COMMANDS.find(({ name }) => name === args[0]) ?? {};
  const more = Object.entries({ replications: '3', workers: '1', weeks: '4' }).flatMap(([name, value]) =>
    name in options ? [`--${name}`, value] : [],
  );
  return [...args, ...more];
}

/** The whole program with a command line. */
export const commandLines = anyKind({
  name: 'command lines',
  batch: 15,
  cases: lines.filter((args) => !isUnsafe(args)),
  judge: async (args): Promise<Verdict> => {
    const asked = args.includes('--') ? args : short(args),
      read = readLine(asked),
      mayBeLong = 'run' in read;
    const outcome = await withFiles(FILES, (folder) => runProgram(folder, asked)),
      verdict = judgeProcess(outcome, mayBeLong);
    if (verdict.kind === 'failed' || verdict.kind === 'skipped') return verdict;
    if (read instanceof UsageError && outcome.code !== 2)
      return failed(`refused by its reader, but exit code ${outcome.code}`);
    return verdict;
  },
  show: (args) => show(args.includes('--') ? args : short(args)),
});
