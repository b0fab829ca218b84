import { exact } from '../../scenario/values/thousands.js';
import { UsageError } from '../usage-error.js';
import type { Reader } from './option.js';
import { pathTrouble } from './path-names.js';

/** Reads what `read` makes a value of; of anything else an error tells what is wanted. */
export const reader =
  <Value>(
    wanted: string,
    hint: (option: string) => string,
    read: (text: string) => Value | undefined,
  ): Reader<Value> =>
  (text, option) => {
    const value = read(text);
    if (value !== undefined) return value;
    throw new UsageError(`${option}: expected ${wanted}, got ${JSON.stringify(text)}`, hint(option));
  };

/** The number that a text of this form begins with, if it is from `least` to `most`. */
export function numberIn(text: string, form: RegExp, least: number, most: number): number | undefined {
  const value = form.test(text) ? parseFloat(text) : NaN;
  return value >= least && value <= most ? value : undefined;
}

/** A number above 0. */
export const positiveNumber = (most: number, hint: string): Reader<number> =>
  reader(
    `a number above 0 and at most ${exact(most)}`,
    () => hint,
    (text) => numberIn(text, /^\d{1,12}(\.\d{1,12})?$/, Number.MIN_VALUE, most),
  );

/** A share between 0 and 1, written as per cent: `1 %`. */
export const perCent: Reader<number> = reader(
  'per cent above 0 and below 100',
  (option) => `for example ${option} "1 %"`,
  (text) => hundredth(numberIn(text, /^\d{1,2}(\.\d{1,6})? ?%$/, Number.MIN_VALUE, 100)),
);

/** Per cent as a share. */
export const hundredth = (value: number | undefined): number | undefined =>
  value === undefined ? undefined : value / 100;

export const wholeNumber = (least: number, most: number): Reader<number> =>
  reader(
    `a whole number from ${least} to ${exact(most)}`,
    (option) => `leave ${option} out for its default`,
    (text) => numberIn(text, /^\d{1,15}$/, least, most),
  );

/** One of a few names. */
export const oneOf = <Name extends string>(...names: readonly [Name, ...Name[]]): Reader<Name> =>
  reader(
    names.join(' or '),
    (option) => `leave ${option} out for ${names[0]}`,
    (text) => names.find((each) => each === text),
  );

/** A text that must not be empty: `--out=` with nothing behind it is a slip, not the folder one stands in. */
export const filledText =
  (wanted: string, example: string): Reader<string> =>
  (text, option) => {
    if (text !== '') return text;
    throw new UsageError(`${option}: expected ${wanted}, got none`, `for example ${option} ${example}`);
  };

/** A path to be written; one that the system cannot have is told now, not after a long run. */
export const pathOn =
  (platform: NodeJS.Platform): Reader<string> =>
  (text, option) => {
    const path = filledText('a path', 'out/line')(text, option),
      trouble = pathTrouble(path, platform);
    if (trouble === undefined) return path;
    throw new UsageError(
      `${option}: expected ${trouble.wanted}, got ${trouble.got}`,
      `choose another name, for example ${option} out/line`,
    );
  };
export const path = pathOn(process.platform);
