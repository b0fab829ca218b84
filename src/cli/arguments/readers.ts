import { UsageError } from '../usage-error.js';

/** Highest numbers of replications that a command line may ask for. */

/**
 * The 95 % interval of a mean is then as narrow as 0.02 standard deviations either way, finer than what goes
 * into a scenario is known: a longer number is a slip.
 */
export const MOST_REPLICATIONS = 10_000;
/** A rate that is not settled gets up to four times as many, which is to stay within the same limit. */
export const MOST_REPLICATIONS_OF_RATE = MOST_REPLICATIONS / 4;

/** A number above 0 as written on the command line. A UsageError names the option and the range. */
export function positiveNumber(option: string, text: string, most: number, hint: string): number {
  const value = /^\d{1,12}(\.\d{1,12})?$/.test(text) ? Number(text) : NaN;
  if (value > 0 && value <= most) return value;
  throw new UsageError(
    `--${option}: expected a number above 0 and at most ${most}, got ${JSON.stringify(text)}`,
    hint,
  );
}

/** A share between 0 and 1, written as per cent: `1 %`. */
export function perCent(option: string, text: string): number {
  const written = /^(\d{1,2}(?:\.\d{1,6})?) ?%$/.exec(text),
    value = written === null ? 0 : Number(written[1]) / 100;
  if (value > 0) return value;
  throw new UsageError(
    `--${option}: expected per cent above 0 and below 100, got ${JSON.stringify(text)}`,
    `for example --${option} "1 %"`,
  );
}

/** A whole number as written on the command line. A UsageError names the option and the range. */
export function wholeNumber(option: string, text: string, least: number, most: number): number {
  const value = /^\d{1,15}$/.test(text) ? Number(text) : NaN;
  if (value >= least && value <= most) return value;
  throw new UsageError(
    `--${option}: expected a whole number from ${least} to ${most}, got ${JSON.stringify(text)}`,
    `leave --${option} out for its default`,
  );
}
