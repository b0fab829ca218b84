import { nearest } from '../../scenario/values/nearest.js';
import { noShardOf } from './shard.js';
import { UsageError } from '../usage-error.js';

export const COMMANDS = [
  'check',
  'simulate',
  'compare',
  'rate',
  'reliefs',
  'buffers',
  'merge',
  'schema',
] as const;
const OPTIONS = [
  '--json',
  '--replications',
  '--seed',
  '--out',
  '--workers',
  '--journey',
  '--replace',
  '--quiet',
  '--finding-ok',
  '--help',
  '--version',
  '--shard',
  '--precision',
  '--of',
  '--most',
  '--rate',
  '--budget',
  '--target',
  '--at',
  '--zone',
  '--from',
  '--to',
  '--step',
  '--weeks',
  '--settle',
  '--sure',
  '--ramp-to',
];

const NO_FILE = 'expected a scenario FILE, got none';
const UNKNOWN = 'unknown: ';

/** What yargs says of a wrong command line, by the keys of its catalogue of messages, in our grammar. */
export const MESSAGES = {
  'Not enough non-option arguments: got %s, need at least %s': { one: NO_FILE, other: NO_FILE },
  'Not enough arguments following: %s': 'expected a value after --%s, got none',
  'Unknown argument: %s': { one: `${UNKNOWN}%s`, other: `${UNKNOWN}%s` },
};
const SEE_HELP = '`rateproof --help` shows what there is, with examples';

/**
 * The UsageError for a message of yargs; `args` is the command line, in which the first unknown word is
 * looked up.
 */
export function wrongWords(message: string, args: readonly string[]): UsageError {
  // yargs puts its counts behind the message.
  if (message.startsWith(NO_FILE) && message.endsWith(' 1 2'))
    return new UsageError('expected a file of WHATIFS behind the scenario FILE, got none', SEE_HELP);
  if (message.startsWith(NO_FILE)) return new UsageError(NO_FILE, SEE_HELP);
  if (!message.startsWith(UNKNOWN)) return new UsageError(message, SEE_HELP);
  const word = message.slice(UNKNOWN.length).split(', ')[0] ?? '';
  const typed = args
    .find((arg) => arg.replace(/^--?/, '').replace(/=.*/s, '') === word && arg.startsWith('-'))
    ?.replace(/=.*/s, '');
  const noShard = typed === '--shard' ? noShardOf(args[0]) : undefined;
  if (noShard !== undefined) return noShard;
  if (typed !== undefined) return unknown('option', typed, OPTIONS);
  return args[0] === word
    ? unknown('command', word, COMMANDS)
    : new UsageError(`expected nothing after the scenario FILE but options, got "${word}"`, SEE_HELP);
}

function unknown(kind: string, word: string, known: readonly string[]): UsageError {
  const near = nearest(word, known);
  return new UsageError(
    `unknown ${kind} "${word}"`,
    near === undefined ? SEE_HELP : `did you mean ${near}? ${SEE_HELP}`,
  );
}
