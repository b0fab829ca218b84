import { number } from '../format.js';
import { difference } from '../statistics/difference.js';
import { amount, type Estimate, mapped } from '../statistics/interval.js';
import type { Measure } from './measures.js';
import type { ComparedMeasure } from './results.js';

/** A what-if against the base: values by replication, paired. */
export function compared(
  measure: Pick<Measure, 'id' | 'unit' | 'better'>,
  base: readonly number[],
  changed: readonly number[],
  level: number,
  differenceLevel: number,
): ComparedMeasure {
  const { difference: seen, pairingGain } = difference(base, changed, differenceLevel),
    scale = Math.abs(amount(base, level).mean);
  return {
    measure: measure.id,
    value: amount(changed, level),
    difference: seen,
    relative: scale > 0 ? mapped(seen, (value) => value / scale) : null,
    pairingGain,
    ...judged(seen, measure),
  };
}

function judged(
  { low, high, n }: Estimate,
  { better, unit }: Pick<Measure, 'better' | 'unit'>,
): Pick<ComparedMeasure, 'verdict' | 'words'> {
  if (low === null || high === null)
    return {
      verdict: 'not settled',
      words: `not settled, ${n === 0 ? 'no replication' : '1 replication'} in which both have a value`,
    };
  if (low > 0 || high < 0) {
    const verdict = low > 0 === (better === 'more') ? 'better' : 'worse';
    return { verdict, words: verdict };
  }
  const most = Math.max(-low, high);
  return {
    verdict: 'no difference seen',
    words:
      most === 0 ? 'the same in every replication' : `no difference seen larger than ${number(most)} ${unit}`,
  };
}
