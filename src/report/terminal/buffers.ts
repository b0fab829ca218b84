import type { Estimate } from '../../study/simulate/results.js';
import type { BufferResults } from '../../study/buffers/results.js';
import { bounds, count, intervalName, mean, number } from '../../study/format.js';
import { fitColumns } from '../shorten.js';
import { table } from './table.js';

const WIDTH = 100,
  MOST_POINTS = 12;

/**
 * The results in short, as aligned plain text without a line end at the end: the answer, the layout, the next
 * best, the curve.
 */
export function buffersTable(results: BufferResults): string {
  const {
    spots,
    chosen,
    present,
    gain,
    selection,
    curve,
    unit,
    level,
    seed,
    replications,
    freshReplications,
    currency,
  } = results;
  const interval = intervalName(level);
  const layouts = [
    ['chosen', chosen, 'chosen'],
    [
      'as it is',
      present,
      chosen.places.join() === present.places.join() ? 'chosen' : againstChosen(gain.difference),
    ] as const,
    ...selection.others
      .filter((other) => other.places.join() !== present.places.join())
      .map((other) => ['other', other, other.standing] as const),
  ] as const;
  return [
    ...broken(results.answer.sentence),
    `${count(replications, 'replication')} of each of ${results.layoutsTried} layouts, ` +
      `${freshReplications} further ones of the last few, seed ${seed}`,
    '',
    table(
      spots.map((spot) => [spot.name, String(spot.present), String(spot.chosen)]),
      [
        { head: 'places at', most: 60 },
        { head: 'as it is', align: 'right' },
        { head: 'chosen', align: 'right' },
      ],
    ),
    '',
    table(
      layouts.map(([what, layout, standing]) => [
        what,
        String(layout.total),
        mean(layout.rate),
        bounds(layout.rate),
        ...(layout.costPerDay === null ? [] : [number(layout.costPerDay)]),
        standing,
      ]),
      [
        { head: 'layout' },
        { head: 'places', align: 'right' },
        { head: unit, align: 'right' },
        { head: interval },
        ...(chosen.costPerDay === null ? [] : [{ head: `${currency} a day`, align: 'right' } as const]),
        { head: 'standing', most: 48 },
      ],
    ),
    ...(selection.settled
      ? []
      : [`the selection was not settled after ${count(selection.rounds, 'round')}: the best mean was taken`]),
    '',
    table(
      thinned(curve).map((point) => [String(point.total), mean(point.rate), bounds(point.rate)]),
      [
        { head: 'places', align: 'right' },
        { head: `best found, ${unit}`, align: 'right' },
        { head: interval },
      ],
    ),
  ]
    .map((line) =>
      line
        .split('\n')
        .map((each) => fitColumns(each, WIDTH))
        .join('\n'),
    )
    .join('\n');
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
  return Array.from(
    { length: MOST_POINTS },
    (_, i) => points[Math.round((i * (points.length - 1)) / (MOST_POINTS - 1))]!,
  );
}

function broken(text: string): string[] {
  const lines = [''];
  for (const word of text.split(' ')) {
    const line = lines.at(-1)!;
    if (line !== '' && line.length + 1 + word.length > WIDTH) lines.push(word);
    else lines[lines.length - 1] = line === '' ? word : `${line} ${word}`;
  }
  return lines;
}
