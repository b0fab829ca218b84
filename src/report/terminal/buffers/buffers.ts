import type { CasesResult } from '../../../study/buffers/cases/results.js';
import type {
  BufferResults,
  ComparedLayout,
  CurvePoint,
  LayoutResult,
} from '../../../study/buffers/results.js';
import { bounds, count, exact, mean, number } from '../../../study/format.js';
import { negated } from '../../../study/statistics/estimate.js';
import { mostNamed } from '../../buffers.js';
import { WITH_THEM } from '../../constraint.js';
import { buffersFirst } from '../../first/buffers.js';
import { constraintLines } from '../constraint.js';
import { BETWEEN_ALL, betweenHead, firstPieces } from '../first.js';
import { joined } from '../lines.js';
import { type CellColumn, tableOf } from '../table.js';
import { aroundPieces } from './around.js';
import { casePieces } from './cases.js';
import { thinned } from './thinned.js';

/** A point of the curve is left out where it lies on the line between others, to this share of the zone. */
const ON_THE_LINE = 0.5;

/**
 * The results in short, as aligned plain text without a line end at the end, `width` characters at most: the
 * answer, the places, the layouts compared, the curve.
 */
export function buffersTable(results: BufferResults, width?: number): string {
  if (results.cases !== undefined) return casesTable(results, results.cases, width);
  const { spots, selection, best, unit, level, seed, replications, freshReplications, constraint } = results,
    shown = shownOf(results);
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
      ...aroundPieces(results),
      '',
      tableOf(shown, [
        { head: 'places', align: 'right', cell: 'total' },
        { head: `best found, ${unit}`, align: 'right', cell: ({ rate }) => mean(rate) },
        interval(betweenHead(level)),
        { head: 'below the best', align: 'right', cell: ({ behind }) => `${number(100 * behind)} %` },
      ]),
      ...(shown.length === results.curve.length
        ? []
        : [`numbers left out lie between, to within ${number(100 * ON_THE_LINE * results.zone)} %`]),
      ...(constraint === null ? [] : constraintLines(constraint, WITH_THEM)),
    ],
    width,
  );
}

/** The same of one layout for several cases. */
function casesTable(results: BufferResults, over: CasesResult, width?: number): string {
  const { spots, seed, replications, constraint, layoutsTried, answer } = results;
  return joined(
    [
      ...firstPieces(buffersFirst(results), answer.sentence),
      ...answer.notes,
      `up to ${count(replications, 'build')} of each of ${exact(layoutsTried)} layouts as it is, as many ` +
        `or fewer in each other case, seed ${seed}`,
      '',
      tableOf(spots, [
        { head: 'places at', cell: 'name' },
        { head: 'as it is', align: 'right', cell: 'present' },
        { head: 'chosen', align: 'right', cell: 'chosen' },
        ...over.cases.map(
          ({ name, alone }): CellColumn<(typeof spots)[number]> => ({
            head: `alone: ${name ?? 'as it is'}`,
            align: 'right',
            cell: (spot) => String(over.layouts[alone]?.places[spots.indexOf(spot)] ?? ''),
          }),
        ),
      ]),
      '',
      ...casePieces(results, over),
      ...(constraint === null ? [] : constraintLines(constraint, `${WITH_THEM}, all else as it is`)),
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

/** Points of the curve that matter; all are in the JSON. */
function shownOf({ curve, chosen, zone }: BufferResults): readonly CurvePoint[] {
  const highest = Math.max(...curve.map(({ rate }) => rate.mean));
  return thinned(
    curve,
    ({ total, rate }) => ({ x: total, y: rate.mean }),
    ON_THE_LINE * zone * highest,
    ({ total }) => total === chosen.total,
  );
}
