import type { PlacesAt, PricedLayout } from '../../../study/buffers/around/results.js';
import { cheapestSentence, cliffsSentence, gainsSentence } from '../../../study/buffers/around/words.js';
import type { BufferResults } from '../../../study/buffers/results.js';
import { count, intervalName, number } from '../../../study/format.js';
import { defined } from '../../../study/lists.js';
import { leftOutText, roleName } from '../../buffers.js';
import { type Column, columns, type PageTable } from '../../columns.js';
import { type Cell, difference, money, valued } from '../../sheets/cells.js';

/** What lies around the chosen layout, in sentences. */
export const aroundFindings = (results: BufferResults): string[] =>
  [cliffsSentence(results), gainsSentence(results), cheapestSentence(results)].filter(
    (text) => text !== null,
  );

/** One place fewer and more at each spot, and the layouts that were compared by cost. */
export const aroundTables = (results: BufferResults): PageTable[] => [
  ...besideTable(results),
  ...costTables(results),
];

function besideTable(results: BufferResults): PageTable[] {
  const { placeByPlace, unit, level, cheapest } = results;
  if (placeByPlace === null) return [];
  const { spots, replications, eachLevel } = placeByPlace;
  const beside = (by: number, head: string): Column<PlacesAt>[] => [
    [head, (spot) => cellAt(spot, by, ({ more }) => difference(more), 'not possible')],
    [
      `${head}: verdict`,
      (spot) =>
        cellAt(spot, by, ({ standing, nothingIn, more }) =>
          nothingIn > 0 ? `${standing}, nothing in ${nothingIn} of ${more.n}` : standing,
        ),
    ],
    ...(cheapest === null
      ? []
      : ([
          [
            `${head}: ${cheapest.currency} a unit more`,
            (spot) => cellAt(spot, by, ({ cost }) => (cost === null ? '' : difference(cost))),
          ],
        ] satisfies Column<PlacesAt>[])),
  ];
  return [
    {
      id: 'place-by-place',
      title: 'One place fewer and one more',
      note:
        `${unit} more than the chosen layout, all other spots as chosen; in pairs, ` +
        `${count(replications, 'fresh replication')}; ${intervalName(eachLevel)}, so that all of these ` +
        `hold together with ${number(100 * level)} %. Cliff: surely loses ${number(300 * results.zone)} % ` +
        'or more, or ships nothing in a replication, as in a standstill. ' +
        ['All numbers of places looked at are in around.csv.', ...leftOutText(results)].join(' '),
      ...columns(spots, [
        ['Spot', 'name'],
        ['Chosen', 'chosen'],
        ...beside(-1, 'One fewer'),
        ...beside(1, 'One more'),
      ]),
    },
  ];
}

function cellAt(
  { points }: PlacesAt,
  by: number,
  cell: (point: PlacesAt['points'][number]) => Cell,
  none = '',
): Cell {
  const point = points.find((each) => each.by === by);
  return point === undefined ? none : cell(point);
}

function costTables(results: BufferResults): PageTable[] {
  const { cheapest, spots, unit, level } = results;
  if (cheapest === null) return [];
  const { layouts, currency, replications, eachLevel, parts } = cheapest,
    its = count(replications, 'fresh replication');
  return [
    {
      id: 'cost',
      title: 'What a unit costs',
      note:
        `${currency} a unit shipped: everything with a price, over the whole run; ${its}; ` +
        `${intervalName(eachLevel)}, so that all of these hold together with ${number(100 * level)} %; ` +
        'places in the order of the table Places.',
      ...columns<PricedLayout>(layouts, [
        ['Layout', (layout) => roleName(layout, results)],
        ['Places', 'total'],
        ['Cost of a unit', ({ cost }) => (cost === null ? 'none, stands still' : money(cost))],
        [
          'Dearer than the chosen',
          ({ more, dearer }) => (more === null ? 'chosen' : dearer === null ? 'none' : difference(dearer)),
        ],
        [`More ${unit}`, ({ more }) => (more === null ? 'chosen' : difference(more))],
        [
          'Places by spot',
          ({ places }) => ({
            text: places.join(' '),
            parts: spots.map(({ name }, s) => ({ name, value: places[s] ?? null, form: 'number' })),
          }),
        ],
      ]),
    },
    {
      id: 'cost-by-part',
      title: 'What a unit costs, by part',
      note: `${currency} a unit shipped, mean of ${its}.`,
      ...columns<PricedLayout>(layouts, [
        ['Layout', (layout) => roleName(layout, results)],
        ['Places', 'total'],
        ...parts.map(
          (name, part): Column<PricedLayout> => [
            name,
            (layout) => valued(number(defined(layout.parts[part])), defined(layout.parts[part]), 'money'),
          ],
        ),
      ]),
    },
  ];
}
