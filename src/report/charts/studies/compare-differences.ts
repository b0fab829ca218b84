import type { CompareResults } from '../../../study/compare/results.js';
import { count, number } from '../../../study/format.js';
import { togetherText } from '../../compare.js';
import { valueAxis } from '../axes.js';
import type { Chart } from '../chart.js';
import { type Compared, differencesParts, MARKS_NOTE } from '../differences.js';
import { heading, type Row, rowChart, rowLabel } from '../row-chart.js';

type Item = Compared & { readonly name: string };

/**
 * What each what-if changes, measure by measure, as dots with intervals on one scale of per cent of the base.
 */
export function compareDifferences(results: CompareResults): Chart | null {
  const rows = results.measures.flatMap(({ id, name, unit, better, zone }): Row<Item>[] => [
    heading(`${name}, ${better} is better`),
    ...results.whatIfs.flatMap((each) =>
      each.compared
        .filter(({ measure }) => measure === id)
        .map((item) => ({
          label: rowLabel(each.name),
          item: { ...item, name: each.name, unit, zone: zone.share },
        })),
    ),
  ]);
  return rowChart({
    finding: finding(results),
    how:
      `What-if minus base as a share of the base's mean, paired by replication (common random ` +
      `numbers), ${count(results.replications, 'replication')}. Dot: mean; bar: ` +
      `${togetherText(results)}. ${MARKS_NOTE}`,
    rows,
    ...differencesParts(rows, 'difference', results.differenceLevel),
    values: valueAxis('difference, % of the base', { grace: '4%' }),
  });
}

function finding({ whatIfs, measures }: CompareResults): string {
  const [first] = measures,
    better = whatIfs.filter(({ compared }) => compared[0]?.verdict === 'better').map(({ name }) => name);
  if (first === undefined) return '';
  const { share } = first.zone,
    more = share > 0 ? `over ${number(100 * share)} % more` : 'more';
  return better.length === 0
    ? `No what-if of ${whatIfs.length} surely ships ${more} than the base`
    : `Ships more than the base: ${better.join(', ')}`;
}
