import { UsageError } from '../usage-error.js';
import {
  flag,
  type Option,
  optional,
  type Reader,
  repeatable,
  type Values,
  withDefault,
  word,
} from './option.js';
import { filledText, path, wholeNumber } from './readers.js';
import { WORKERS } from './workers.js';

/**
 * The most replications that may be asked for. The 95 % interval of a mean is then as narrow as 0.02 standard
 * deviations either way, finer than what goes into a scenario is known: a longer number is a slip.
 */
export const MOST_REPLICATIONS = 10_000;
const LONGEST_SEED = 200;

/** The scenario that a command reads. */
export const FILE = word('FILE', 'scenario FILE', 'the scenario, YAML');

/** Folders besides that of the scenario. */
export const INCLUDE_FROM: Option<readonly string[]> = {
  ...repeatable("folder besides the scenario's own from which it may name files; may be given several times"),
  read: (texts, option) => texts.map((text) => path(text, option)),
};

/** What is to become of an answer. */
export const ANSWER = {
  out: optional('folder for the report, which must not exist yet', path),
  replace: flag('replace an existing report', {
    option: 'out',
    inWords: '--out with the folder to replace',
    hint: 'add --out DIR',
  }),
  json: flag('print what results.json holds instead of the table'),
  quiet: flag('no progress and no hints; errors are still printed'),
  findingOk: flag('exit with 0 even if a finding stands'),
};
export type AnswerRequest = Values<typeof ANSWER>;

const seed: Reader<string> = (text, option) => {
  if (text.length >= 1 && text.length <= LONGEST_SEED) return text;
  throw new UsageError(
    `${option}: expected a text of 1 to ${LONGEST_SEED} characters, got ${text.length}`,
    'for example --seed 1',
  );
};

/** What every study that runs replications is asked. */
export const RUN = {
  ...ANSWER,
  includeFrom: INCLUDE_FROM,
  seed: withDefault('any text; the same seed gives the same results', '1', seed),
  ...WORKERS,
  anyway: flag('run also what would take more than a day, or more than the memory of this machine'),
};
export type RunRequest = Values<typeof RUN> & { readonly file: string };

/** Build number of the unit whose journey is shown; undefined: one with the median lead time. */
export const JOURNEY = optional<string>(
  'build number of the unit whose journey is shown; default: a unit with the median lead time',
  filledText('a build number', '12'),
);

/** Number of replications; `help` says of what. */
export const replications = (help: string, byDefault: number, least: number): Option<number> =>
  withDefault(help, String(byDefault), wholeNumber(least, MOST_REPLICATIONS));
