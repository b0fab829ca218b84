import { toldConstraint } from '../../report/constraint.js';
import { dateText } from '../../report/first/first.js';
import { stopsText } from '../../report/first/lines/stops.js';
import type { ComparedMeasure } from '../../study/compare/results.js';
import { bounds, count, exact, mean, short, signed } from '../../study/format.js';
import { each, shippedOf } from '../../study/planners-unit.js';
import type { Results } from '../../study/simulate/results.js';
import { type Estimate, negated } from '../../study/statistics/estimate.js';
import type { Moved } from './kept.js';

type RowId = Exclude<ComparedMeasure['measure'], 'lead p90'>;

/** A line of the table: a measure in the report, with the changes, and the difference. */
export interface Line {
  readonly name: string;
  readonly report: string;
  readonly now: string;
  readonly difference: string;
}

/** What the report says of a measure, by the same definitions as the engine of the page; null: nothing. */
const OF_REPORT: Readonly<Record<RowId, (results: Results) => Estimate | null>> = {
  throughput: shippedOf,
  'last unit': () => null,
  cost: ({ costs }) => costs?.perUnit ?? null,
  'lead mean': ({ leadTime }) => leadTime.mean,
  wip: ({ wip }) => wip.total,
};
const IDS = Object.keys(OF_REPORT) as readonly RowId[];

const nameOf = (id: RowId, { rateUnit, costs }: Results): string =>
  ({
    throughput: `units shipped ${each(rateUnit)}`,
    'last unit': '',
    cost: `cost of a unit, ${costs?.currency ?? ''}`,
    'lead mean': 'days from release to shipping',
    wip: 'units in work',
  })[id];

/** When the last unit is out in so many builds; quantiles as in the results. */
const LAST = [
  [0.5, 'last unit out in half of the builds'],
  [0.8, 'last unit out in four of five'],
] as const;

const dateAt = ({ lastUnit }: Results, p: number): string => {
  const date = lastUnit.find((one) => one.p === p)?.date ?? null;
  return date === null ? 'not known' : dateText(date);
};

/**
 * The table: of the report alone, or with what was seen of the changes; `done`, once all replications are in,
 * has the dates.
 */
export function linesOf(report: Results, rows: readonly ComparedMeasure[], done: Results | null): Line[] {
  return IDS.flatMap((id): Line[] => {
    const there = OF_REPORT[id](report),
      row = rows.find(({ measure }) => measure === id),
      difference = row === undefined ? '' : differenceText(row);
    if (id === 'last unit')
      return report.lastUnit.length === 0
        ? []
        : LAST.map(([p, name], i) => ({
            name,
            report: dateAt(report, p),
            now: done === null ? '' : dateAt(done, p),
            difference: i === 0 ? difference : '',
          }));
    if (there === null) return [];
    const now = row === undefined ? '' : short(row.value);
    return [{ name: nameOf(id, report), report: short(there), now, difference }];
  });
}

const isNone = ({ difference: { low, high } }: Pick<ComparedMeasure, 'difference'>): boolean =>
  low === 0 && high === 0;

/** `+0.30 (0.23 to 0.37)`, `9 days sooner (7 to 11)`, and where it matters little, so. */
export function differenceText({ measure, difference, verdict, words }: ComparedMeasure): string {
  if (isNone({ difference })) return 'none';
  const small = verdict === 'no difference that matters' || verdict === 'not settled' ? `; ${words}` : '';
  if (measure !== 'last unit') return `${signed(difference)} (${bounds(difference)})${small}`;
  const isSooner = difference.mean < 0,
    by = isSooner ? negated(difference) : difference;
  return `${mean(by)} days ${isSooner ? 'sooner' : 'later'} (${bounds(by)})${small}`;
}

/** The line that is read first, while builds are run and at the end. */
export function headline(
  report: Results,
  rows: readonly ComparedMeasure[],
  done: number,
  all: Results | null,
): string {
  const row = rows.find(({ measure }) => measure === 'throughput');
  if (row === undefined) return '';
  const { value, difference } = row,
    shipped = `${mean(value)} ${each(report.rateUnit)} (${bounds(value)})`,
    against = isNone(row) ? 'as in the report' : `${signed(difference)} against the report`;
  if (all === null)
    return `${shipped}, ${against}, in ${exact(done)} of ${count(report.replications, 'build')}.`;
  const found = toldConstraint(all),
    then = found?.culprit == null ? '' : `; then ${found.culprit.thing.name} stops it`;
  return `${shipped}, ${against}${then}.`;
}

/** Whether the rate is held with the changes, and what then stops it. */
export function reasons(all: Results): string {
  const found = toldConstraint(all);
  return `${verdictText(all)} ${found === null ? '' : stopsText(found)}`.trim();
}

function verdictText({ answer, rateUnit }: Results): string {
  const { verdict, asked: rate } = answer,
    asked = rate === null ? '' : `${exact(rate)} ${each(rateUnit)}`;
  return {
    holds: `It holds ${asked}.`,
    'falls short': `It falls short of the ${asked} that ${rate === 1 ? 'is' : 'are'} asked.`,
    'not settled': `Whether it holds ${asked} is not settled.`,
    'no rate asked': '',
  }[verdict];
}

/** What the changes cost once, as far as their prices are known. */
export function priceText(moved: readonly Moved[], { costs, programme }: Results): string {
  const known = moved.filter(({ lever, to }) => lever.price !== null && to > lever.now),
    sum = known.reduce((all, { lever, to }) => all + ((to - lever.now) / lever.step) * (lever.price ?? 0), 0);
  const unknown = moved.filter(({ lever }) => lever.price === null).map(({ lever }) => lever.name),
    currency = costs?.currency ?? '',
    units = programme.quantity,
    spread =
      units === null
        ? ''
        : `, ${exact(Math.round(sum / units))} ${currency} over each of ${count(units, 'unit')}`;
  const parts = [
    known.length === 0
      ? ''
      : `Once: ${exact(Math.round(sum))} ${currency}${spread}; not in the cost of a unit below.`,
    unknown.length === 0 ? '' : `Without a price of its own: ${unknown.join(', ')}.`,
  ];
  return parts.filter((part) => part !== '').join(' ');
}

/** Which numbers nobody has looked at. */
export function rangeText(moved: readonly Moved[]): string {
  const outside = moved.filter(({ lever, to }) => to < lever.from || to > lever.to);
  if (outside.length === 0) return '';
  const names = outside
    .map(({ lever }) => `${lever.name} (looked at: ${exact(lever.from)} to ${exact(lever.to)})`)
    .join(', ');
  return (
    `Outside what the planner has looked at: ${names}. ` + 'Nobody has asked whether such a plan makes sense.'
  );
}
