import { difference } from '../statistics/difference.js';
import { type Estimate, mapped, negated } from '../statistics/estimate.js';
import { amount } from '../statistics/skewed-interval.js';
import { type Standing, standingOf } from '../statistics/zone.js';
import type { Measure } from './measures.js';
import type { ComparedMeasure, ComparedVerdict, ZoneResult } from './results.js';

/** The zone of a measure: a share of what the base has in the mean, so 0 where that is 0. */
export const zoneOf = (base: readonly number[], share: number): ZoneResult => ({
  share,
  amount: share * Math.abs(mean(base)),
});

/** A what-if against the base: values by replication, paired; all intervals at `level`. */
export function compared(
  measure: Pick<Measure, 'id' | 'unit' | 'better'> & { readonly zone: ZoneResult },
  base: readonly number[],
  changed: readonly number[],
  level: number,
): ComparedMeasure {
  const { difference: seen, pairingGain } = difference(base, changed, level),
    scale = Math.abs(mean(base));
  return {
    measure: measure.id,
    value: amount(changed, level),
    difference: seen,
    relative: scale > 0 ? mapped(seen, (value) => value / scale) : null,
    pairingGain,
    ...judged(seen, measure),
  };
}

/** Of the replications that have a value. */
const mean = (values: readonly number[]): number => amount(values, 0.5).mean;

const MORE_IS_BETTER: Readonly<Record<Standing, ComparedVerdict>> = {
  more: 'better',
  'at least a little more': 'at least a little better',
  within: 'no difference that matters',
  open: 'not settled',
  'at least a little less': 'at least a little worse',
  less: 'worse',
};

/** A difference by what is better of its measure, beyond its zone. */
export function judged(
  seen: Estimate,
  { better, zone }: Pick<Measure, 'better'> & { readonly zone: ZoneResult },
): Pick<ComparedMeasure, 'verdict' | 'words'> {
  const { low, high, n } = seen;
  if (low === null || high === null)
    return {
      verdict: 'not settled',
      words: `not settled, ${n === 0 ? 'no replication' : '1 replication'} in which both have a value`,
    };
  const gain = better === 'more' ? seen : negated(seen),
    verdict = MORE_IS_BETTER[standingOf(gain, zone.amount)];
  return { verdict, words: low === 0 && high === 0 ? 'the same in every replication' : verdict };
}
