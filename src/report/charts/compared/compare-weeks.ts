import type { CompareResults, VariantResult } from '../../../study/compare/results.js';
import { count } from '../../../study/format.js';
import { daysInBucket, eachWorking, unitsEach } from '../../../study/planners-unit.js';
import { type Estimate, mapped } from '../../../study/statistics/estimate.js';
import { LINES } from '../../style.js';
import { type Chart, intervalNote } from '../chart.js';
import { figures } from '../figures.js';
import { type TimeLine, timeChart } from '../over-time/time.js';
import { shortWeeks } from '../over-time/week-marks.js';

/** Units shipped a working day, week by week, of the base and the what-ifs. */
export function compareThroughput(results: CompareResults): Chart | null {
  const { series, rateUnit } = results,
    works = series.workingDays.map((days) => days > 0);
  return weeks(
    results,
    'throughput',
    'Throughput',
    unitsEach(rateUnit),
    ({ shippedPerDay, shippedOverLoads }) =>
      (shippedOverLoads ?? shippedPerDay).map((each, b) =>
        works[b] === true ? mapped(each, (perDay) => perDay * daysInBucket(rateUnit, series, b)) : null,
      ),
  );
}

/** Work in process, week by week, of the base and the what-ifs. */
export function compareWip(results: CompareResults): Chart | null {
  return weeks(results, 'wip', 'WIP', 'units', ({ wip }) => wip);
}

function weeks(
  results: CompareResults,
  id: 'throughput' | 'wip',
  what: string,
  unit: string,
  series: (variant: VariantResult) => (Estimate | null)[] | readonly Estimate[],
): Chart | null {
  if (results.series.labels.length === 0) return null;
  type Values = readonly { readonly measure: string; readonly value: Estimate }[];
  const meansIn = (values: Values): Estimate[] =>
      values.filter(({ measure }) => measure === id).map(({ value }) => value),
    write = figures(
      [results.base.values, ...results.whatIfs.map(({ compared }) => compared)].flatMap(meansIn),
    ),
    of = (values: Values): string =>
      meansIn(values)
        .map((value) => `mean ${write.short(value)}`)
        .join('');
  const all = [
    { variant: results.base as VariantResult, note: of(results.base.values) },
    ...results.whatIfs.map((each) => ({ variant: each, note: of(each.compared) })),
  ];
  const lines = all.slice(0, LINES.length).map(
    ({ variant, note }, i): TimeLine => ({
      name: variant.name,
      note,
      colour: LINES[i]?.colour ?? '',
      dash: LINES[i]?.dash ?? [],
      width: i === 0 ? 2.8 : 1.8,
      values: series(variant).map((each) => (each === null || each.n === 0 ? null : each)),
    }),
  );
  const left = all.length - lines.length,
    evened = id === 'throughput' && all.some(({ variant }) => variant.shippedOverLoads !== null);
  const over =
    id === 'throughput' && results.window !== null
      ? ` of ${results.window.from} to ${results.window.to}`
      : '';
  const better = results.whatIfs
    .flatMap(({ name, compared }) =>
      compared
        .filter(({ measure, verdict }) => measure === id && verdict === 'better')
        .map(({ relative }) => ({ name, size: Math.abs(relative?.mean ?? 0) })),
    )
    .sort((a, b) => b.size - a.size);
  return timeChart(results, {
    finding:
      better.length === 0
        ? `${what} by ${results.series.unit}: none is surely better than today`
        : `${what} by ${results.series.unit} is better with ${better[0]?.name ?? ''}` +
          (better.length > 1 ? ` and ${count(better.length - 1, 'other')}` : ''),
    how:
      `${id === 'wip' ? 'Units inside' : `Units shipped ${eachWorking(results.rateUnit)}`} by ` +
      `${results.series.unit}${evened ? ', as a mean over whole loads' : ''}. Bands: ` +
      `${intervalNote(results)}; brackets: means${over}, which hold together.` +
      (left > 0 ? ` ${left} more what-ifs are in results.json.` : ''),
    lines,
    valueTitle: unit,
    marked: shortWeeks(results.series.workingDays),
  });
}
