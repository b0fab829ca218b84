import { describe, expect, it } from 'vitest';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readText } from '../read-small.js';

/**
 * What is said of a hall with a limited bench, a store and a yard without limits; worded by hand, no outside
 * source.
 */
function saidOf(programme: string, route: string): string[] {
  const text = `scenario: entry
programme: { ${programme}, options: { stripe: 30 %, colour: { red: 50 %, white: 50 % } } }
sites:
  hall: { stations: { bench: { buffer: 1 }, store: { buffer: unlimited }, yard: { buffer: unlimited } } }
  port: { stations: { quay: {} } }
lanes: { ferry: { from: hall, to: port, trucks: 1, capacity: 2, drive: 3 h }, short ferry: { from: hall, to: port, trucks: 1, capacity: 2, drive: 3 h, bank: 2 } }
route: [${route}]
`;
  return (readText(text).problems ?? []).map((problem) => sayProblem(problem).replace(/^small\.yaml:/, ''));
}
const step = (name: string, at: string, more = ''): string =>
  `{ step: ${name}, at: ${at}, work: 10 min${more} }`;

describe('a saturated source', () => {
  const endless = 'arrivals: saturated, length: 100 h';
  const flood = (rooms: string): string =>
    `2:24 programme.arrivals: a quantity, or a limit to the waiting spaces ahead of ${rooms}, where units enter: into unlimited room they would come in for ever at once; got "saturated"`;

  it('without a quantity may not meet unlimited room, at a station or ahead of a lane', () => {
    expect(saidOf(endless, step('fit', 'store'))).toEqual([flood('"store"')]);
    expect(
      saidOf('start: 2027-03-01, until: 2027-04-01, arrivals: saturated', step('fit', 'store')),
    ).toHaveLength(1);
    expect(saidOf(endless, `{ lane: ferry }, ${step('fit', 'quay')}`)).toEqual([flood('"ferry"')]);
  });

  it('with a quantity, or with a limit where units enter, may', () => {
    expect(saidOf('arrivals: saturated, quantity: 9', step('fit', 'store'))).toEqual([]);
    expect(saidOf(endless, `${step('fit', 'bench')}, ${step('keep', 'store')}`)).toEqual([]);
    expect(saidOf(endless, `{ lane: short ferry }, ${step('fit', 'quay')}`)).toEqual([]);
  });

  it('is held back by the one limited room where others have none', () => {
    expect(saidOf(endless, `${step('stripe', 'store', ', when: stripe')}, ${step('fit', 'bench')}`)).toEqual(
      [],
    );
    expect(saidOf(endless, `${step('look', 'store', ', sample: 1 in 2')}, ${step('fit', 'bench')}`)).toEqual(
      [],
    );
    expect(saidOf(endless, `${step('stripe', 'store', ', when: stripe')}, ${step('fit', 'yard')}`)).toEqual([
      flood('"store" and "yard"'),
    ]);
  });
});

describe('a route', () => {
  const rest = 'arrivals: 1 h, quantity: 9';
  const wanted = 'at least one step for every unit, without sample and without rework: only';

  it('has a step for every unit', () => {
    expect(saidOf(rest, step('stripe', 'bench', ', when: stripe'))).toEqual([
      `7:8 route: ${wanted}; got none for a unit with stripe: no`,
    ]);
    expect(
      saidOf(
        rest,
        `${step('stripe', 'bench', ', when: stripe')}, ${step('red', 'bench', ', when: { colour: red }')}`,
      ),
    ).toEqual([`7:8 route: ${wanted}; got none for a unit with stripe: no, colour: white`]);
    expect(saidOf(rest, step('look', 'bench', ', sample: 1 in 2'))).toEqual([
      `7:8 route: ${wanted}; got none`,
    ]);
  });

  it('may have conditions on all its steps, if together they leave out no unit', () => {
    expect(
      saidOf(
        rest,
        `${step('red', 'bench', ', when: { colour: red }')}, ${step('white', 'bench', ', when: { colour: white }')}`,
      ),
    ).toEqual([]);
  });
});
