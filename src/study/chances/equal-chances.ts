import { exp, log } from '../../random/elementary.js';
import { logGamma1p } from '../../random/log-gamma.js';
import { chiSquareAbove } from '../statistics/functions/normal.js';
import { sumOf } from '../statistics/sums.js';
import { drawnP, isDense, pearson } from './drawn-chances.js';

/** Units that have one thing in common, and in how many of them something was found. */
export interface Level {
  readonly name: string;
  readonly units: number;
  /** 0..units. */
  readonly found: number;
}

/** Whether levels may all have the same chance. */
export interface EqualChances {
  readonly p: number;
  readonly method: 'exact' | 'chi-square' | 'drawn';
}

/** The exact test goes through so many tables at most. */
const MOST_TABLES = 1e6;

/** Tables as likely as the one seen count, whatever the last bits. */
const AS_LIKELY = 1e-7;

/**
 * Test of equal chances over levels. Exact wherever that can be reckoned: the chance of a table no likelier
 * than the one seen, both margins given (two levels: Fisher 1935, J. Roy. Stat. Soc. 98, 39-82; more: Freeman
 * & Halton 1951, Biometrika 38, 141-149). Else Pearson's chi-square with k - 1 degrees of freedom (Pearson
 * 1900), or tables drawn by lot where counts are too small for that.
 * @returns null of fewer than two levels with units
 */
export function equalChances(all: readonly Level[]): EqualChances | null {
  for (const { name, units, found } of all)
    if (!(Number.isInteger(units) && Number.isInteger(found) && found >= 0 && found <= units))
      throw new RangeError(`${name}: expected whole numbers, 0 <= found <= units, got ${found} of ${units}`);
  const levels = all.filter(({ units }) => units > 0).sort((a, b) => a.units - b.units),
    units = sumOf(levels, (level) => level.units),
    found = sumOf(levels, (level) => level.found);
  if (levels.length < 2) return null;
  if (found === 0 || found === units) return { p: 1, method: 'exact' };
  // The last level has what the others leave.
  const tables = levels
    .slice(0, -1)
    .reduce((product, level) => product * (1 + Math.min(level.units, found, units - found)), 1);
  if (tables <= MOST_TABLES) return { p: exactP(levels, found), method: 'exact' };
  return isDense(levels)
    ? { p: chiSquareAbove(pearson(levels), levels.length - 1), method: 'chi-square' }
    : { p: drawnP(levels), method: 'drawn' };
}

function exactP(levels: readonly Level[], found: number): number {
  const seen = sumOf(levels, (level) => logChoose(level.units, level.found)),
    rest = levels.map((_, i) => sumOf(levels.slice(i), (level) => level.units)),
    whole = logChoose(rest[0] ?? 0, found);
  let p = 0;
  const go = (i: number, left: number, sofar: number): void => {
    const level = levels[i];
    if (level === undefined) {
      if (sofar <= seen + AS_LIKELY) p += exp(sofar - whole);
      return;
    }
    const after = rest[i + 1] ?? 0;
    for (let k = Math.max(0, left - after); k <= Math.min(level.units, left); k++)
      go(i + 1, left - k, sofar + logChoose(level.units, k));
  };
  go(0, found, 0);
  return Math.min(1, p);
}

const logChoose = (n: number, k: number): number => logFactorial(n) - logFactorial(k) - logFactorial(n - k);

const factorials: number[] = [];
function logFactorial(n: number): number {
  return (factorials[n] ??= n < 2 ? 0 : logGamma1p(n));
}

/**
 * Several p-values of independent tests of one question in one (Fisher 1932, Statistical Methods for Research
 * Workers, 4th ed., sec. 21.1): -2 times the sum of their logarithms is chi-square with 2k degrees of
 * freedom. Of exact tests it errs to the side of no difference.
 */
export const combinedP = (ps: readonly number[]): number =>
  ps.length === 0
    ? 1
    : chiSquareAbove(
        sumOf(ps, (p) => -2 * log(p)),
        2 * ps.length,
      );
