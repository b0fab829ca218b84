import { signed, intervalName, bounds, withInterval } from '../format.js';
import type { Measure } from './measures.js';
import type { CompareResults, ComparedVerdict } from './results.js';

/** What the what-ifs do to the throughput; where none is seen to change it, to the mean lead time. */
export function compareSentence(
  measures: readonly Measure[],
  base: CompareResults['base'],
  whatIfs: CompareResults['whatIfs'],
): string {
  const said = (m: number, verdict: ComparedVerdict): { readonly text: string; readonly size: number }[] =>
    whatIfs
      .flatMap(({ name, compared: all }) => {
        const { difference: seen, verdict: own } = all[m]!;
        return own === verdict
          ? [
              {
                text: `${name} by ${signed(seen)} (${intervalName(seen.level)} ${bounds(seen)})`,
                size: Math.abs(seen.mean),
              },
            ]
          : [];
      })
      .sort((a, b) => b.size - a.size);
  const list = (items: readonly { readonly text: string }[]): string =>
    items.map(({ text }) => text).join(', ');
  const start = `The base ships ${withInterval(base.values[0]!.value, measures[0]!.unit)}.`;
  const part = (m: number, more: string, less: string, same: string): string => {
    const better = said(m, 'better'),
      worse = said(m, 'worse');
    if (better.length + worse.length === 0) return same;
    return [
      ...(better.length > 0 ? [`${more}: ${list(better)}.`] : []),
      ...(worse.length > 0 ? [`${less}: ${list(worse)}.`] : []),
    ].join(' ');
  };
  const isSettled = whatIfs.some(({ compared: all }) => all[0]!.verdict !== 'not settled');
  if (!isSettled) return `${start} One replication says nothing of differences.`;
  const locked = [base, ...whatIfs].filter(({ gridlocks }) => gridlocks > 0).map(({ name }) => name);
  return [
    start,
    part(0, 'Seen to ship more', 'Seen to ship less', 'No what-if is seen to ship more or less.'),
    part(1, 'Lead time shorter, days', 'Lead time longer, days', 'No change of the mean lead time is seen.'),
    ...(locked.length > 0 ? [`In gridlock at least once: ${locked.join(', ')}.`] : []),
  ].join(' ');
}
