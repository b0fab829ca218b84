import yargs, { type Argv } from 'yargs';
import { PROGRAM_VERSION } from '../../study/version.js';
import { UsageError } from '../usage-error.js';
import type { Asked, Command } from './command.js';
import { commandHelp, EPILOGUE, optionHelp, programHelp } from './help.js';
import { optionName } from './option.js';
import { MESSAGES, wrongWords } from './wrong-words.js';

declare module 'yargs' {
  // Missing in the types of yargs.
  interface Argv<T> {
    usageConfiguration(configuration: { readonly 'hide-types': boolean }): Argv<T>;
  }
}

/** Help or version, to be printed as it is. */
export interface Text {
  readonly text: string;
}

/** What stands behind `--` is names, also with a dash at the front (POSIX, utility syntax guideline 10). */
function namesPlain(args: readonly string[]): readonly string[] {
  const at = args.indexOf('--');
  if (at < 0) return args;
  const names = args.slice(at + 1).map((name) => (name.startsWith('-') ? `./${name}` : name));
  return [...args.slice(0, at), ...names];
}

/** Names have none in scenarios either, and what is said of them must stay on its line. */
function expectNoBreaks(args: readonly string[]): void {
  const broken = args.find((arg) => /[\t\n]/.test(arg));
  if (broken !== undefined)
    throw new UsageError(
      `expected words without tabs and line breaks, got ${JSON.stringify(broken)}`,
      'rename a file that has one in its name',
    );
}

/** Thrown when all is read: yargs would go on to lay out the help of the command, in case it should fail. */
const READ = new Error('read');

/**
 * Reads the command line, without the names of Node and the script. Prints nothing; a wrong one throws a
 * UsageError.
 */
export function readArguments(commands: readonly Command[], given: readonly string[]): Asked | Text {
  expectNoBreaks(given);
  const args = namesPlain(given);
  let chosen: Command | undefined,
    asked: Asked | undefined,
    text = '';
  const parser = yargs()
    .scriptName('rateproof')
    .parserConfiguration({
      // One spelling of an option; values stay text until they are read here.
      'camel-case-expansion': false,
      'boolean-negation': false,
      'dot-notation': false,
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
    .usage(programHelp(commands))
    .epilogue(EPILOGUE)
    .demandCommand(1, 'expected a command, got none')
    .version('version', 'print the version', PROGRAM_VERSION)
    .help('help', 'print this page')
    // Throwing stops yargs at the first thing that is wrong. Without a message it is an error of our own.
    .fail((message: string | null, error: unknown) => {
      throw message === null ? error : wrongWords(message, args, commands, chosen);
    });
  for (const command of commands)
    parser.command(
      lineOf(command),
      command.summary,
      (builder) => {
        chosen = command;
        return declared(builder, command);
      },
      (argv) => {
        asked = command.ask((name) => textsOf(argv[name]));
        throw READ;
      },
    );
  // yargs is silent, and hands over what it would have printed, when it gets a callback.
  try {
    void parser.parse(args, {}, (_error, _argv, output) => {
      text = output;
    });
  } catch (error) {
    if (error !== READ) throw error;
  }
  return asked ?? { text };
}

const lineOf = ({ name, words }: Command): string =>
  [name, ...Object.values(words).map((word) => (word.isMany ? `[${word.name}..]` : `<${word.name}>`))].join(
    ' ',
  );

function declared(parser: Argv, command: Command): Argv {
  parser.usage(commandHelp(command));
  for (const { name, help } of Object.values(command.words))
    parser.positional(name, { type: 'string', describe: help });
  for (const [key, option] of Object.entries(command.options)) {
    const describe = optionHelp(option);
    parser.option(optionName(key), {
      type: option.isFlag ? 'boolean' : 'string',
      requiresArg: !option.isFlag,
      ...(describe === undefined ? { hidden: true } : { describe }),
    });
  }
  return parser;
}

/** What yargs found for a name: true, a text, an array where it was given several times. */
function textsOf(found: unknown): string[] {
  if (Array.isArray(found)) return found.map(String);
  if (typeof found === 'string') return [found];
  return found === true ? ['true'] : [];
}
