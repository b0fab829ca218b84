import { describe, expect, it } from 'vitest';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readText } from '../read-small.js';

/** Rules 2 and 6: what a planner might write of kits and waits, and what is then said; worded by hand. */
const yaml = `scenario: kits
programme: { start: 2027-03-01, quantity: 2, rate: { per day: 1 }, options: { colour: { red: 50 %, blue: 50 % } } }
sites:
  hall: { stations: { bench: {}, oven: { places: 2, lot: { most: 2, least: 1 } }, bay: {}, moving: {}, line: { buffer: unlimited } } }
pulse lines: { belt: { stations: [moving], takt: 1 h } }
supplies:
  bolts: { site: hall, deliveries: [{ on: 2027-03-01, lot: 3 }, { on: 2027-03-02, lot: 2 }] }
  nuts: { site: hall, at start: 9, reorder: { level: 0, lot: 9, lead time: 1 day } }
feeders:
  looms: { stock: 3, route: [{ step: bind, at: bench, work: 1 h }] }
  dashboards:
    stock: 1
    route:
      - { step: open, at: bench, parts: { looms: 2, bolts: 3 }, work: 1 h }
      - { step: close, at: bench, parts: { looms: 1, bolts: 2 }, work: 1 h }
route:
  - { step: come, at: line, parts: { nuts: 1 }, work: 1 h }
  - { step: fit, at: bay, parts: { dashboards: 1 }, work: 1 h }
  - { step: move, at: moving, work: 1 h }
`;

function said(...edits: (readonly [before: string, after: string])[]): string[] {
  const text = edits.reduce((now, [before, after]) => {
    expect(now).toContain(before);
    return now.replace(before, after);
  }, yaml);
  return (readText(text).problems ?? []).map((problem) => sayProblem(problem).replace(/^small\.yaml:/, ''));
}
const waits = (step: string): readonly [string, string] => [
  `step: ${step},`,
  `step: ${step}, wait for parts: in buffer,`,
];

describe('a full kit', () => {
  it('may be as large as what can be there at once', () => {
    expect(said()).toEqual([]);
    expect(
      said(['looms: 1, bolts', 'looms: 2, bolts'], ['stock: 1', 'stock: 1\n    full kit: false']),
    ).toEqual([]);
    // Without a sure visit the parts are not in the kit.
    expect(said(['step: close,', 'step: close, sample: 1 in 2,'], ['looms: 1, b', 'looms: 2, b'])).toEqual(
      [],
    );
  });

  it.each([
    [
      'more than the stock of a feeder',
      [['looms: 1, bolts', 'looms: 2, bolts']],
      [
        '15:44 feeders.dashboards.route[1].parts.looms: at most 3 in the full kit of a sub-assembly, the target stock of looms; or full kit: false at feeder dashboards; got 4',
      ],
    ],
    [
      'more than ever comes in',
      [['bolts: 2', 'bolts: 3']],
      [
        '15:54 feeders.dashboards.route[1].parts.bolts: at most 5 in the full kit of a sub-assembly, all bolts that ever come in; or full kit: false at feeder dashboards; got 6',
      ],
    ],
    [
      'a word that is none',
      [['stock: 1', 'stock: 1\n    full kit: no']],
      ['13:15 feeders.dashboards.full kit: true or false; got "no"'],
    ],
  ] as const)('is refused that wants %s', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });
});

describe('a wait in the buffer', () => {
  it('is for steps that take parts', () => {
    expect(said(waits('come'), waits('fit'))).toEqual([]);
  });

  it.each([
    [
      'another word',
      [['step: come,', 'step: come, wait for parts: outside,']],
      ['17:35 route[0].wait for parts: one of "in place", "in buffer"; got "outside"'],
    ],
    [
      'nothing to wait for',
      [['parts: { nuts: 1 }, work: 1 h', 'wait for parts: in buffer']],
      [
        'supplies.nuts: a step with this supply in its parts; no step has it',
        'route[0].wait for parts: parts, a carrier or a team that "come" waits for; leave the key out; got "in buffer"',
      ],
    ],
    [
      'a feeder',
      [waits('open')],
      [
        'feeders.dashboards.route[0].wait for parts: in place here; in buffer is for steps of the main route that take units one by one; got "in buffer" at a feeder, which has its full kit before it begins',
      ],
    ],
    [
      'lots',
      [
        waits('come'),
        [
          'step: come, wait for parts: in buffer, at: line',
          'step: come, wait for parts: in buffer, at: oven',
        ],
      ],
      [
        'route[0].wait for parts: in place here; in buffer is for steps of the main route that take units one by one; got "in buffer" at lots, for which one unit takes the parts',
      ],
    ],
    [
      'batches',
      [
        waits('come'),
        [
          'line: { buffer: unlimited',
          'line: { buffer: unlimited, changeover: { on: colour, work: 5 min, batch: { most: 3 } }',
        ],
      ],
      [
        'route[0].wait for parts: in place here; in buffer is for steps of the main route that take units one by one; got "in buffer" at batches, which choose who goes next',
      ],
    ],
    [
      'a pulse line',
      [['step: move,', 'step: move, parts: { nuts: 1 }, wait for parts: in buffer,']],
      [
        'route[2].wait for parts: in place here; in buffer is for steps of the main route that take units one by one; got "in buffer" at a pulse line, on which all units move together',
      ],
    ],
  ] as const)('is refused: %s', (_, edits, expected) => {
    expect(said(...edits).map((line) => line.replace(/^\d+:\d+ (?!.*outside)/, ''))).toEqual(expected);
  });
});
