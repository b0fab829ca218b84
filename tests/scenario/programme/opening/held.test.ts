import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../../src/scenario/read.js';

/** What is said of a floor with a carrier and a team of two from `one` to `three`; worded by hand. */
function said(opening: string, carts: number, technicians = 9): readonly string[] {
  const { problems } = readScenario(
    `scenario: floor
programme:
  arrivals: saturated
  quantity: 9
  options: { colour: { red: 50 %, white: 50 % } }
  opening: [${opening}]
sites:
  hall:
    crews: { technicians: ${technicians} }
    stations: { a: { places: 4 }, b: { places: 4 }, c: { places: 4 }, t: {} }
carriers: { carts: { count: ${carts}, from: one, to: three } }
teams: { pair: { crew: technicians, people: 2, from: one, to: three } }
route:
  - { step: one, at: a, when: { colour: red }, work: 1 h }
  - { step: two, at: b, work: 1 h }
  - { step: three, at: c, work: 1 h }
  - { step: test, at: t, work: 1 h }
`,
    'floor.yaml',
    () => '',
  );
  return (problems ?? []).map(({ line, wanted, seen }) => `${line}: ${wanted}; got ${seen}`);
}

describe('units of the opening that hold carriers and teams', () => {
  it('may be as many as there are', () => {
    expect(said('{ at: three, units: 2 }', 2)).toEqual([]);
    // Those about to begin their first step claim it there; those behind the stretch have given it back.
    expect(said('{ at: three, units: 2 }, { at: one, options: { colour: red } }, { at: test }', 2)).toEqual(
      [],
    );
    expect(said('{ at: three, units: 2 }, { at: two, units: 2, options: { colour: white } }', 2)).toEqual([]);
  });

  it('are refused beyond that, with the line and what to do', () => {
    const cart =
      '6: no more units behind "one", up to "three", than there are carts; each has one and there is 1: a higher count, or a unit less; got one more at ';
    expect(said('{ at: three, units: 3 }', 1)).toEqual([`${cart}"three"`]);
    expect(said('{ at: three }, { at: two, options: { colour: red } }', 1)).toEqual([`${cart}"two"`]);
    expect(said('{ at: three, units: 3 }', 3, 5)).toEqual([
      '6: no more units behind "one", up to "three", than the 5 technicians can stay with; each has 2 of them (pair): a larger crew, or a unit less; got one more at "three"',
    ]);
  });

  it('are not refused where a drawn colour decides whether they have one', () => {
    expect(said('{ at: two, units: 2 }', 1)).toEqual([]);
  });
});
