import { describe, expect, it } from 'vitest';
import { GRIDLOCK, playOn } from '../../../src/flow/engine.js';
import { prepare } from '../../../src/flow/plan.js';
import { Run } from '../../../src/flow/run.js';
import { play, ringIn } from '../run-yaml.js';

/**
 * Rule 16, rings planted in builds in which much else goes on for a long time: units keep coming to a yard
 * with room for all. Each is dated by hand.
 */
function told(yaml: string): {
  readonly at: number;
  readonly behind: number;
  readonly ring: readonly string[];
  readonly wholeAt: number;
} {
  const { seen, run, model } = play(yaml),
    whole = new Run(prepare(model), 'flow', 1);
  expect(run.outcome).toBe(GRIDLOCK);
  playOn(whole);
  return {
    at: seen.endedAt,
    behind: seen.standstill.behind,
    ring: ringIn({ seen, run, model }),
    wholeAt: whole.now,
  };
}

describe('a ring of units', () => {
  it('is told when a unit sent back meets a full line, not when all else is blocked behind it', () => {
    // Unit 1: weld 10-20, check 20-30, back into the space ahead, weld 30-40. 2: weld 20-30, check 30-40. 3 has
    // the space from 30. At 40 unit 1 is to go to check, and 2 back to weld; 4 has
    // the yard. It fills until the 50th comes.
    const { at, ring, behind, wholeAt } = told(`
scenario: sent back
programme: { arrivals: 10 min, quantity: 50 }
sites: { hall: { stations: { yard: { buffer: unlimited }, weld: { buffer: 1 }, check: {} } } }
defects: { gap: {} }
route:
  - { step: put down, at: yard }
  - { step: weld, at: weld, work: 10 min, creates: { gap: 100 % } }
  - { step: check, at: check, work: 10 min, finds: { gap: { chance: 99.999 %, back to: weld, limit: 1 } } }
`);
    expect(at).toBe(40);
    expect(ring).toEqual(['unit 1 in place weld: room check of 2', 'unit 2 in place check: room weld of 1']);
    expect(behind).toBe(2);
    expect(wholeAt).toBe(500);
  });

  it('is told where two stations want each other’s room', () => {
    // Unit 1: lathe 10-20, mill 20-30; 2: lathe 20-30.
    const { at, ring, wholeAt } = told(`
scenario: embrace
programme: { arrivals: 10 min, quantity: 30 }
sites: { hall: { stations: { yard: { buffer: unlimited }, lathe: {}, mill: {} } } }
route:
  - { step: put down, at: yard }
  - { step: turn, at: lathe, work: 10 min }
  - { step: mill, at: mill, work: 10 min }
  - { step: turn again, at: lathe, work: 10 min }
`);
    expect(at).toBe(30);
    expect(ring).toEqual(['unit 1 in place mill: room lathe of 2', 'unit 2 in place lathe: room mill of 1']);
    expect(wholeAt).toBe(300);
  });

  it('is told also if the run is cut off before all else is blocked', () => {
    // The same until midnight, after 144 units of 1000.
    const { at, ring, wholeAt } = told(`
scenario: embrace
programme: { start: 2027-03-01, arrivals: 10 min, quantity: 1000, until: 2027-03-02 }
sites: { hall: { stations: { yard: { buffer: unlimited }, lathe: {}, mill: {} } } }
route:
  - { step: put down, at: yard }
  - { step: turn, at: lathe, work: 10 min }
  - { step: mill, at: mill, work: 10 min }
  - { step: turn again, at: lathe, work: 10 min }
`);
    expect([at, ring.length, wholeAt]).toEqual([30, 2, 1440]);
  });

  const kitBench = (places: number): string => `
scenario: kit bench
programme: { arrivals: 60 min, quantity: 20 }
sites: { hall: { stations: { bench: { places: ${places}, buffer: unlimited }, line: {}, end: { buffer: unlimited } } } }
feeders:
  looms: { stock: 1, at start: 1, route: [{ step: bind, at: bench, work: 30 min }] }
  dashboards: { stock: 2, at start: 2, full kit: false, route: [{ step: wire, at: bench, parts: { looms: 1 }, work: 10 min }] }
route: [{ step: fit, at: line, parts: { looms: 1, dashboards: 2 }, work: 5 min }]
`;

  it('holds both places of a bench, where either would do, and is told before the first unit misses a part', () => {
    // Both looms and dashboards come from the two places of a bench. Unit 1 takes two dashboards and a loom at
    // 60: two dashboards are begun, have both places and want looms; the loom waits ahead of the bench. Unit 1
    // goes out at 65, and unit 2 is the first that never will, at 120.
    const { at, ring, wholeAt } = told(kitBench(2));
    expect(at).toBe(60);
    expect(ring).toEqual([
      'dashboards 1 in place bench: parts looms of 1',
      'looms 1 in space bench: room bench of 1 2',
      'dashboards 2 in place bench: parts looms of 1',
    ]);
    expect(wholeAt).toBe(1200);
  });

  it('is none as long as one of the places can come free', () => {
    // With a third place the looms are bound one after another, 30 minutes each, while two dashboards wait.
    expect(play(kitBench(3)).seen).toMatchObject({ outcome: 'finished', shipped: 20 });
  });

  it('is told where a unit has the place that its own part has to go through', () => {
    // Unit 1 comes at 60: bay 60-61, then stands at the bench. Its doors: stand 61-71, and then the bench.
    const { at, ring, wholeAt } = told(`
scenario: own parts
programme: { arrivals: 60 min, quantity: 20 }
sites: { hall: { stations: { bay: { buffer: unlimited }, bench: {}, stand: { buffer: unlimited } } } }
feeders: { doors: { own: true, route: [{ step: trim, at: stand, work: 10 min }, { step: seal, at: bench, work: 1 min }] } }
route:
  - { step: prepare, at: bay, work: 1 min, takes off: doors }
  - { step: fit, at: bench, work: 5 min, parts: { doors: own } }
`);
    expect(at).toBe(71);
    expect(ring).toEqual([
      'unit 1 in place bench: own part doors of 1',
      'doors 1 in place stand: room bench of 1',
    ]);
    expect(wholeAt).toBe(1200);
  });

  const kept = (what: string): string => `
scenario: kept
programme: { arrivals: 5 min, quantity: 40 }
sites: { hall: { crews: { hands: 1 }, stations: { s: { buffer: unlimited }, a: {}, t: {}, e: {} } } }
${what}
route:
  - { step: start, at: s, work: 5 min }
  - { step: one, at: a, work: 10 min }
  - { step: test, at: t, sample: 1 in 2, work: 10 min, fails: { chance: 100 %, back to: start, limit: 1 } }
  - { step: end, at: e, work: 5 min }
`;
  // Unit 1: s 5-10, a 10-20, not tested. 2: s 10-15, a 20-30, t 30-40, and back ahead of s. 3: s 20-25, stands at
  // a from 30 and wants what 2 has; 4: s 30-35, and wants a.
  it.each([
    ['a carrier', 'carriers: { dolly: { count: 1, from: one, to: test } }', 'carrier dolly'],
    ['a team', 'teams: { pair: { crew: hands, people: 1, from: one, to: test } }', 'crew hands'],
  ])(
    'is told where %s is held by one that waits for room behind one that waits for it',
    (_, what, lacked) => {
      const { at, ring, wholeAt } = told(kept(what));
      expect(at).toBe(40);
      expect(ring).toEqual([
        'unit 2 in space s: room s of 4',
        `unit 3 in place a: ${lacked} of 2`,
        'unit 4 in place s: room a of 3',
      ]);
      expect(wholeAt).toBe(200);
    },
  );

  it('goes through a truck that cannot unload', () => {
    // Unit 1 comes at 10: in the bank at 20, loaded by 21, there at 31, out at 32; it stands at b and wants a
    // kit. The truck is back at 42. Unit 2 has waited for it from 30, the kit from 35: unit 2 is there at 54, has
    // no room at b, and the kit no truck.
    const { at, ring, wholeAt } = told(`
scenario: truck
programme: { arrivals: 10 min, quantity: 40 }
sites:
  near: { stations: { a: {}, kit bench: {} } }
  far: { stations: { b: {}, shelf: {} } }
lanes: { ferry: { from: near, to: far, trucks: 1, capacity: 1, load: 1 min, drive: 10 min, unload: 1 min, return: 10 min, leaves: when full } }
feeders: { kits: { stock: 1, at start: 0, route: [{ step: pack, at: kit bench, work: 35 min }, { lane: ferry }, { step: put away, at: shelf, work: 1 min }] } }
route:
  - { step: begin, at: a, work: 10 min }
  - { lane: ferry }
  - { step: fit, at: b, parts: { kits: 1 }, work: 1 min }
`);
    expect(at).toBe(54);
    expect(ring).toEqual([
      'kits 1 in space ferry: truck ferry of 2',
      'unit 1 in place b: parts kits of 1',
      'unit 2 in truck ferry: room b of 1',
    ]);
    expect(wholeAt).toBe(410);
  });

  it('goes through a truck at the gate', () => {
    // As before, but with two trucks, and one dock there. The second truck is loaded with unit 2 at 31, at the dock
    // from 41 and not empty at 42. The first is back at 42, loaded with the kit at 43, and at the gate at 53.
    const { at, ring } = told(`
scenario: gate
programme: { arrivals: 10 min, quantity: 40 }
sites:
  near: { stations: { a: {}, kit bench: {} } }
  far: { stations: { b: {}, shelf: {} } }
lanes: { ferry: { from: near, to: far, trucks: 2, capacity: 1, docks: { to: 1 }, load: 1 min, drive: 10 min, unload: 1 min, return: 10 min, leaves: when full } }
feeders: { kits: { stock: 1, at start: 0, route: [{ step: pack, at: kit bench, work: 35 min }, { lane: ferry }, { step: put away, at: shelf, work: 1 min }] } }
route:
  - { step: begin, at: a, work: 10 min }
  - { lane: ferry }
  - { step: fit, at: b, parts: { kits: 1 }, work: 1 min }
`);
    expect(at).toBe(53);
    expect(ring).toEqual([
      'kits 1 in truck ferry: dock ferry of 2',
      'unit 1 in place b: parts kits of 1',
      'unit 2 in truck ferry: room b of 1',
    ]);
  });

  it('goes through a pulse line that one of its own units holds up', () => {
    // Unit 1 comes at 4: a 4-9, b from 14 to 19. Unit 2 comes in at 14 and wants the man who stays with unit 1,
    // until the line moves.
    const { at, ring, wholeAt } = told(`
scenario: line
programme: { arrivals: 4 min, quantity: 50 }
sites: { hall: { crews: { hands: 1 }, stations: { yard: { buffer: unlimited }, a: {}, b: {} } } }
pulse lines: { final: { stations: [a, b], takt: 10 min } }
teams: { pair: { crew: hands, people: 1, from: one, to: two } }
route:
  - { step: put down, at: yard }
  - { step: one, at: a, work: 5 min }
  - { step: two, at: b, work: 5 min }
`);
    expect(at).toBe(19);
    expect(ring).toEqual(['unit 1 in place b: pulse final of 2', 'unit 2 in place a: crew hands of 1']);
    expect(wholeAt).toBe(200);
  });

  it('is of one, if it waits for what it has itself', () => {
    // The oven takes the next when all of the present lot are out, and the one in it is to be baked again.
    const { at, ring } = told(`
scenario: oven
programme: { arrivals: 10 min, quantity: 20 }
sites: { hall: { stations: { yard: { buffer: unlimited }, oven: { lot: { least: 1, most: 1 } } } } }
route:
  - { step: put down, at: yard }
  - { step: bake, at: oven, process: 30 min, fails: { chance: 99.999 %, back to: bake, limit: 1 } }
`);
    expect(at).toBe(40);
    expect(ring).toEqual(['unit 1 in place oven: room oven of 1']);
  });
});

describe('a claim that is never met', () => {
  it('keeps what it lacks from those behind it for ever', () => {
    // Four bolts come in all. Bracket 1 takes three at 0; bracket 2 wants three at 10. Unit 1 takes the hinge
    // in stock at 10, and the next hinge would do with the bolt that is left. Unit 2 waits for it from 20.
    const { at, ring, wholeAt } = told(`
scenario: bolts
programme: { start: 2027-03-01, arrivals: 10 min, quantity: 30 }
sites: { hall: { stations: { bench: { buffer: unlimited }, hinge bench: {}, line: { buffer: unlimited }, end: {} } } }
supplies: { bolts: { site: hall, at start: 3, deliveries: { lot: 1, every: 7 days, from: 2027-03-01, to: 2027-03-01 } } }
feeders:
  brackets: { stock: 2, full kit: false, route: [{ step: bend, at: bench, parts: { bolts: 3 }, work: 10 min }] }
  hinges: { stock: 1, at start: 1, route: [{ step: file, at: hinge bench, parts: { bolts: 1 }, work: 1 min }] }
route: [{ step: fit, at: line, parts: { hinges: 1 }, work: 1 min }, { step: fix, at: end, parts: { brackets: 1 } }]
`);
    expect(at).toBe(10);
    expect(ring).toEqual(['brackets 2 in place bench: supply bolts of nobody']);
    expect(wholeAt).toBe(300);
  });
});
