import { bounds, intervalName, number, signed, withInterval } from '../format.js';
import type { ComparedMeasure, ComparedVerdict, CompareResults, MeasureId } from './results.js';

type Compared = ComparedMeasure & { readonly name: string };
type Results = Pick<CompareResults, 'base' | 'whatIfs' | 'measures' | 'level' | 'differenceLevel'>;

/**
 * What the what-ifs do to the throughput and to the mean lead time, by verdict, and beyond what a difference
 * matters.
 */
export function compareSentence({ base, whatIfs, measures, level, differenceLevel }: Results): string {
  const of = (id: MeasureId): Compared[] =>
    whatIfs.flatMap(({ name, compared }) =>
      compared.filter(({ measure }) => measure === id).map((each) => ({ name, ...each })),
    );
  const shipped = base.values.filter(({ measure }) => measure === 'throughput'),
    [{ unit } = { unit: '' }] = measures.filter(({ id }) => id === 'throughput');
  const start = shipped.map(({ value }) => `The base ships ${withInterval(value, unit)}.`).join(' ');
  if (of('throughput').every(({ difference }) => difference.low === null))
    return `${start} One replication says nothing of differences.`;
  const locked = [base, ...whatIfs].filter(({ gridlocks }) => gridlocks > 0).map(({ name }) => name);
  return [
    start,
    ...told(of('throughput'), ['Ships more', 'Ships less', 'No difference that matters', 'Not settled']),
    ...told(of('lead mean'), [
      'Lead time shorter',
      'Lead time longer',
      'Lead time without a difference that matters',
      'Lead time not settled',
    ]),
    zoneSentence(measures),
    `In brackets: ${intervalName(differenceLevel)}, so that all of it holds together with ` +
      `${number(100 * level)} %.`,
    ...(locked.length > 0 ? [`In gridlock at least once: ${locked.join(', ')}.`] : []),
  ].join(' ');
}

/** A sentence for each verdict that there is. */
function told(
  all: readonly Compared[],
  [better, worse, same, open]: readonly [better: string, worse: string, same: string, open: string],
): string[] {
  const withSize = ({ name, difference }: Compared): string =>
    `${name} by ${signed(difference)} (${bounds(difference)})`;
  const part = (verdict: ComparedVerdict, words: string, each: (one: Compared) => string): string[] => {
    const found = all
      .filter((one) => one.verdict === verdict)
      .sort((a, b) => Math.abs(b.difference.mean) - Math.abs(a.difference.mean));
    return found.length === 0 ? [] : [`${words}: ${found.map(each).join(', ')}.`];
  };
  const little = (words: string): string => words.replace(/ (\w+)$/, ' at least a little $1');
  return [
    ...part('better', better, withSize),
    ...part('at least a little better', little(better), withSize),
    ...part('worse', worse, withSize),
    ...part('at least a little worse', little(worse), withSize),
    ...part('no difference that matters', same, ({ name }) => name),
    ...part('not settled', open, withSize),
  ];
}

/** Beyond what a difference matters. */
export function zoneSentence(measures: CompareResults['measures']): string {
  const beyond = measures
    .filter(({ id }) => id === 'throughput' || id === 'lead mean')
    .map(
      ({ id, unit, zone: { share, amount } }) =>
        `${number(amount)} ${id === 'lead mean' ? `${unit} of lead time` : unit} (${number(100 * share)} %)`,
    );
  return `A difference matters beyond ${beyond.join(' and ')}.`;
}
