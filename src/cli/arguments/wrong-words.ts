import { nearest } from '../../scenario/values/nearest.js';
import { UsageError } from '../usage-error.js';
import type { Command } from './command.js';
import { optionName } from './option.js';

const MISSING = 'missing',
  UNKNOWN = 'unknown: ';

/** What yargs says of a wrong command line, by the keys of its catalogue of messages, in our grammar. */
export const MESSAGES = {
  'Not enough non-option arguments: got %s, need at least %s': { one: MISSING, other: MISSING },
  'Not enough arguments following: %s': 'expected a value after --%s, got none',
  'Unknown argument: %s': { one: `${UNKNOWN}%s`, other: `${UNKNOWN}%s` },
};
const SEE_HELP = '`rateproof --help` shows what there is, with examples';

/**
 * The UsageError for a message of yargs. `args` is the command line, in which the first unknown word is
 * looked up; `chosen` is the command that it names, if there is one.
 */
export function wrongWords(
  message: string,
  args: readonly string[],
  commands: readonly Command[],
  chosen: Command | undefined,
): UsageError {
  // yargs puts its counts, first that of the words it got, behind the message.
  const [, got] = new RegExp(`^${MISSING} (\\d+)`).exec(message) ?? [];
  if (got !== undefined) return missing(Number(got), chosen);
  if (!message.startsWith(UNKNOWN)) return new UsageError(message, SEE_HELP);
  const [word = ''] = message.slice(UNKNOWN.length).split(', ');
  const typed = args
    .find((arg) => arg.replace(/^--?/, '').replace(/=.*/s, '') === word && arg.startsWith('-'))
    ?.replace(/=.*/s, '');
  if (typed !== undefined) return unknown('option', typed, optionsOf(commands));
  if (chosen !== undefined)
    return new UsageError(`expected nothing after ${lastWord(chosen)} but options, got "${word}"`, SEE_HELP);
  return unknown(
    'command',
    word,
    commands.map(({ name }) => name),
  );
}

/** Word number `index`, from 0, of a command is missing. */
function missing(index: number, { words }: Pick<Command, 'words'> = { words: {} }): UsageError {
  const known = Object.values(words).map(({ inWords }) => inWords),
    before = index > 0 ? ` behind the ${known[index - 1] ?? ''}` : '';
  return new UsageError(`expected a ${known[index] ?? 'word'}${before}, got none`, SEE_HELP);
}

const lastWord = ({ name, words }: Command): string => {
  const last = Object.values(words).at(-1);
  return last === undefined ? name : `the ${last.inWords}`;
};

/** Every option of every command, each once. */
const optionsOf = (commands: readonly Command[]): string[] => [
  ...new Set([
    ...commands.flatMap(({ options }) => Object.keys(options).map((key) => `--${optionName(key)}`)),
    '--help',
    '--version',
  ]),
];

function unknown(kind: string, word: string, known: readonly string[]): UsageError {
  const near = nearest(word, known);
  return new UsageError(
    `unknown ${kind} "${word}"`,
    near === undefined ? SEE_HELP : `did you mean ${near}? ${SEE_HELP}`,
  );
}
