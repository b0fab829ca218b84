import type { Distribution } from '../../random/distribution.js';
import type { Mixture } from '../../random/kinds/mixture.js';
import type { Simple } from '../../random/kinds/simple.js';
import { familyOf } from '../fit/kinds/families.js';
import { sampleOf } from '../fit/kinds/sample.js';
import { canBeWritten } from '../fit/written.js';

/**
 * The distribution of the same kind that is fitted to times, minutes, by maximum likelihood (study/fit); of
 * observed times, and of times with chances, the times themselves. Undefined where there is none, or none
 * that a scenario can have. The bounds of a cut normal stay. A mixture has `refitMixture`.
 * @param values two or more
 */
export function refit(distribution: Simple, values: readonly number[]): Simple | undefined {
  switch (distribution.kind) {
    case 'constant':
      return distribution;
    case 'empirical':
    case 'discrete':
      return { kind: 'empirical', values };
    default: {
      const fitted = familyOf(distribution)?.fit(sampleOf(values));
      if (fitted === undefined) return undefined;
      const kept =
        fitted.kind === 'normal' && distribution.kind === 'normal'
          ? { ...fitted, low: distribution.low, high: distribution.high }
          : fitted;
      return canBeWritten(kept) ? (kept as Simple) : undefined;
    }
  }
}

/**
 * A mixture whose values are known by part: its shares are those of the values, and each part is fitted to
 * its own; one with too few of them stays as it is.
 * @param values by part
 */
export function refitMixture(
  { parts }: Mixture,
  values: readonly (readonly number[])[],
): Distribution | undefined {
  const fitted = parts.map((part, k) => {
    const own = values[k] ?? [];
    return own.length < 2 ? part : refit(part, own);
  });
  return fitted.includes(undefined)
    ? undefined
    : { kind: 'mixture', parts: fitted as Simple[], weights: values.map(({ length }) => length) };
}
