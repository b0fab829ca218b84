import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../../src/scenario/read.js';

/** What is said of an opening on a line with two coats, two inspections, a test and a feeder; worded by hand. */
function said(opening: string): readonly string[] {
  const { problems } = readScenario(
    `scenario: items
programme: { arrivals: 1 h, quantity: 30, options: { colour: { red: 50 %, white: 50 % } }, opening: [${opening}] }
defects: { runs: {}, gap: {}, dent: {} }
sites: { hall: { stations: { a: { places: 9 }, b: { places: 9 }, c: { places: 9 }, d: { buffer: 1, rework buffer: 1 }, e: { places: 9 }, f: { places: 9 } } } }
feeders: { axles: { stock: 1, route: [{ step: build, at: f, work: 5 min, creates: { gap: 2 % } }] } }
route:
  - { step: prime, at: a, work: 1 h, creates: { runs: 5 %, dent: 1 % } }
  - { step: stripe, at: b, when: { colour: red }, work: 1 h, creates: { runs: 5 % } }
  - { step: look, at: c, work: 1 h, finds: { runs: { chance: 80 %, back to: prime }, dent: { chance: 90 %, carry: 20 min } } }
  - { step: fit, at: d, work: 1 h, parts: { axles: 1 } }
  - { step: last look, at: e, work: 1 h, finds: { runs: { chance: 90 %, repair: 1 h }, gap: { chance: 90 %, back to: fit, limit: 2, at limit: scrap } } }
  - { step: drive, at: e, work: 1 h, fails: { chance: 5 %, back to: last look } }
  - { step: clear, at: f, hold: { mend: 10 min } }
`,
    'items.yaml',
    () => '',
  );
  return (problems ?? []).map(
    ({ path, wanted, seen, suggestion }) =>
      `${path.replace('programme.opening', '')} ${wanted}; got ${seen}${suggestion === undefined ? '' : `; did you mean ${suggestion}`}`,
  );
}

describe('open items of the opening', () => {
  it.each([
    '{ at: look, open: [{ defect: runs, made at: prime }] }',
    '{ at: look, options: { colour: white }, open: [{ defect: runs }] }',
    '{ at: prime, open: [{ defect: runs, made at: stripe, found at: look }] }',
    '{ at: stripe, options: { colour: red }, sent back by: look, open: [{ defect: dent, found at: look }] }',
    '{ at: fit, open: [{ defect: runs, made at: prime, chance: 3 % }, { defect: dent, found at: look }] }',
    '{ at: last look, open: [{ defect: gap, chance: 0.02 }, { defect: runs, made at: prime, found at: last look }] }',
    '{ at: last look, open: [{ found at: drive }] }',
    '{ at: clear, open: [{ found at: drive }, { defect: runs, made at: prime, found at: look }] }',
    // A place, a space of the buffer and one for those sent back.
    '{ at: fit, units: 2 }, { at: fit, open: [{ defect: gap, found at: last look }] }',
  ])('are taken: %s', (opening) => {
    expect(said(opening)).toEqual([]);
  });

  it.each([
    [
      '{ at: look, open: [{ defect: run }] }',
      '[0].open[0].defect no kind of defect of this name; got "run"; did you mean runs',
    ],
    ['{ at: look, open: [{}] }', '[0].open[0] a defect, or the test that failed under found at; got neither'],
    [
      '{ at: look, open: [{ defect: runs, made at: prime, found at: look, chance: 5 % }] }',
      '[0].open[0].chance no chance for an item that is found; got 0.05',
    ],
    [
      '{ at: prime, open: [{ defect: runs }] }',
      '[0].open[0].defect a defect that a step behind the unit at "prime" may have made; got "runs", which is made at prime, stripe',
    ],
    [
      '{ at: fit, open: [{ defect: gap }] }',
      '[0].open[0].defect a defect that a step behind the unit at "fit" may have made; got "gap", which is made at build',
    ],
    [
      '{ at: look, options: { colour: red }, open: [{ defect: runs }] }',
      '[0].open[0] made at, one of the steps that make it: "prime", "stripe"; got none',
    ],
    [
      '{ at: look, options: { colour: white }, open: [{ defect: runs, made at: stripe }] }',
      '[0].open[0].made at a step behind the unit at "look" that may have made it: "prime"; got "stripe"',
    ],
    [
      '{ at: fit, open: [{ defect: dent, found at: lok }] }',
      '[0].open[0].found at no step of this name in the unit\'s route; got "lok"; did you mean look',
    ],
    [
      '{ at: fit, open: [{ defect: dent, found at: last look }] }',
      '[0].open[0].found at a step of the unit\'s route that finds "dent": "look"; got "last look"',
    ],
    [
      '{ at: clear, open: [{ found at: look }] }',
      '[0].open[0].found at a test that may fail: "drive"; got "look"',
    ],
    [
      '{ at: drive, open: [{ defect: runs, made at: prime, found at: last look }] }',
      '[0].open[0].found at an inspection that leaves it open on the unit at "drive"; got "last look": it is mended at last look itself',
    ],
    [
      '{ at: drive, open: [{ defect: gap, found at: last look }] }',
      '[0].open[0].found at an inspection that leaves it open on the unit at "drive"; got "last look": it is mended at fit, which the unit has passed',
    ],
    [
      '{ at: look, open: [{ defect: runs, made at: prime, found at: last look }] }',
      '[0].open[0].found at an inspection that leaves it open on the unit at "look"; got "last look": it has not come to last look yet',
    ],
    [
      '{ at: look, sent back by: fit }',
      '[0].sent back by an inspection or test, not before "look", that sends units back: "look", "last look", "drive"; got "fit"',
    ],
    [
      '{ at: prime, sent back by: last look }',
      '[0].at a step not before the first to which "last look" sends units back; got "prime"',
    ],
    [
      '{ at: fit, units: 2 }, { at: fit, sent back by: last look }, { at: fit, sent back by: last look }',
      '[2] no more units at station d than it has room for; it has 1 places and 1 spaces ahead for units sent back; got one more at "fit"',
    ],
  ])('are refused with what would be right: %s', (opening, expected) => {
    expect(said(opening)).toEqual([expected]);
  });
});
