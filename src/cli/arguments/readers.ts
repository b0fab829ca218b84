import { UsageError } from '../usage-error.js';
import type { Reader } from './option.js';

/** A number above 0. */
export const positiveNumber =
  (most: number, hint: string): Reader<number> =>
  (text, option) => {
    const value = /^\d{1,12}(\.\d{1,12})?$/.test(text) ? Number(text) : NaN;
    if (value > 0 && value <= most) return value;
    throw new UsageError(
      `${option}: expected a number above 0 and at most ${most}, got ${JSON.stringify(text)}`,
      hint,
    );
  };

/** A share between 0 and 1, written as per cent: `1 %`. */
export const perCent: Reader<number> = (text, option) => {
  const [, written] = /^(\d{1,2}(?:\.\d{1,6})?) ?%$/.exec(text) ?? [],
    value = Number(written ?? 0) / 100;
  if (value > 0) return value;
  throw new UsageError(
    `${option}: expected per cent above 0 and below 100, got ${JSON.stringify(text)}`,
    `for example ${option} "1 %"`,
  );
};

export const wholeNumber =
  (least: number, most: number): Reader<number> =>
  (text, option) => {
    const value = /^\d{1,15}$/.test(text) ? Number(text) : NaN;
    if (value >= least && value <= most) return value;
    throw new UsageError(
      `${option}: expected a whole number from ${least} to ${most}, got ${JSON.stringify(text)}`,
      `leave ${option} out for its default`,
    );
  };

/** One of a few names. */
export const oneOf =
  <Name extends string>(...names: readonly [Name, ...Name[]]): Reader<Name> =>
  (text, option) => {
    const name = names.find((each) => each === text);
    if (name !== undefined) return name;
    throw new UsageError(
      `${option}: expected ${names.join(' or ')}, got ${JSON.stringify(text)}`,
      `leave ${option} out for ${names[0]}`,
    );
  };

/** `--out=` with nothing behind it is a slip, not the folder one stands in. */
export const path: Reader<string> = (text, option) => {
  if (text !== '') return text;
  throw new UsageError(`${option}: expected a path, got none`, `for example ${option} out/line`);
};
