import type { PlacePoint, PlacesAt, PricedLayout } from '../../../study/buffers/around/results.js';
import { cheapestSentence, cliffsSentence, gainsSentence } from '../../../study/buffers/around/words.js';
import type { BufferResults } from '../../../study/buffers/results.js';
import { bounds, count, mean, number, signed } from '../../../study/format.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { leftOutText, roleName } from '../../buffers.js';
import { BETWEEN_ALL, plainly } from '../first.js';
import type { Piece } from '../lines.js';
import { tableOf } from '../table.js';

/** What one place more and fewer at each spot brings, and which layout is cheapest. */
export function aroundPieces(results: BufferResults): Piece[] {
  return [...placesPieces(results), ...cheapestPieces(results)];
}

function placesPieces(results: BufferResults): Piece[] {
  const { placeByPlace, unit, level } = results,
    cliffs = cliffsSentence(results);
  if (placeByPlace === null || cliffs === null) return [];
  const { spots, replications } = placeByPlace;
  return [
    '',
    tableOf(spots, [
      { head: 'places at', cell: 'name' },
      { head: 'chosen', align: 'right', cell: 'chosen' },
      { head: 'one fewer', cell: (spot) => besideText(spot, -1) },
      { head: 'one more', cell: (spot) => besideText(spot, 1) },
    ]),
    `${unit} more than the chosen layout, all other spots as chosen; ${togetherIn(replications, level)}`,
    ...leftOutText(results),
    cliffs,
    ...[gainsSentence(results)].filter((text) => text !== null),
  ];
}

const togetherIn = (replications: number, level: number): string =>
  `${count(replications, 'further build')}, all intervals hold together, ${number(100 * level)} %`;

const besideText = ({ points }: PlacesAt, by: number): string => {
  const point = points.find((each) => each.by === by);
  return point === undefined ? 'not possible' : standingText(point);
};

const standingText = ({ more, standing, nothingIn }: PlacePoint): string =>
  nothingIn > 0 ? `nothing in ${nothingIn} of ${more.n}: cliff` : `${differenceText(more)} ${standing}`;

const differenceText = (more: Estimate): string => `${signed(more)} (${bounds(more)})`;

const orNone = (more: Estimate | null): string => (more === null ? 'none' : differenceText(more));

function cheapestPieces(results: BufferResults): Piece[] {
  const { cheapest, unit, level } = results,
    sentence = cheapestSentence(results);
  if (cheapest === null || sentence === null) return [];
  const { layouts, currency, replications } = cheapest;
  return [
    '',
    plainly(sentence),
    '',
    tableOf<PricedLayout>(layouts, [
      { head: 'layout', cell: (layout) => roleName(layout, results) },
      { head: 'places', align: 'right', cell: 'total' },
      {
        head: `${currency} a unit`,
        align: 'right',
        cell: ({ cost }) => (cost === null ? 'none' : mean(cost)),
      },
      { head: BETWEEN_ALL, cell: ({ cost }) => (cost === null ? 'stands still' : bounds(cost)) },
      {
        head: 'dearer than the chosen',
        cell: ({ more, dearer }) => (more === null ? 'chosen' : orNone(dearer)),
      },
      { head: `more ${unit}`, cell: ({ more }) => (more === null ? 'chosen' : differenceText(more)) },
    ]),
    'everything that has a price, over the whole run, by the units shipped in it; ' +
      togetherIn(replications, level),
  ];
}
