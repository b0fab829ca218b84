import { availableParallelism } from 'node:os';
import yargs, { type Argv } from 'yargs';
import { HELP } from './help.js';
import { MOST_REPLICATIONS } from './readers.js';
import { perCent, positiveNumber, wholeNumber } from './readers.js';
import { precisionAsked } from './precision.js';
import { shardOf } from './shard.js';
import { rateOptions, rateRequest } from './rate.js';
import type { AnswerRequest, Request, RunRequest } from './request.js';
import { PROGRAM_VERSION } from '../../study/version.js';
import { UsageError } from '../usage-error.js';
import { MESSAGES, wrongWords } from './wrong-words.js';

declare module 'yargs' {
  // Missing in the types of yargs.
  interface Argv<T> {
    usageConfiguration(configuration: { readonly 'hide-types': boolean }): Argv<T>;
  }
}

const MOST_WORKERS = 256,
  MOST_RATE = 100_000,
  MOST_PLACES = 100_000,
  LONGEST_SEED = 200;

/**
 * Reads the command line, without the names of Node and the script. Prints nothing; a wrong one throws a
 * UsageError.
 */
export function readArguments(args: readonly string[]): Request {
  let request: Request | undefined,
    text = '';
  const set = (found: Request): void => {
    request = found;
  };
  const parser = yargs()
    .scriptName('rateproof')
    .parserConfiguration({
      // One spelling of an option, and its last value counts; values stay text until they are checked here.
      'camel-case-expansion': false,
      'boolean-negation': false,
      'dot-notation': false,
      'duplicate-arguments-array': false,
      'parse-numbers': false,
      'parse-positional-numbers': false,
    })
    .detectLocale(false)
    // The types of yargs know no message in singular and plural.
    .updateStrings(MESSAGES as unknown as Record<string, string>)
    .strict()
    .exitProcess(false)
    // Types and defaults stand in the descriptions; unwrapped, the examples keep their indent.
    .usageConfiguration({ 'hide-types': true })
    .wrap(null)
    .usage(HELP.main)
    .epilogue(HELP.epilogue)
    .command('check <FILE>', 'capacity by arithmetic', checkOptions, (argv) => {
      set({ command: 'check', file: argv.FILE, json: argv.json });
    })
    .command('simulate <FILE>', 'replications, with intervals', simulateOptions, (argv) => {
      set(simulateRequest(argv));
    })
    .command(
      'merge',
      'finished shards DIR.. of simulate or compare, to the answer of one run',
      mergeOptions,
      (argv) => {
        set(mergeRequest(argv));
      },
    )
    .command(
      'rate <FILE>',
      'the highest rate that holds',
      (command) => rateOptions(runOptions(fileOption(command.usage(HELP.rate)))),
      (argv) => {
        set({ command: 'rate', ...runRequest(argv), ...rateRequest(argv) });
      },
    )
    .command(
      'reliefs <FILE>',
      'which small change helps most, which number to measure next',
      reliefsOptions,
      (argv) => {
        set(reliefsRequest(argv));
      },
    )
    .command(
      'compare <FILE> <WHATIFS>',
      'the scenario against named changes of it',
      compareOptions,
      (argv) => {
        set(compareRequest(argv));
      },
    )
    .command('buffers <FILE>', 'waiting places, shared out', buffersOptions, (argv) => {
      set(buffersRequest(argv, allOf('at', args)));
    })
    .command('schema', 'JSON Schema of scenario files', schemaOptions, (argv) => {
      set({ command: 'schema', out: given('out', argv.out) });
    })
    .demandCommand(1, 'expected a command, got none')
    .version(PROGRAM_VERSION)
    .help()
    // Throwing stops yargs at the first thing that is wrong. Without a message it is an error of ours that
    // comes back.
    .fail((message: string | null, error: unknown) => {
      throw message === null ? error : wrongWords(message, args);
    });
  // yargs is silent, and hands over what it would have printed, when it gets a callback.
  void parser.parse(args, {}, (_error, _argv, output) => {
    text = output;
  });
  return request ?? { command: 'text', text };
}

function checkOptions(parser: Argv) {
  return fileOption(parser.usage(HELP.check)).option('json', {
    type: 'boolean',
    default: false,
    describe: 'print JSON instead of the table',
  });
}

function simulateOptions(parser: Argv) {
  return shardOption(journeyOption(runOptions(fileOption(parser.usage(HELP.simulate)))))
    .option('replications', {
      type: 'string',
      requiresArg: true,
      default: '20',
      describe: 'how often the whole build is run, default 20',
    })
    .option('precision', {
      type: 'string',
      requiresArg: true,
      describe: 'adds replications until means are known to this relative error, such as 1%',
    })
    .option('of', {
      type: 'string',
      requiresArg: true,
      describe:
        'what is to be so precise: throughput, lead-time, wip, cost, with commas between; default throughput',
    })
    .option('most', {
      type: 'string',
      requiresArg: true,
      describe: 'replications at most with --precision, default 1000',
    });
}

function mergeOptions(parser: Argv) {
  // Of a positional that may be there several times yargs would keep the last alone, as of options.
  return journeyOption(answerOptions(parser.usage(HELP.merge).strict(false).strictOptions()));
}

function journeyOption<Options>(parser: Argv<Options>) {
  return parser.option('journey', {
    type: 'string',
    requiresArg: true,
    describe:
      'build number of the unit whose way is told step by step, default one with the median lead time',
  });
}

function shardOption<Options>(parser: Argv<Options>) {
  return parser.option('shard', {
    type: 'string',
    requiresArg: true,
    describe: 'I/N: run only the I-th of N parts into the folder --out, for `rateproof merge`',
  });
}

function reliefsOptions(parser: Argv) {
  return runOptions(fileOption(parser.usage(HELP.reliefs)))
    .option('rate', {
      type: 'string',
      requiresArg: true,
      describe: 'highest rate of the plan, units a working day, default as in the scenario',
    })
    .option('replications', {
      type: 'string',
      requiresArg: true,
      default: '40',
      describe: 'most that one change is given, default 40',
    });
}

function compareOptions(parser: Argv) {
  return shardOption(runOptions(fileOption(parser.usage(HELP.compare))))
    .positional('WHATIFS', { type: 'string', demandOption: true, describe: 'named changes of it, YAML' })
    .option('replications', {
      type: 'string',
      requiresArg: true,
      default: '40',
      describe: 'how often each variant is run, default 40',
    });
}

function buffersOptions(parser: Argv) {
  return runOptions(fileOption(parser.usage(HELP.buffers)))
    .option('budget', {
      type: 'string',
      requiresArg: true,
      describe: 'waiting places in all, for the most throughput',
    })
    .option('target', {
      type: 'string',
      requiresArg: true,
      describe: 'units a working day (an hour in a steady-state run), for the fewest places',
    })
    .option('at', {
      type: 'string',
      requiresArg: true,
      describe:
        'a station or lane whose places are shared out, as often as wanted; default all limited ' +
        'buffers and banks of the route',
    })
    .option('from', {
      type: 'string',
      requiresArg: true,
      default: 'least',
      describe:
        'where the search begins: least (no places) or present (the layout as it is, sooner done), ' +
        'default least',
    })
    .option('replications', {
      type: 'string',
      requiresArg: true,
      default: '20',
      describe: 'of each layout in the search, default 20',
    })
    .option('zone', {
      type: 'string',
      requiresArg: true,
      default: '1 %',
      describe: 'difference in throughput that does not matter, default "1 %"',
    });
}

/** Of every study that runs replications. */
function runOptions<Options>(parser: Argv<Options>) {
  return answerOptions(parser)
    .option('seed', {
      type: 'string',
      requiresArg: true,
      default: '1',
      describe: 'any text; the same seed gives the same results, default 1',
    })
    .option('workers', {
      type: 'string',
      requiresArg: true,
      describe: 'replications run at a time, default one a core; the results do not depend on it',
    });
}

/** What is to become of an answer. */
function answerOptions<Options>(parser: Argv<Options>) {
  return parser
    .option('out', {
      type: 'string',
      requiresArg: true,
      describe: 'folder for the report, which must not exist yet',
    })
    .option('replace', {
      type: 'boolean',
      default: false,
      describe: 'put the report in the place of an older one',
    })
    .option('json', {
      type: 'boolean',
      default: false,
      describe: 'print what results.json holds instead of the table',
    })
    .option('quiet', {
      type: 'boolean',
      default: false,
      describe: 'no progress and no hints; errors are still told',
    })
    .option('finding-ok', {
      type: 'boolean',
      default: false,
      describe: 'exit with 0 even if a finding stands',
    });
}

function schemaOptions(parser: Argv) {
  return parser
    .usage(HELP.schema)
    .option('out', { type: 'string', requiresArg: true, describe: 'file to write instead of printing' });
}

function fileOption(parser: Argv) {
  return parser.positional('FILE', { type: 'string', demandOption: true, describe: 'the scenario, YAML' });
}

type SimulateArguments = Awaited<ReturnType<typeof simulateOptions>['argv']>;
function simulateRequest(argv: SimulateArguments): Request {
  const request = runRequest(argv),
    replications = wholeNumber('replications', argv.replications, 1, MOST_REPLICATIONS);
  return {
    command: 'simulate',
    ...request,
    replications,
    precision: precisionAsked(argv, replications),
    journey: named(argv.journey),
    shard: shardOf(argv, replications),
  };
}

type BuffersArguments = Awaited<ReturnType<typeof buffersOptions>['argv']>;
function buffersRequest(argv: BuffersArguments, at: readonly string[]): Request {
  const { budget, target, from } = argv;
  if ((budget === undefined) === (target === undefined))
    throw new UsageError(
      `expected either --budget or --target, got ${budget === undefined ? 'none' : 'both'}`,
      'for example --budget 20, or --target 4.2',
    );
  if (from !== 'least' && from !== 'present')
    throw new UsageError(
      `--from: expected least or present, got ${JSON.stringify(from)}`,
      'leave --from out for least',
    );
  return {
    command: 'buffers',
    ...runRequest(argv),
    goal:
      budget === undefined
        ? { kind: 'target', rate: positiveNumber('target', target!, MOST_RATE, 'for example --target 4.2') }
        : { kind: 'budget', places: wholeNumber('budget', budget, 0, MOST_PLACES) },
    at,
    from,
    replications: wholeNumber('replications', argv.replications, 3, MOST_REPLICATIONS),
    zone: perCent('zone', argv.zone),
  };
}

/**
 * Every value of an option that may be given several times: the parser keeps the last. It has been through
 * the parser, so it is well-formed.
 */
function allOf(option: string, args: readonly string[]): string[] {
  const flag = `--${option}`;
  return args.flatMap((arg, i) =>
    arg === flag ? (args[i + 1] ?? []) : arg.startsWith(`${flag}=`) ? arg.slice(flag.length + 1) : [],
  );
}

type MergeArguments = Awaited<ReturnType<typeof mergeOptions>['argv']>;
function mergeRequest(argv: MergeArguments): Request {
  const folders = argv._.slice(1).map(String);
  if (folders.length === 0)
    throw new UsageError(
      'expected folders DIR of finished shards, got none',
      'for example rateproof merge out/shard-1 out/shard-2 --out out/line',
    );
  return { command: 'merge', folders, ...answerRequest(argv), journey: named(argv.journey) };
}

interface AnswerArguments {
  readonly out: string | undefined;
  readonly replace: boolean;
  readonly json: boolean;
  readonly quiet: boolean;
  readonly 'finding-ok': boolean;
}
interface RunArguments extends AnswerArguments {
  readonly FILE: string;
  readonly seed: string;
  readonly workers: string | undefined;
}

function answerRequest(argv: AnswerArguments): AnswerRequest {
  const out = given('out', argv.out);
  if (argv.replace && out === undefined)
    throw new UsageError('--replace: expected --out with the folder to replace, got none', 'add --out DIR');
  return { out, replace: argv.replace, json: argv.json, quiet: argv.quiet, findingOk: argv['finding-ok'] };
}

type ReliefsArguments = Awaited<ReturnType<typeof reliefsOptions>['argv']>;
const reliefsRequest = (argv: ReliefsArguments): Request => ({
  command: 'reliefs',
  ...runRequest(argv),
  replications: wholeNumber('replications', argv.replications, 2, MOST_REPLICATIONS),
  rate:
    argv.rate === undefined
      ? undefined
      : positiveNumber('rate', argv.rate, MOST_RATE, 'leave --rate out for what the scenario has'),
});

type CompareArguments = Awaited<ReturnType<typeof compareOptions>['argv']>;
function compareRequest(argv: CompareArguments): Request {
  const request = runRequest(argv),
    replications = wholeNumber('replications', argv.replications, 2, MOST_REPLICATIONS);
  return {
    command: 'compare',
    ...request,
    whatIfsFile: argv.WHATIFS,
    replications,
    shard: shardOf(argv, replications),
  };
}

function runRequest(argv: RunArguments): RunRequest {
  return {
    ...answerRequest(argv),
    file: argv.FILE,
    seed: seedOf(argv.seed),
    workers:
      argv.workers === undefined
        ? Math.min(availableParallelism(), MOST_WORKERS)
        : wholeNumber('workers', argv.workers, 1, MOST_WORKERS),
  };
}

function seedOf(seed: string): string {
  if (seed.length >= 1 && seed.length <= LONGEST_SEED) return seed;
  throw new UsageError(
    `--seed: expected a text of 1 to ${LONGEST_SEED} characters, got ${seed.length}`,
    'for example --seed 1',
  );
}

function named(build: string | undefined): string | undefined {
  if (build === '')
    throw new UsageError('--journey: expected a build number, got none', 'for example --journey 12');
  return build;
}

/** `--out=` with nothing behind it is a slip, not the folder one stands in. */
function given(option: string, value: string | undefined): string | undefined {
  if (value === '')
    throw new UsageError(`--${option}: expected a path, got none`, `for example --${option} out/line`);
  return value;
}
