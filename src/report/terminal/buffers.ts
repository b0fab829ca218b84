import type { BufferResults, LayoutResult } from '../../study/buffers/results.js';
import { bounds, count, exact, intervalName, mean, number } from '../../study/format.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { joined } from './lines.js';
import { type CellColumn, tableOf } from './table.js';

const MOST_POINTS = 12;

/**
 * The results in short, as aligned plain text without a line end at the end, `width` characters at most: the
 * answer, the layout, the next best, the curve.
 */
export function buffersTable(results: BufferResults, width?: number): string {
  const { spots, selection, curve, unit, level, seed, replications, freshReplications } = results;
  const interval = { head: intervalName(level), cell: ({ rate }: LayoutResult) => bounds(rate) };
  return joined(
    [
      results.answer.sentence,
      `${count(replications, 'replication')} of each of ${exact(results.layoutsTried)} layouts, ` +
        `${exact(freshReplications)} further ones of the last few, seed ${seed}`,
      '',
      tableOf(spots, [
        { head: 'places at', cell: 'name' },
        { head: 'as it is', align: 'right', cell: 'present' },
        { head: 'chosen', align: 'right', cell: 'chosen' },
      ]),
      '',
      tableOf(layouts(results), [
        { head: 'layout', cell: 'what' },
        { head: 'places', align: 'right', cell: 'total' },
        { head: unit, align: 'right', cell: ({ rate }) => mean(rate) },
        interval,
        ...costColumn(results),
        { head: 'standing', cell: 'standing' },
      ]),
      ...(selection.settled
        ? []
        : [`selection not settled after ${count(selection.rounds, 'round')}: the best mean was taken`]),
      '',
      tableOf(thinned(curve), [
        { head: 'places', align: 'right', cell: 'total' },
        { head: `best found, ${unit}`, align: 'right', cell: ({ rate }) => mean(rate) },
        interval,
      ]),
    ],
    width,
  );
}

type Layout = LayoutResult & { readonly what: string; readonly standing: string };

/** The chosen layout, the one as it is, and the others of the selection. */
function layouts({ chosen, present, gain, selection }: BufferResults): Layout[] {
  const isPresent = ({ places }: LayoutResult): boolean => places.join() === present.places.join();
  return [
    { ...chosen, what: 'chosen', standing: 'chosen' },
    {
      ...present,
      what: 'as it is',
      standing: isPresent(chosen) ? 'chosen' : againstChosen(gain.difference),
    },
    ...selection.others.filter((other) => !isPresent(other)).map((other) => ({ ...other, what: 'other' })),
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

/**
 * Where the layout as it is stands, from the chosen one less it: a difference that is less than none says
 * that it ships more.
 */
export function againstChosen(gain: Estimate): string {
  const { mean: value, low, high } = gain,
    turned = { ...gain, mean: -value, low: high === null ? null : -high, high: low === null ? null : -low };
  return value < 0
    ? `${mean(turned)} ahead of chosen (${bounds(turned)})`
    : `${mean(gain)} behind chosen (${bounds(gain)})`;
}

/** Evenly chosen points with the first and the last; all are in the JSON. */
function thinned<Point>(points: readonly Point[]): readonly Point[] {
  if (points.length <= MOST_POINTS) return points;
  const chosen = new Set(
    Array.from({ length: MOST_POINTS }, (_, i) => Math.round((i * (points.length - 1)) / (MOST_POINTS - 1))),
  );
  return points.filter((_, at) => chosen.has(at));
}
