import { describe, expect, it } from 'vitest';
import { type Edit, said } from '../read-small.js';

/**
 * small.yaml with a supply of bolts (line 27), which the last step takes; worded by hand, no outside source.
 */
const bolts = (text: string): readonly Edit[] => [
  ['lanes:\n', `supplies: { bolts: { ${text} } }\nlanes:\n`],
  ['axles: 2, doors: own', 'axles: 2, doors: own, bolts: 1'],
];
const ORDERED = 'site: final plant, reorder: { level: 4, lot: 8, lead time: 15 days }';

const cases: readonly (readonly [title: string, edits: readonly Edit[], expected: readonly string[]])[] = [
  [
    'nothing of a supply that is right',
    bolts(`${ORDERED}, at start: 3, safety stock: 2, late: { chance: 10 %, by: 2 days }`),
    [],
  ],
  [
    'nothing of a plan that is right',
    bolts('site: final plant, deliveries: { lot: 10, every: 7 days, from: 2027-03-08, to: 2027-12-31 }'),
    [],
  ],
  [
    'a supply without orders or deliveries',
    bolts('site: final plant'),
    ['27:20 supplies.bolts: exactly one of reorder and deliveries; got neither'],
  ],
  [
    'a supply with both',
    bolts(`${ORDERED}, deliveries: [{ on: 2027-03-08, lot: 12 }]`),
    ['27:20 supplies.bolts: exactly one of reorder and deliveries; got both'],
  ],
  [
    'a safety stock beside a plan',
    bolts('site: final plant, deliveries: [{ on: 2027-03-08, lot: 12 }], safety stock: 3'),
    [
      '27:98 supplies.bolts.safety stock: a safety stock only together with reorder; with deliveries raise at start, or the first lot',
    ],
  ],
  [
    'a lot of nothing',
    bolts('site: final plant, reorder: { level: 4, lot: 0, lead time: 15 days }'),
    ['27:67 supplies.bolts.reorder.lot: a whole number from 1 to 1,000,000; got 0'],
  ],
  [
    'a lead time without unit',
    bolts('site: final plant, reorder: { level: 4, lot: 8, lead time: 15 }'),
    [
      '27:81 supplies.bolts.reorder.lead time: a time with its unit (s, min, h, days), such as "15 min"; got 15',
    ],
  ],
  [
    'a misspelt key',
    bolts('site: final plant, reorder: { level: 4, lots: 8, lead time: 15 days }'),
    [
      '27:62 supplies.bolts.reorder.lots: one of the keys level, lot, lead time; got "lots"; did you mean "lot"?',
    ],
  ],
  [
    'a rhythm of half days',
    bolts('site: final plant, deliveries: { lot: 10, every: 36 h }'),
    ['27:71 supplies.bolts.deliveries.every: a number of whole days, such as 7 days; got "36 h"'],
  ],
  [
    'deliveries that are neither list nor map',
    bolts('site: final plant, deliveries: weekly'),
    [
      '27:53 supplies.bolts.deliveries: a list such as [{ on: 2027-03-08, lot: 12 }], or { lot: 10, every: 7 days }; got "weekly"',
    ],
  ],
  [
    'a chance of lateness without a time',
    bolts(`${ORDERED}, late: { chance: 10 % }`),
    [
      '27:92 supplies.bolts.late.by: missing; should be a time, such as "20 min" or { low: 35 min, likely: 42 min, high: 60 min }',
    ],
  ],
  [
    'a site that does not exist',
    bolts(ORDERED.replace('final plant', 'final plan')),
    ['27:28 supplies.bolts.site: no site of this name; got "final plan"; did you mean "final plant"?'],
  ],
  [
    'a delivery before the start',
    bolts('site: final plant, deliveries: [{ on: 2027-02-22, lot: 12 }]'),
    [
      '27:60 supplies.bolts.deliveries[0].on: a day not before the start of the programme, 2027-03-01; got "2027-02-22"',
    ],
  ],
  [
    'a rhythm that ends before it begins',
    bolts('site: final plant, deliveries: { lot: 10, every: 7 days, from: 2027-03-08, to: 2027-03-02 }'),
    [
      '27:101 supplies.bolts.deliveries.to: a day not before the first delivery, 2027-03-08; got "2027-03-02"',
    ],
  ],
  [
    'a step in another site than the supply',
    [...bolts(ORDERED), ['crew: { painters: 2 }', 'crew: { painters: 2 }\n    parts: { bolts: 1 }']],
    [
      '35:14 route[0].parts.bolts: a step in site final plant, where this supply comes in; got "prime", in site coachworks',
    ],
  ],
  [
    'own parts of a supply',
    bolts(ORDERED).map(([a, b]): Edit => [a, b.replace('bolts: 1', 'bolts: own')]),
    ['51:43 route[6].parts.bolts: a number, since these parts come from a supply; got "own"'],
  ],
  [
    'a supply that nothing takes',
    bolts(ORDERED).slice(0, 1),
    ['27:13 supplies.bolts: a step with this supply in its parts; no step has it'],
  ],
  [
    'a supply with the name of a feeder',
    [['lanes:\n', `supplies: { axles: { ${ORDERED} } }\nlanes:\n`]],
    [
      '27:13 supplies.axles: another name than that of a feeder, since steps ask for both by parts; got "axles"',
    ],
  ],
  [
    'a supply that a step takes off',
    [...bolts(ORDERED), ['takes off: doors', 'takes off: [doors, bolts]']],
    ['45:66 route[4].takes off[1]: no feeder of this name; got "bolts"'],
  ],
  [
    'feeders that need each other in a ring',
    [
      [
        'work: 1 h }] }\n  doors',
        'parts: { hubs: 1 }, work: 1 h }] }\n  hubs: { stock: 2, route: [{ step: build hub, at: line, parts: { rims: 1 }, work: 1 h }] }\n  rims: { stock: 2, route: [{ step: build rim, at: line, parts: { axles: 1 }, work: 1 h }] }\n  doors',
      ],
    ],
    [
      '27:67 feeders.rims.route[0].parts.axles: parts that are built without this feeder; got a ring: axles needs hubs needs rims needs axles',
    ],
  ],
];

describe('supplies and kits', () => {
  it.each(cases)('report %s', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });
});
