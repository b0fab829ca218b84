import { bounds, intervalName, number, signed, withInterval } from '../format.js';
import { difference } from '../statistics/difference.js';
import { type Estimate, mapped } from '../statistics/estimate.js';
import { amount } from '../statistics/interval.js';
import type { Measure } from './measures.js';
import type { ComparedMeasure, ComparedVerdict, CompareResults, MeasureId } from './results.js';

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

/** What the what-ifs do to the throughput; where none is seen to change it, to the mean lead time. */
export function compareSentence(
  base: CompareResults['base'],
  whatIfs: CompareResults['whatIfs'],
  unit: string,
): string {
  const of = (id: MeasureId) =>
    whatIfs.flatMap(({ name, compared }) =>
      compared.filter(({ measure }) => measure === id).map((each) => ({ name, ...each })),
    );
  const said = (id: MeasureId, wanted: ComparedVerdict, words: string): string[] => {
    const seen = of(id)
      .filter(({ verdict }) => verdict === wanted)
      .sort((a, b) => Math.abs(b.difference.mean) - Math.abs(a.difference.mean))
      .map(
        ({ name, difference }) =>
          `${name} by ${signed(difference)} (${intervalName(difference.level)} ${bounds(difference)})`,
      );
    return seen.length > 0 ? [`${words}: ${seen.join(', ')}.`] : [];
  };
  const part = (id: MeasureId, better: string, worse: string, same: string): string => {
    const seen = [...said(id, 'better', better), ...said(id, 'worse', worse)];
    return seen.length === 0 ? same : seen.join(' ');
  };
  const shipped = base.values.filter(({ measure }) => measure === 'throughput');
  const start = shipped.map(({ value }) => `The base ships ${withInterval(value, unit)}.`).join(' ');
  if (of('throughput').every(({ verdict }) => verdict === 'not settled'))
    return `${start} One replication says nothing of differences.`;
  const locked = [base, ...whatIfs].filter(({ gridlocks }) => gridlocks > 0).map(({ name }) => name);
  return [
    start,
    part('throughput', 'Seen to ship more', 'Seen to ship less', 'No what-if is seen to ship more or less.'),
    part(
      'lead mean',
      'Lead time shorter, days',
      'Lead time longer, days',
      'No change of the mean lead time is seen.',
    ),
    ...(locked.length > 0 ? [`In gridlock at least once: ${locked.join(', ')}.`] : []),
  ].join(' ');
}
