import { UsageError } from './usage-error.js';

/** A whole number as written on the command line. A UsageError names the option and the range. */
export function wholeNumber(option: string, text: string, least: number, most: number): number {
  const value = /^\d{1,15}$/.test(text) ? Number(text) : NaN;
  if (value >= least && value <= most) return value;
  throw new UsageError(`--${option}: expected a whole number from ${least} to ${most}, got ${JSON.stringify(text)}`, `leave --${option} out for its default`);
}

/** A number above 0 as written on the command line. A UsageError names the option. */
export function numberAboveZero(option: string, text: string, most: number): number {
  const value = /^\d{1,9}(\.\d{1,9})?$/.test(text) ? Number(text) : NaN;
  if (value > 0 && value <= most) return value;
  throw new UsageError(`--${option}: expected a number above 0 and at most ${most}, got ${JSON.stringify(text)}`, `leave --${option} out for what the scenario has`);
}
