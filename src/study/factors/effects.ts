import { sampleVariance } from 'simple-statistics';
import type { MeasureResult, ZoneResult } from '../compare/results.js';
import { judged } from '../compare/verdict.js';
import { mapped } from '../statistics/estimate.js';
import { meanInterval } from '../statistics/interval.js';
import { sumOf } from '../statistics/sums.js';
import type { Contrast } from './contrasts.js';
import type { EffectMeasure } from './results.js';

/**
 * Values have ten digits, so sums of them that are less than this share of the largest are what rounding left
 * over, and no effect.
 */
const ROUNDING = 1e-8;

/**
 * An effect in one measure. It is worked out within each replication, in which all combinations meet the same
 * random events, and has a Student-t interval over the replications (Law 2015, Simulation Modeling and
 * Analysis, sec. 12.2; from memory); a replication in which a combination has no value is left out.
 * @param values by combination, then by replication
 * @param base mean of the scenario as it is
 */
export function effectIn(
  measure: MeasureResult & { readonly zone: ZoneResult },
  { weights }: Contrast,
  values: readonly (readonly number[])[],
  base: number,
  level: number,
): EffectMeasure {
  const used = weights.flatMap((weight, c) => (weight === 0 ? [] : [{ weight, of: values[c] ?? [] }])),
    replications = used[0]?.of.length ?? 0;
  const effects = Array.from({ length: replications }, (_, r) =>
    tidy(
      sumOf(used, ({ weight, of }) => weight * (of[r] ?? NaN)),
      Math.max(...used.map(({ of }) => Math.abs(of[r] ?? NaN))),
    ),
  );
  const effect = meanInterval(effects, level);
  return {
    measure: measure.id,
    difference: effect,
    relative: base > 0 ? mapped(effect, (value) => value / base) : null,
    pairingGain: gainOf(used, effects),
    ...judged(effect, measure),
  };
}

const tidy = (effect: number, largest: number): number =>
  Math.abs(effect) <= ROUNDING * largest ? 0 : effect;

/** As `Difference.pairingGain`, of a weighted sum: the sum of weight^2 variance over that of the effects. */
function gainOf(
  used: readonly { readonly weight: number; readonly of: readonly number[] }[],
  effects: readonly number[],
): number | null {
  const whole = effects.flatMap((effect, r) => (Number.isFinite(effect) ? [r] : []));
  if (whole.length < 2) return null;
  const kept = (of: readonly number[]): number[] => whole.map((r) => of[r] ?? NaN),
    spread = sampleVariance(kept(effects)),
    apart = sumOf(used, ({ weight, of }) => weight * weight * sampleVariance(kept(of)));
  return spread > ROUNDING * ROUNDING * apart ? apart / spread : null;
}
