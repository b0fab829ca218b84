import type { VariedAssumption, ReliefResult, ReliefsResults } from '../../study/reliefs/results.js';
import { count, intervalName, mean, number, short, withInterval } from '../format.js';
import { fitColumns } from '../shorten.js';
import { table, type Column } from './table.js';
import { lines } from './simulate.js';

const WIDTH = 100,
  TOP = 12,
  TOP_ASSUMPTIONS = 8;

/**
 * The ranking in short, plain text of at most 100 columns: the answer, the best reliefs, the assumptions that
 * move most.
 */
export function reliefsTable(results: ReliefsResults): string {
  const { reliefs, assumptions, base, answer, seed } = results,
    dear = base.costPerUnit !== null;
  const columns: Column[] = [
    { head: '', align: 'right' },
    { head: 'relief', most: dear ? 36 : 52 },
    { head: 'gain a day', most: 25 },
    { head: 'runs', align: 'right' },
    ...(dear
      ? [
          { head: `${base.currency ?? ''} a unit`, align: 'right' as const, most: 12 },
          { head: 'by cost', align: 'right' as const },
        ]
      : []),
  ];
  return [
    ...lines(answer.sentence, ''),
    `base ${withInterval(base.throughput)} units a working day, ${countedIn(results)}, seed ${seed}`,
    '',
    table(
      reliefs.slice(0, TOP).map((each) => row(each, dear)),
      columns,
    ),
    ...(reliefs.length > TOP ? [`and ${reliefs.length - TOP} more, with --json or --out`] : []),
    ...(assumptions.length === 0
      ? []
      : [
          '',
          table(assumptions.slice(0, TOP_ASSUMPTIONS).map(assumed), [
            { head: 'measure next', most: 40 },
            { head: 'low: gain a day', most: 28 },
            { head: 'high: gain a day', most: 28 },
          ]),
        ]),
    '',
    ...lines(
      'gain: units a working day more than the base, same chance in both; in brackets ' +
        `${intervalName(results.eachLevel.reliefs)}, so that all of the ${compared(reliefs)} ` +
        `compared to the end hold together at ${number(results.level * 100)} %`,
      '  ',
    ),
    ...lines(savedText(results), '  '),
    ...(results.skipped.length === 0
      ? []
      : lines(
          `${count(results.skipped.length, 'change')} could not be made; --json says which and why`,
          '  ',
        )),
  ]
    .map((line) =>
      line
        .split('\n')
        .map((each) => fitColumns(each, WIDTH))
        .join('\n'),
    )
    .join('\n');
}

function row(
  { rank, text, gain, replications, costPerUnit, rankPerCost }: ReliefResult,
  dear: boolean,
): string[] {
  return [
    String(rank),
    text,
    short(gain),
    String(replications),
    ...(dear
      ? [costPerUnit === null ? '' : mean(costPerUnit), rankPerCost === null ? '' : String(rankPerCost)]
      : []),
  ];
}

function assumed({ path, low, high }: VariedAssumption): string[] {
  return [path, low === null ? 'cannot be' : short(low.gain), high === null ? 'cannot be' : short(high.gain)];
}

export function countedIn({ counted: { over, from, to } }: ReliefsResults): string {
  return over === 'whole run' ? 'over the whole run' : `${from ?? ''} to ${to ?? ''}`;
}

export const compared = (all: readonly { readonly out: unknown }[]): number =>
  all.filter(({ out }) => out === null).length;

/** What the screen spared. */
export function savedText({
  runs: { run, withoutScreen },
  keep,
  zone,
  level,
  reliefs,
  replications,
}: ReliefsResults): string {
  const outs = (why: string): number => reliefs.filter(({ out }) => out === why).length;
  return (
    `${count(run, 'replication')} run in the place of ${withoutScreen}, ` +
    `${number(100 * (1 - run / withoutScreen))} % saved: of ${count(reliefs.length, 'relief')} ` +
    `${outs('no effect')} showed no effect early, ` +
    `${outs('behind')} were clearly behind the best ${keep} (indifference zone ${number(zone)} a ` +
    `day, ${number(level * 100)} %), ${compared(reliefs)} were given all ${replications}`
  );
}
