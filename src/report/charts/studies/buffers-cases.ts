import { layoutFor, lostOf, weakestName } from '../../../study/buffers/cases/names.js';
import type { CaseLayout, CaseResult } from '../../../study/buffers/cases/results.js';
import type { BufferResults } from '../../../study/buffers/results.js';
import { count } from '../../../study/format.js';
import { defined } from '../../../study/lists.js';
import { lostText } from '../../buffers.js';
import { type Fill, PALETTE } from '../../style.js';
import { valueAxis, ZERO_GRID } from '../axes.js';
import { BOX_LEGEND, type Chart } from '../chart.js';
import { filledBars } from '../datasets.js';
import { perRow, rowChart, rowsOf } from '../row-chart.js';

const BAR_ROW = 20;
const TODAY: Fill = { colour: '#b8b8b8', hatch: 'plain', hatchColour: '#b8b8b8', edge: '#7a7a7a' },
  CHOSEN: Fill = { colour: PALETTE.blue, hatch: 'plain', hatchColour: PALETTE.blue, edge: PALETTE.blue },
  FIRST: Fill = { colour: '#ffffff', hatch: 'rising', hatchColour: PALETTE.blue, edge: PALETTE.blue },
  MEAN: Fill = {
    colour: '#ffffff',
    hatch: 'dots',
    hatchColour: PALETTE.vermillion,
    edge: PALETTE.vermillion,
  };

interface Bars {
  readonly name: string;
  readonly layout: CaseLayout;
  readonly fill: Fill;
}

/** What each of a few layouts loses in each case; null where one layout is asked for one scenario. */
export function lossByCase(results: BufferResults): Chart | null {
  const over = results.cases;
  if (over === undefined) return null;
  const chosen = defined(over.layouts[0]),
    first = over.layouts[over.cases[0]?.alone ?? 0];
  const shown: Bars[] = [];
  const add = (what: string, layout: CaseLayout | undefined, fill: Fill): void => {
    if (layout !== undefined && shown.every((each) => each.layout !== layout))
      shown.push({ name: `${what}, ${count(layout.total, 'place')}`, layout, fill });
  };
  add('chosen', chosen, CHOSEN);
  add('as it is alone', first, FIRST);
  add('by the average', layoutFor(over, 'mean'), MEAN);
  add('today', layoutFor(over, 'present'), TODAY);
  type Row = CaseResult & { readonly c: number };
  const rows = rowsOf<Row>(
    over.cases.map((each, c) => ({ ...each, c })),
    ({ name }) => name ?? 'as it is',
  );
  return rowChart({
    finding:
      `${count(chosen.total, 'place')} ${chosen.total === 1 ? 'loses' : 'lose'} ` +
      `${lostText(chosen.worst.mean)} in the weakest of ${count(over.cases.length, 'case')}, ` +
      weakestName(chosen, over),
    how:
      `Per cent lost of ${lostOf(over)}, mean of ` +
      `${count(over.replications, 'build')}. ` +
      'As it is alone: what would be taken if there were no other case. Intervals are in the tables.',
    abreast: shown.length,
    each: BAR_ROW * Math.max(2, shown.length),
    above: 96,
    rows,
    columns: shown.map(({ name, layout }): [string[], (row: Row) => string] => [
      [name.replace(/,.*/, ''), `${layout.total} places`],
      ({ c }: Row) => lostText(defined(layout.cases[c]).loss),
    ]),
    values: valueAxis('lost, %', { grid: ZERO_GRID }),
    legend: BOX_LEGEND,
    datasets: shown.map(({ name, layout, fill }) =>
      filledBars(
        name,
        perRow(rows, ({ c }) => 100 * defined(layout.cases[c]).loss),
        fill,
      ),
    ),
  });
}
