import type { ExitCode } from '../exit-code.js';
import { UsageError } from '../usage-error.js';
import { type Options, optionName, type Values, type Words } from './option.js';

/**
 * A command as its file describes it. The parser, the help and the list of known words are made from this.
 */
interface Description<OwnWords extends Words, OwnOptions extends Options, Request> {
  readonly name: string;
  /** Words that it takes, in their order, besides options. */
  readonly words: OwnWords;
  /** What it does, for the list of commands. */
  readonly summary: string;
  /** The same at more length, for its own help page. */
  readonly about: string;
  readonly examples: readonly Example[];
  readonly options: OwnOptions;
  /** What is asked, checked as far as it can be without reading a file. Throws a UsageError. */
  readonly request: (given: Values<OwnWords> & Values<OwnOptions>) => Request;
  /** Does it. Loads the engine, studies and reports only now, so that help and `check` start at once. */
  readonly run: (request: Request) => Promise<ExitCode>;
}

/** A command line; one with a remark, which says what it gives, stands in the help of the program too. */
export type Example = string | readonly [line: string, remark: string];

/** A command, whatever its request is. */
export interface Command extends Omit<Description<Words, Options, never>, 'request' | 'run'> {
  /** `textsOf` tells what was given for a word (FILE) or option (finding-ok). Throws a UsageError. */
  readonly ask: (textsOf: (name: string) => readonly string[]) => Asked;
}

/** A command with its request, ready to be run. */
export interface Asked {
  readonly command: string;
  readonly run: () => Promise<ExitCode>;
}

export function command<OwnWords extends Words, OwnOptions extends Options, Request>(
  description: Description<OwnWords, OwnOptions, Request>,
): Command {
  const { name, words, options, request, run } = description;
  return {
    ...description,
    ask: (textsOf) => {
      const found: Record<string, unknown> = {};
      for (const [key, word] of Object.entries(words)) found[key] = word.read(textsOf(word.name));
      for (const [key, option] of Object.entries(options)) {
        const texts = textsOf(optionName(key)),
          { needs } = option;
        found[key] = option.read(texts, `--${optionName(key)}`);
        if (texts.length > 0 && needs !== undefined && textsOf(optionName(needs.option)).length === 0)
          throw new UsageError(`--${optionName(key)}: expected ${needs.inWords}, got none`, needs.hint);
      }
      const asked = request(found as Values<OwnWords> & Values<OwnOptions>);
      return { command: name, run: () => run(asked) };
    },
  };
}
