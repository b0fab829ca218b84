import { count, number } from '../../format.js';
import { incompleteBeta } from '../../statistics/functions/incomplete-beta.js';
import type { Warning } from './warning.js';

/** Minutes to which people round, the largest first. */
const UNITS = [60, 30, 20, 15, 10, 5, 2, 1, 0.5, 0.25, 0.1, 1 / 60, 0.01];
/** So many are multiples at least, and by chance they would be with less than this. */
const NEARLY_ALL = 0.95,
  BY_CHANCE = 1e-4;
/** So many different multiples, else the times are merely much alike. */
const FEWEST_DIFFERENT = 3;
/** Times are multiples of a unit to this part of it (of a second written as a share of a minute). */
const CLOSE = 1e-4;

export interface Rounding {
  /** Minutes. */
  readonly unit: number;
  /** How many are multiples of it, as a share. */
  readonly share: number;
  /** Chance that as many would be, of times written as finely as the finest. */
  readonly p: number;
}

/**
 * The largest unit of which nearly all times are multiples, against chance: of times written to `finest`
 * minutes one in unit / finest is, so the number is binomial. Undefined where there is none, or where it is
 * merely how fine the times are written.
 */
export function rounding(times: readonly number[]): Rounding | undefined {
  const n = times.length,
    finest = finestUnit(times);
  for (const unit of UNITS) {
    if (unit <= finest) break;
    const multiples = times.filter((time) => isMultiple(time, unit)),
      k = multiples.length,
      different = new Set(multiples.map((time) => Math.round(time / unit))).size;
    if (k < NEARLY_ALL * n || different < FEWEST_DIFFERENT) continue;
    const p = incompleteBeta(Math.max(finest, CLOSE * unit) / unit, k, n - k + 1);
    if (p < BY_CHANCE) return { unit, share: k / n, p };
  }
  return undefined;
}

/**
 * The unit in which times are written, by their last digits: 1 minute or a smaller one of which all are
 * multiples; 0 where they have all digits.
 */
export const finestUnit = (times: readonly number[]): number =>
  UNITS.find((unit) => unit <= 1 && times.every((time) => isMultiple(time, unit))) ?? 0;

function isMultiple(time: number, unit: number): boolean {
  const times = time / unit;
  return Math.abs(times - Math.round(times)) < CLOSE;
}

export function warningOfRounding(times: readonly number[]): Warning[] {
  const found = rounding(times);
  if (found === undefined) return [];
  const { unit, share } = found,
    n = times.length,
    k = Math.round(share * n),
    so = k === n ? (n === 2 ? 'Both' : `All ${n}`) : `${k} of ${n}`,
    name =
      unit >= 1 ? count(unit, 'minute') : unit >= 1 / 60 ? count(Math.round(unit * 60), 'second') : undefined;
  return [
    {
      kind: 'rounding',
      ...found,
      told:
        `${so} times are whole multiples of ${name ?? `${number(unit)} min`}: they were rounded, and ` +
        `shorter differences cannot be seen.`,
    },
  ];
}
