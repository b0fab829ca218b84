import type { CompareResults } from '../../../study/compare/results.js';
import { count, number } from '../../../study/format.js';
import { measureName } from '../../compare.js';
import { isNarrow, LAYOUT } from '../../style.js';
import { valueAxis } from '../axes.js';
import type { Chart } from '../chart.js';
import { type Compared, differencesParts, MARKS_NOTE } from '../differences.js';
import { type Row, rowChart } from '../row-chart.js';

type Item = Compared & { readonly name: string };

/**
 * What each what-if changes, measure by measure, as dots with intervals on one scale of per cent of the base.
 */
export function compareDifferences(results: CompareResults): Chart | null {
  const rows = shownOf(results).flatMap(({ id, name, unit, better, zone }): Row<Item>[] => [
    {
      label: `${measureName({ id, name })}, ${unit}${isNarrow() ? '' : `, ${better} is better`}`,
      item: null,
    },
    ...results.whatIfs.flatMap((each) =>
      each.compared
        .filter(({ measure }) => measure === id)
        .map((item) => ({
          label: each.name,
          item: { ...item, name: each.name, zone: zone.share },
        })),
    ),
  ]);
  return rowChart({
    finding: finding(results),
    how:
      `What-if against today, the same random events in both, ${count(results.replications, 'build')}. ` +
      `Bars: ${number(100 * results.level)} % sure that all of them hold. ${MARKS_NOTE}`,
    rows,
    ...differencesParts(rows, 'difference', results.level),
    values: valueAxis('difference, % of today', { grace: '4%' }),
  });
}

/** Most asked for first, where there is room for a few only. */
const FIRST: readonly string[] = ['throughput', 'last unit', 'cost'];

/** All measures, or those that a reader asks for first where few rows are shown. */
function shownOf({ measures, whatIfs }: CompareResults): CompareResults['measures'] {
  const rows = measures.length * whatIfs.length,
    few = measures.filter(({ id }) => FIRST.includes(id));
  if (rows <= LAYOUT.mostRows || few.length === 0) return measures;
  LAYOUT.isCut = true;
  return few;
}

/** Names in a title at most. */
const NAMED = 3;

function finding({ whatIfs, measures }: CompareResults): string {
  const [first] = measures,
    better = whatIfs.filter(({ compared }) => compared[0]?.verdict === 'better').map(({ name }) => name);
  if (first === undefined) return '';
  const { share } = first.zone,
    more = share > 0 ? `over ${number(100 * share)} % more` : 'more',
    left = better.length - NAMED;
  return better.length === 0
    ? `No what-if of ${whatIfs.length} surely ships ${more} than today`
    : `Ships more than today: ${better.slice(0, NAMED).join(', ')}` +
        (left > 0 ? ` and ${count(left, 'other')}` : '');
}
