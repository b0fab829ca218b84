import { EXIT_CODES_HELP } from '../exit-code.js';
import type { Command, Example } from './command.js';
import type { Option } from './option.js';

/** The program's own help page, down to the list of commands: an example or two of each. */
export const programHelp = (commands: readonly Command[]): string =>
  page(
    'rateproof: will this build, spread over several plants, hold the new rate?',
    commands.flatMap(({ examples }) => examples.filter((example) => typeof example !== 'string')),
  );

/** A command's help page, down to its options. */
export const commandHelp = ({ name, words, about, examples }: Command): string =>
  page(`rateproof ${[name, ...Object.values(words).map(placeOf)].join(' ')}: ${about}`, examples);

const placeOf = ({ name, isMany }: Command['words'][string]): string => (isMany ? `${name}...` : name);

/** Examples stand first; their remarks form a column. */
function page(title: string, examples: readonly Example[]): string {
  const remarked = examples.filter((example) => typeof example !== 'string'),
    width = Math.max(0, ...remarked.map(([line]) => line.length));
  const lines = examples.map((example) =>
    typeof example === 'string' ? example : `${example[0].padEnd(width)}   ${example[1]}`,
  );
  return [title, '', 'Examples:', ...lines.map((line) => `  ${line}`)].join('\n');
}

/** A line of the help for an option; a default with a blank in it is quoted as the shell wants it. */
export const optionHelp = ({ help, byDefault }: Option<unknown>): string | undefined =>
  help === undefined || byDefault === undefined
    ? help
    : `${help}, default ${byDefault.includes(' ') ? `"${byDefault}"` : byDefault}`;

export const EPILOGUE = `${EXIT_CODES_HELP}

Results go to stdout, everything else to stderr. They cover time and numbers only: paint booths, ovens,
lifting, road tests and overtime are governed by local codes and licensed practice.`;
