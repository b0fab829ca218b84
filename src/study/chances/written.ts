import type { Distribution } from '../../random/distribution.js';
import { normalQuantile } from '../statistics/proportion.js';
import type { FitOfChance, LevelChance } from './chance.js';
import type { FitOfLearning } from './learning.js';
import { basisOf, minutesText, percentText, roughPercent, type Source, type Written } from './measured.js';
import type { FitOfStops } from './stops.js';
import type { Bounded } from './two-looks.js';

/** What was fitted, as parts of a scenario that say where they come from. */

/**
 * For `creates: { runs: .. }`, `finds: { runs: { chance: .. } }` or `fails: { chance: .. }`: one chance, or
 * one by option where it matters. The value of the option with most units is the usual one.
 */
export function writtenChance({ all, by, most }: FitOfChance, source: Source): Written {
  const [usual, ...others] = by?.levels ?? [];
  if (by === null || usual === undefined)
    return {
      value: percentText(all.share),
      basis: basisOf(all.n, source, { found: all.count }),
      ...(most === undefined ? {} : { note: `none in ${all.n}; may be up to ${roughPercent(most)}` }),
    };
  const each = ({ found, units }: LevelChance): Written => ({
    value: percentText(found / units),
    basis: basisOf(units, source, { found }),
  });
  return {
    usual: each(usual),
    [by.option]: Object.fromEntries(others.map((level) => [level.name, each(level)])),
  };
}

/**
 * A chance that was estimated otherwise, such as by two inspections. It has no `found`: its interval is not
 * that of a share of n, and its standard error is that of an interval as wide.
 */
export const writtenBounded = (chance: Bounded, n: number, source: Source): Written => ({
  value: percentText(chance.value),
  basis: basisOf(n, source, { 'standard error': standardErrorOf(chance) }),
  note: intervalNote(chance),
});

/** Above 0 as written, however narrow the interval. */
const standardErrorOf = ({ low, high, level }: Bounded): number =>
  Number(Math.max(1e-6, (high - low) / (2 * normalQuantile((1 + level) / 2))).toPrecision(3));

const intervalNote = ({ low, high, level }: Bounded): string =>
  `${roughPercent(level)} interval ${roughPercent(low)} to ${roughPercent(high)}`;

/**
 * For `learning` of a step; null where there is none.
 * @param builtBefore units already built when the run starts
 */
export function writtenLearning(
  { learns, curve, rate, floor, n }: FitOfLearning,
  source: Source,
  builtBefore = 0,
): Written | null {
  if (!learns || curve === null || rate === null) return null;
  return {
    rate: {
      value: percentText(rate.value),
      basis: basisOf(n, source, { 'standard error': Number(curve.slopeError.toPrecision(6)) }),
      note: intervalNote(rate),
    },
    ...(curve.curve === 'unit' ? {} : { curve: curve.curve }),
    ...(floor === null ? {} : { floor: { value: percentText(floor), basis: basisOf(n, source) } }),
    ...(builtBefore > 0 ? { 'built before': builtBefore } : {}),
  };
}

/**
 * For `failures` of a station or of equipment; null where no failure or no repair was seen.
 * @param by how the time to failure was counted
 */
export function writtenFailures(
  { toFailure, toRepair, spans }: FitOfStops,
  by: 'operating time' | 'calendar time',
  source: Source,
): Written | null {
  const every = toFailure.distribution,
    repair = toRepair.distribution;
  if (every === null || repair === null) return null;
  return {
    every: { ...writtenLifetime(every), basis: basisOf(spans.failures, source) },
    ...(by === 'operating time' ? {} : { by }),
    repair: { ...writtenLifetime(repair), basis: basisOf(toRepair.ended, source) },
  };
}

function writtenLifetime(distribution: Distribution): { readonly [key: string]: Written } {
  switch (distribution.kind) {
    case 'exponential':
      return { exponential: { mean: minutesText(distribution.mean) } };
    case 'weibull':
      return {
        weibull: { shape: Number(distribution.shape.toPrecision(9)), scale: minutesText(distribution.scale) },
      };
    case 'constant':
      return { constant: minutesText(distribution.value) };
    default:
      throw new RangeError(`lifetime: expected exponential, weibull or constant, got ${distribution.kind}`);
  }
}
