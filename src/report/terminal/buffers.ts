import type { BufferResults, ComparedLayout, CurvePoint, LayoutResult } from '../../study/buffers/results.js';
import { bounds, count, exact, mean, number } from '../../study/format.js';
import { negated } from '../../study/statistics/estimate.js';
import { mostNamed } from '../buffers.js';
import { buffersFirst } from '../first/buffers.js';
import { BETWEEN_ALL, betweenHead, firstPieces } from './first.js';
import { joined } from './lines.js';
import { type CellColumn, tableOf } from './table.js';

const MOST_POINTS = 12;

/**
 * The results in short, as aligned plain text without a line end at the end, `width` characters at most: the
 * answer, the places, the layouts compared, the curve.
 */
export function buffersTable(results: BufferResults, width?: number): string {
  const { spots, selection, best, unit, level, seed, replications, freshReplications } = results;
  const interval = (head: string) => ({ head, cell: ({ rate }: LayoutResult) => bounds(rate) });
  return joined(
    [
      ...firstPieces(buffersFirst(results), results.answer.sentence),
      ...results.answer.notes,
      `up to ${count(replications, 'build')} of each of ${exact(results.layoutsTried)} layouts, ` +
        `${exact(freshReplications)} further ones of the last few, seed ${seed}`,
      '',
      tableOf(spots, [
        { head: 'places at', cell: 'name' },
        { head: 'as it is', align: 'right', cell: 'present' },
        { head: 'chosen', align: 'right', cell: 'chosen' },
        ...(best === null ? [] : [{ head: mostNamed(results), align: 'right', cell: 'best' } as const]),
      ]),
      '',
      tableOf(layouts(results), [
        { head: 'layout', cell: 'what' },
        { head: 'places', align: 'right', cell: 'total' },
        { head: unit, align: 'right', cell: ({ rate }) => mean(rate) },
        interval(BETWEEN_ALL),
        ...costColumn(results),
        { head: 'more than the chosen', cell: 'against' },
      ]),
      `between: all of them hold together, ${number(100 * level)} %`,
      ...(selection.settled
        ? []
        : [`selection not settled after ${count(selection.rounds, 'round')}: the best mean was taken`]),
      '',
      tableOf(thinned(results), [
        { head: 'places', align: 'right', cell: 'total' },
        { head: `best found, ${unit}`, align: 'right', cell: ({ rate }) => mean(rate) },
        interval(betweenHead(level)),
        { head: 'below the best', align: 'right', cell: ({ behind }) => `${number(100 * behind)} %` },
      ]),
    ],
    width,
  );
}

type Layout = LayoutResult & { readonly what: string; readonly against: string };

/** The chosen layout, the best (found) for the budget, the one as it is, and the others of the selection. */
function layouts({ chosen, best, more, present, selection, search }: BufferResults): Layout[] {
  const named = (what: string, each: ComparedLayout): Layout => ({
    ...each,
    what,
    against: againstChosen(each),
  });
  return [
    { ...chosen, what: 'chosen', against: 'chosen' },
    ...(best === null || more === null ? [] : [named(search.within === null ? 'found' : 'best', best)]),
    named('as it is', present),
    ...selection.others
      .filter(({ places }) => ![present, best].some((each) => each?.places.join() === places.join()))
      .map((other) => named('other', other)),
  ];
}

/** Only where waiting places have a price. */
function costColumn({ chosen, currency }: BufferResults): CellColumn<Layout>[] {
  if (chosen.costPerDay === null) return [];
  return [
    {
      head: `${currency ?? ''} a day`,
      align: 'right',
      cell: ({ costPerDay }) => (costPerDay === null ? '' : number(costPerDay)),
    },
  ];
}

/** How a layout stands against the chosen one, and what it ships more, by the interval. */
export function againstChosen({ standing, behind: { difference } }: ComparedLayout): string {
  if (standing === 'chosen') return standing;
  return `${standing} (${bounds(negated(difference))})`;
}

/** Evenly spread points with the first, the last and that of the choice; all are in the JSON. */
function thinned({ curve, chosen }: BufferResults): readonly CurvePoint[] {
  if (curve.length <= MOST_POINTS) return curve;
  const spread = new Set(
    Array.from({ length: MOST_POINTS }, (_, i) => Math.round((i * (curve.length - 1)) / (MOST_POINTS - 1))),
  );
  return curve.filter(({ total }, at) => spread.has(at) || total === chosen.total);
}
