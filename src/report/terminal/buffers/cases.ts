import { lostOf, percentOf } from '../../../study/buffers/cases/names.js';
import type { CaseLayout, CaseResult, CasesResult } from '../../../study/buffers/cases/results.js';
import type { BufferResults } from '../../../study/buffers/results.js';
import { bounds, count, mean, number, signed } from '../../../study/format.js';
import { defined } from '../../../study/lists.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { caseRole, lostText } from '../../buffers.js';
import { BETWEEN_ALL } from '../first.js';
import type { Piece } from '../lines.js';
import { type CellColumn, tableOf } from '../table.js';

/** The chosen layout in each case, and all layouts compared by the case in which they lose most. */
export function casePieces(results: BufferResults, over: CasesResult): Piece[] {
  const { unit, level, goal } = results,
    chosen = defined(over.layouts[0]),
    rows = over.cases.map((each, c) => ({ ...each, c }));
  type Row = CaseResult & { readonly c: number };
  const aloneOf = ({ alone }: Row): CaseLayout => defined(over.layouts[alone]);
  return [
    tableOf<Row>(rows, [
      { head: 'case', cell: (each) => (each.name === null ? 'as it is' : each.name) },
      { head: `no limit, ${unit}`, align: 'right', cell: ({ unlimited }) => number(unlimited) },
      { head: 'chosen', align: 'right', cell: ({ rate }) => mean(rate) },
      { head: BETWEEN_ALL, cell: ({ rate }) => bounds(rate) },
      { head: 'lost', align: 'right', cell: ({ c }) => lostText(defined(chosen.cases[c]).loss) },
      { head: 'alone', align: 'right', cell: (each) => String(aloneOf(each).total) },
      {
        head: 'lost alone',
        align: 'right',
        cell: (each) => lostText(defined(aloneOf(each).cases[each.c]).loss),
      },
      ...(goal.kind === 'budget'
        ? []
        : ([
            {
              head: 'above what is asked',
              cell: ({ aboveAsked }) => (aboveAsked === null ? '' : difference(aboveAsked)),
            },
          ] satisfies CellColumn<Row>[])),
    ]),
    `lost: of ${lostOf(over)}; alone: the fewest places that do as well for it`,
    '',
    tableOf<CaseLayout>(over.layouts, [
      { head: 'layout', cell: (layout) => caseRole(layout, over) },
      { head: 'places', align: 'right', cell: 'total' },
      { head: 'lost at worst', align: 'right', cell: ({ worst }) => lostText(worst.mean) },
      { head: 'in', cell: ({ weakest }) => over.cases[weakest]?.name ?? 'as it is' },
      {
        head: 'more than the chosen',
        cell: ({ worstMore }) => (worstMore === null ? 'chosen' : differencePercent(worstMore)),
      },
      { head: 'in the mean', align: 'right', cell: ({ mean: lost }) => lostText(lost) },
      {
        head: 'more in the mean',
        cell: ({ meanMore }) => (meanMore === null ? 'chosen' : differencePercent(meanMore)),
      },
    ]),
    `${count(over.replications, 'further build')} of each layout in each case, all intervals hold ` +
      `together, ${number(100 * level)} %; in per cent as above`,
  ];
}

const difference = (more: Estimate): string => `${signed(more)} (${bounds(more)})`;
const differencePercent = (more: Estimate): string => difference(percentOf(more));
