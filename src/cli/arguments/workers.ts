import { availableParallelism } from 'node:os';
import { split } from 'shlex';
import { UsageError } from '../usage-error.js';
import { type Option, optional, type Reader } from './option.js';
import { wholeNumber } from './readers.js';

const MOST_WORKERS = 256;

const workers = optional(
  'replications run in parallel, default one per core; results do not depend on it',
  wholeNumber(1, MOST_WORKERS),
);

/** The words of a command, split as a shell splits them, with quotes; nothing in them is replaced. */
const commandWords: Reader<readonly string[]> = (text, option) => {
  const wrong = (got: string): UsageError =>
    new UsageError(
      `${option}: expected the words of a command, got ${got}`,
      `for example ${option} "ssh node7"`,
    );
  let words: readonly string[];
  try {
    words = split(text);
  } catch {
    throw wrong(`a quote that has no end: ${text}`);
  }
  if (words[0] === undefined || words[0] === '') throw wrong('none');
  return words;
};

const through = optional(
  'each worker is a process started by this command, such as "ssh node7"; may be given several times',
  commandWords,
  { option: 'workers', inWords: '--workers with the number of processes', hint: 'for example --workers 8' },
);

/** Who runs replications: threads here, or processes, by the ways to start them. */
export const WORKERS = {
  workers: {
    ...workers,
    read: (texts, option) => workers.read(texts, option) ?? Math.min(availableParallelism(), MOST_WORKERS),
  } satisfies Option<number>,
  through: {
    ...through,
    read: (texts, option) => texts.map((text) => commandWords(text, option)),
  } satisfies Option<readonly (readonly string[])[]>,
  program: optional(
    'with --through: how rateproof is called there, default by the paths that it has here',
    commandWords,
    { option: 'through', inWords: '--through beside it', hint: 'add --through "ssh node7"' },
  ),
};
