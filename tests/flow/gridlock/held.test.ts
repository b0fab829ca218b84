import { describe, expect, it } from 'vitest';
import { GRIDLOCK } from '../../../src/flow/engine.js';
import type { Held } from '../../../src/flow/gridlock/holder.js';
import { play } from '../run-yaml.js';

/** What is lacked, of how many, wanted, free, coming; and who has it: `unit 2 stays 1 space s (room s)`. */
function heldIn(yaml: string): string[] {
  const { seen, run } = play(yaml);
  expect(run.outcome).toBe(GRIDLOCK);
  return seen.standstill.held.map(
    ({ kind, name, all, wanted, free, coming, by }: Held) =>
      `${kind} ${name}: ${wanted} of ${all ?? '-'}, ${free} free, ${coming} coming: ` +
      by
        .map(
          ({ route, number, how, amount, in: where, where: at, lacks }) =>
            `${route} ${number} ${how} ${amount} ${where} ${at}` +
            (lacks.length === 0 ? '' : ` (${lacks.map((lack) => `${lack.kind} ${lack.name}`).join(', ')})`),
        )
        .join('; '),
  );
}

describe('who has what a ring lacks', () => {
  it('is, of room, whoever stands in the places and in limited spaces', () => {
    // Unit 1: weld 10-20, check 20-30, back, weld 30-40. 2: weld 20-30, check 30-40. 3 has the space from 30.
    expect(
      heldIn(`
scenario: sent back
programme: { arrivals: 10 min, quantity: 50 }
sites: { hall: { stations: { yard: { buffer: unlimited }, weld: { buffer: 1 }, check: {} } } }
defects: { gap: {} }
route:
  - { step: put down, at: yard }
  - { step: weld, at: weld, work: 10 min, creates: { gap: 100 % } }
  - { step: check, at: check, work: 10 min, finds: { gap: { chance: 99.999 %, back to: weld, limit: 1 } } }
`),
    ).toEqual([
      'room check: 1 of 1, 0 free, 0 coming: unit 2 stands 1 place check (room weld)',
      'room weld: 1 of 2, 0 free, 0 coming: unit 1 stands 1 place weld (room check); unit 3 stands 1 space weld (room weld)',
    ]);
  });

  const kept = (what: string): string => `
scenario: kept
programme: { arrivals: 5 min, quantity: 40 }
sites: { hall: { crews: { hands: 2 }, stations: { s: { buffer: unlimited }, a: {}, t: {}, e: {}, side: { buffer: unlimited } } } }
${what}
route:
  - { step: start, at: s, work: 5 min }
  - { step: one, at: a, work: 10 min }
  - { step: test, at: t, sample: 1 in 2, work: 10 min, fails: { chance: 100 %, back to: start, limit: 1 } }
  - { step: end, at: e, work: 5 min }
`;
  // As in rings.test.ts: unit 2 stands ahead of s with it from 40, unit 3 at a wants it, 4 at s wants a.
  it('is, of carriers, the units with which they stay', () => {
    expect(heldIn(kept('carriers: { dolly: { count: 1, from: one, to: test } }'))).toContain(
      'carrier dolly: 1 of 1, 0 free, 0 coming: unit 2 stays 1 space s (room s)',
    );
  });

  it('is, of people, the units with their teams, and those on which others work', () => {
    // A team of two of the two hands.
    expect(heldIn(kept('teams: { pair: { crew: hands, people: 2, from: one, to: test } }'))).toContain(
      'crew hands: 2 of 2, 0 free, 0 coming: unit 2 stays 2 space s (room s)',
    );
    // Three hands: the team of unit 2 has two, and the step at the fourth station keeps one at work from 40 on.
    const three = kept('teams: { pair: { crew: hands, people: 2, from: one, to: test } }')
      .replace('hands: 2', 'hands: 3')
      .replace('at: e, work: 5 min', 'at: e, work: 1000 min, crew: { hands: 1 }');
    expect(heldIn(three)).toContain(
      'crew hands: 2 of 3, 0 free, 0 coming: unit 2 stays 2 space s (room s); unit 1 works 1 place e',
    );
  });

  it('is, of parts, those in the making, and of a supply nobody', () => {
    expect(
      heldIn(`
scenario: kit bench
programme: { arrivals: 60 min, quantity: 20 }
sites: { hall: { stations: { bench: { places: 2, buffer: unlimited }, line: {}, end: { buffer: unlimited } } } }
feeders:
  looms: { stock: 1, at start: 1, route: [{ step: bind, at: bench, work: 30 min }] }
  dashboards: { stock: 2, at start: 2, full kit: false, route: [{ step: wire, at: bench, parts: { looms: 1 }, work: 10 min }] }
route: [{ step: fit, at: line, parts: { looms: 1, dashboards: 2 }, work: 5 min }]
`),
    ).toEqual([
      'parts looms: 1 of -, 0 free, 0 coming: looms 1 made 1 space bench (room bench)',
      // The spaces have no limit, so nobody there stands in the way.
      'room bench: 1 of -, 0 free, 0 coming: dashboards 1 stands 1 place bench (parts looms); dashboards 2 stands 1 place bench (parts looms)',
    ]);
    expect(
      heldIn(`
scenario: bolts end
programme: { start: 2027-03-01, arrivals: 60 min, quantity: 20 }
sites: { hall: { stations: { line: {} } } }
supplies: { bolts: { site: hall, at start: 5, deliveries: [{ on: 2027-03-01, lot: 2 }] } }
route: [{ step: fit, at: line, parts: { bolts: 3 }, work: 5 min }]
`),
    ).toEqual(['supply bolts: 3 of -, 1 free, 0 coming: ']);
  });

  it('is, of an own part, the part, and of a dock or a truck what is in the trucks', () => {
    expect(
      heldIn(`
scenario: own parts
programme: { arrivals: 60 min, quantity: 20 }
sites: { hall: { stations: { bay: { buffer: unlimited }, bench: {}, stand: { buffer: unlimited } } } }
feeders: { doors: { own: true, route: [{ step: trim, at: stand, work: 10 min }, { step: seal, at: bench, work: 1 min }] } }
route:
  - { step: prepare, at: bay, work: 1 min, takes off: doors }
  - { step: fit, at: bench, work: 5 min, parts: { doors: own } }
`),
    ).toEqual([
      'own part doors: 1 of -, 0 free, 0 coming: doors 1 made 1 place stand (room bench)',
      'room bench: 1 of 1, 0 free, 0 coming: unit 1 stands 1 place bench (own part doors)',
    ]);
    const ferry = (trucks: number): string => `
scenario: gate
programme: { arrivals: 10 min, quantity: 40 }
sites:
  near: { stations: { a: {}, kit bench: {} } }
  far: { stations: { b: {}, shelf: {} } }
lanes: { ferry: { from: near, to: far, trucks: ${trucks}, capacity: 1, docks: { to: 1 }, load: 1 min, drive: 10 min, unload: 1 min, return: 10 min, leaves: when full } }
feeders: { kits: { stock: 1, at start: 0, route: [{ step: pack, at: kit bench, work: 35 min }, { lane: ferry }, { step: put away, at: shelf, work: 1 min }] } }
route:
  - { step: begin, at: a, work: 10 min }
  - { lane: ferry }
  - { step: fit, at: b, parts: { kits: 1 }, work: 1 min }
`;
    // One truck: the kit waits for it. Two: the kit is in the second, at the gate.
    expect(heldIn(ferry(1))).toContain(
      'truck ferry: 1 of 1, 0 free, 0 coming: unit 2 stands 1 truck ferry (room b)',
    );
    expect(heldIn(ferry(2))).toContain(
      'dock ferry: 1 of 2, 0 free, 0 coming: kits 1 stands 1 truck ferry (dock ferry); unit 2 stands 1 truck ferry (room b)',
    );
  });

  it('is, where there would be enough, also the claim that goes first', () => {
    // Three hands, and a start that wants one. Unit 2 stands ahead of s with a team of two, unit 3 at a wants a
    // team from 30 on, and so keeps the third hand from unit 4, which has s from 40.
    const yaml = kept('teams: { pair: { crew: hands, people: 2, from: one, to: test } }')
      .replace('hands: 2', 'hands: 3')
      .replace('at: s, work: 5 min', 'at: s, work: 5 min, crew: { hands: 1 }');
    expect(heldIn(yaml)).toContain(
      'crew hands: 2 of 3, 1 free, 0 coming: unit 3 claims 0 place a (crew hands); unit 2 stays 2 space s (room s)',
    );
  });
});
