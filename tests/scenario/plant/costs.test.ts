import { describe, expect, it } from 'vitest';
import { type Edit, said } from '../read-small.js';

/** small.yaml with prices (line 27); worded by hand, no outside source. */
const costs = (text: string): readonly Edit[] => [['lanes:\n', `costs: { ${text} }\nlanes:\n`]];

const cases: readonly (readonly [title: string, edits: readonly Edit[], expected: readonly string[]])[] = [
  [
    'nothing of prices that are right',
    costs(
      'currency: EUR, people: { painters: { hour: 46, overtime hour: 69 }, default: 42 }, trucks: { ferry: { trip: 420, day: 250 } }, unit: { day: 180 }, send back: 250, scrap: 20000, buffer place: { day: 12 }, changeovers: { cell: 60 }',
    ),
    [],
  ],
  [
    'carriers that there are not',
    costs('currency: EUR, carriers: { dollies: { day: 12 } }'),
    ['27:37 costs.carriers.dollies: no carriers of this name; got "dollies"'],
  ],
  [
    'carriers with a price that is no amount, and one without a day',
    costs('currency: EUR, carriers: { a: 12, b: { day: 12 EUR }, c: { trip: 4 } }'),
    [
      '27:37 costs.carriers.a: no carriers of this name; got "a"',
      '27:40 costs.carriers.a: the price of carriers: a map with the key day; got 12',
      '27:44 costs.carriers.b: no carriers of this name; got "b"',
      '27:54 costs.carriers.b.day: an amount of money: a plain number from 0, without the currency, such as 46; got "12 EUR"',
      '27:64 costs.carriers.c.day: missing; should be an amount of money: a plain number from 0, without the currency, such as 46',
      '27:64 costs.carriers.c: no carriers of this name; got "c"',
      '27:69 costs.carriers.c.trip: one of the keys day; got "trip"',
    ],
  ],
  [
    'a changeover at a station that has none',
    costs('currency: EUR, changeovers: { booth: 60 }'),
    ['27:40 costs.changeovers.booth: a station with a changeover; got "booth", which has none'],
  ],
  [
    'a missing currency',
    costs('send back: 250'),
    ['27:1 costs.currency: missing; should be the name of a currency, such as EUR'],
  ],
  [
    'a currency of several words',
    costs('currency: Norwegian kroner'),
    [
      '27:20 costs.currency: the name of a currency, of 1 to 8 characters, such as EUR; got "Norwegian kroner"',
    ],
  ],
  [
    'a price with its currency',
    costs('currency: EUR, send back: 250 EUR'),
    [
      '27:36 costs.send back: an amount of money: a plain number from 0, without the currency, such as 46; got "250 EUR"',
    ],
  ],
  [
    'a price below 0',
    costs('currency: EUR, scrap: -1'),
    [
      '27:32 costs.scrap: an amount of money: a plain number from 0, without the currency, such as 46; got -1',
    ],
  ],
  [
    'an hour that is no price',
    costs('currency: EUR, people: { painters: free }'),
    [
      '27:45 costs.people.painters: the price of an hour, such as 46 or { hour: 46, overtime hour: 69 }; got "free"',
    ],
  ],
  [
    'a misspelt key',
    costs('currency: EUR, trucks: { ferry: { trips: 420 } }'),
    ['27:44 costs.trucks.ferry.trips: one of the keys trip, day; got "trips"; did you mean "trip"?'],
  ],
  [
    'a crew that is nowhere',
    costs('currency: EUR, people: { paintrs: 46 }'),
    ['27:35 costs.people.paintrs: no crew of this name in any site; got "paintrs"; did you mean "painters"?'],
  ],
  [
    'a lane that is not there',
    costs('currency: EUR, trucks: { fery: { trip: 420 } }'),
    ['27:35 costs.trucks.fery: no lane of this name; got "fery"; did you mean "ferry"?'],
  ],
  [
    'a supply that is not there',
    costs('currency: EUR, supplies: { packs: { lot: 9 } }'),
    ['27:37 costs.supplies.packs: no supply of this name; got "packs"'],
  ],
];

describe('costs', () => {
  it.each(cases)('report %s', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });
});
