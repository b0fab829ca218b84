import { count, intervalName, mean, number, short, withInterval } from '../../study/format.js';
import type { ReliefResult, ReliefsResults, VariedResult } from '../../study/reliefs/results.js';
import { comparedToTheEnd, countedIn, savedText } from '../reliefs.js';
import { type CellColumn, joined, lines, tableOf } from './table.js';

const TOP = 12,
  TOP_ASSUMPTIONS = 8;

/**
 * The ranking in short, plain text of at most 100 columns: the answer, the best reliefs, the assumptions that
 * move most.
 */
export function reliefsTable(results: ReliefsResults): string {
  const { reliefs, assumptions, base, answer, seed, skipped, level, eachLevel } = results;
  return joined([
    ...lines(answer.sentence),
    ...lines(
      `base ${withInterval(base.throughput)} units a working day, ${countedIn(results)}, seed ${seed}`,
    ),
    '',
    tableOf(reliefs.slice(0, TOP), columns(base)),
    ...(reliefs.length > TOP ? [`and ${reliefs.length - TOP} more, with --json or --out`] : []),
    ...(assumptions.length === 0
      ? []
      : [
          '',
          tableOf(assumptions.slice(0, TOP_ASSUMPTIONS), [
            { head: 'measure next', most: 40, cell: 'path' },
            { head: 'low: gain a day', most: 28, cell: ({ low }) => gainAt(low) },
            { head: 'high: gain a day', most: 28, cell: ({ high }) => gainAt(high) },
          ]),
        ]),
    '',
    ...lines(
      'gain: units a working day more than the base, same chance in both; in brackets ' +
        `${intervalName(eachLevel.reliefs)}, so that all of the ${comparedToTheEnd(reliefs)} compared to ` +
        `the end hold together at ${number(level * 100)} %`,
      '  ',
    ),
    ...lines(savedText(results), '  '),
    ...(skipped.length === 0
      ? []
      : lines(`${count(skipped.length, 'change')} could not be made; --json says which and why`, '  ')),
  ]);
}

/** Costs have columns where the scenario has prices. */
function columns({ costPerUnit, currency }: ReliefsResults['base']): CellColumn<ReliefResult>[] {
  const isPriced = costPerUnit !== null;
  const priced: CellColumn<ReliefResult>[] = [
    {
      head: `${currency ?? ''} a unit`,
      align: 'right',
      most: 12,
      cell: (each) => (each.costPerUnit === null ? '' : mean(each.costPerUnit)),
    },
    { head: 'by cost', align: 'right', cell: 'rankPerCost' },
  ];
  return [
    { head: '', align: 'right', cell: 'rank' },
    { head: 'relief', most: isPriced ? 36 : 52, cell: 'text' },
    { head: 'gain a day', most: 25, cell: ({ gain }) => short(gain) },
    { head: 'runs', align: 'right', cell: 'replications' },
    ...(isPriced ? priced : []),
  ];
}

const gainAt = (end: VariedResult | null): string => (end === null ? 'cannot be' : short(end.gain));
