import { number } from '../format.js';
import { difference } from '../statistics/difference.js';
import { amount, type Estimate } from '../statistics/interval.js';
import type { Measure } from './measures.js';
import type { ComparedMeasure, ComparedVerdict } from './results.js';

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
  const verdict = verdictOf(seen, measure.better);
  const relative =
    scale > 0
      ? {
          ...seen,
          mean: seen.mean / scale,
          low: seen.low === null ? null : seen.low / scale,
          high: seen.high === null ? null : seen.high / scale,
        }
      : null;
  return {
    measure: measure.id,
    value: amount(changed, level),
    difference: seen,
    relative,
    pairingGain,
    verdict,
    words: wordsOf(verdict, seen, measure.unit),
  };
}

function verdictOf({ low, high }: Estimate, better: 'more' | 'less'): ComparedVerdict {
  if (low === null || high === null) return 'not settled';
  if (low <= 0 && high >= 0) return 'no difference seen';
  return low > 0 === (better === 'more') ? 'better' : 'worse';
}

function wordsOf(verdict: ComparedVerdict, { low, high, n }: Estimate, unit: string): string {
  if (verdict === 'not settled')
    return `not settled, ${n === 0 ? 'no replication' : '1 replication'} in which both have a value`;
  if (verdict !== 'no difference seen') return verdict;
  const most = Math.max(-low!, high!);
  return most === 0
    ? 'the same in every replication'
    : `no difference seen larger than ${number(most)} ${unit}`;
}
