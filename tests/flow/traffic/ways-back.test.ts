import { describe, expect, it } from 'vitest';
import { BLOCKED } from '../../../src/flow/floor/states.js';
import { at, minutesIn, play, ringIn, shippedAt, visits } from '../run-yaml.js';

/**
 * Rules 8 and 11, by hand. Each unit is welded in 10 min with a scratch, painted in 30 min, driven out in 5-60-5 min
 * (load, drive, unload), tested in 20 min, sent back to be painted, and driven home in 10-120-10 min.
 */
interface Plants {
  readonly quantity?: number;
  readonly every?: number;
  readonly out?: string;
  readonly home?: string;
  readonly more?: string;
  readonly sections?: string;
  readonly find?: string;
  readonly booth?: string;
  readonly paint?: string;
  readonly before?: string;
  readonly after?: string;
}
const plants = (with_: Plants = {}): string => `
scenario: plants
programme: { start: 2027-03-01, arrivals: ${with_.every ?? 100} min, quantity: ${with_.quantity ?? 1} }
defects: { scratch: {} }
sites:
  paint shop:
    crews: { painters: 2 }
    stations: { jig: {}, booth: { places: 1${with_.booth ?? ''} } }
  final plant:
    crews: { testers: 3 }
    stations: { stand: { places: 3 }, bay: { places: 2 } }
  depot: { stations: { shed: {} } }
lanes:
  out: { from: paint shop, to: final plant, capacity: 1, load: 5 min, drive: 60 min, unload: 5 min, return: 60 min, ${with_.out ?? 'trucks: 2'} }
  home: { from: final plant, to: paint shop, trucks: 1, capacity: 1, load: 10 min, drive: 120 min, unload: 10 min, return: 120 min${with_.home ?? ''} }
${with_.more ?? ''}
${with_.sections ?? ''}
route:
  - { step: weld, at: jig, work: 10 min, creates: { scratch: 100 % } }
  - { step: paint, at: booth, work: 30 min${with_.paint ?? ''} }
  - { lane: out }
${with_.before ?? ''}
  - { step: test, at: bay, work: 20 min, finds: { scratch: { chance: 100 %, back to: paint${with_.find ?? ''} } } }
${with_.after ?? ''}
`;

describe('a unit sent back to another site', () => {
  // Welded 100-110, painted -140, driven -210, tested -230; home -370; painted -400, driven -470, tested -490.
  it('goes by the lane that leads there, and comes again by that of its route', () => {
    const played = play(plants());
    expect(shippedAt(played)).toEqual([490]);
    expect(played.seen.lanes).toMatchObject({
      trips: Float64Array.of(2, 1),
      carried: Float64Array.of(2, 1),
      carriedAgain: Float64Array.of(1, 1),
    });
    expect([visits(played, 'weld'), visits(played, 'paint'), visits(played, 'test')]).toEqual([1, 2, 2]);
  });

  it('is in work in process where it is: at the sites, and in the trucks of both lanes', () => {
    const { seen } = play(plants()),
      minutes = Array.from(seen.wipByLocation, (mean) => Math.round(mean * seen.minutes));
    // Paint shop 100-140 and 370-400, final plant twice 20, depot, out twice 70, home 140.
    expect(minutes).toEqual([70, 40, 0, 140, 140]);
  });

  // The one truck of the way home takes the first at 230, is back at 490 and takes the second: out at 630;
  // painted -660, driven -730, tested -750. The second was tested 310-330 (100 min later).
  it('waits in the bank of the lane for its truck', () => {
    const played = play(plants({ quantity: 2 }));
    expect(shippedAt(played)).toEqual([490, 750]);
    expect(played.seen.lanes.waitMinutes).toEqual(Float64Array.of(0, 490 - 330));
    expect(minutesIn(played, 'bay', BLOCKED)).toBe(0);
  });

  // Banks of one: unit 2 stands in it from 330 on, unit 3 is done at 430 and blocks the bay until 490.
  it('blocks its place until the bank has a space for it', () => {
    const played = play(plants({ quantity: 3, home: ', bank: 1' }));
    expect(minutesIn(played, 'bay', BLOCKED)).toBe(490 - 430);
    expect(shippedAt(played)).toEqual([490, 750, 750 + 260]);
  });
});

describe('the lanes back', () => {
  const detour = `
  to depot: { from: final plant, to: depot, trucks: 1, capacity: 1, drive: 50 min }
  from depot: { from: depot, to: paint shop, trucks: 1, capacity: 1, drive: 40 min }`;

  it('are the fewest that lead there', () => {
    expect(shippedAt(play(plants({ more: detour })))).toEqual([490]);
  });

  // By the depot it takes 90 instead of 140 min.
  it('are those that the find names', () => {
    const played = play(plants({ more: detour, find: ', by: [to depot, from depot]' }));
    expect(shippedAt(played)).toEqual([440]);
    expect(played.seen.lanes.trips).toEqual(Float64Array.of(2, 0, 1, 1));
  });

  it('are several where no single one leads there', () => {
    const yaml = plants({ more: detour }).replace(/\n {2}home: .*/, '');
    expect(shippedAt(play(yaml))).toEqual([440]);
  });

  it('are, of equally few, the first in the file', () => {
    const second = `
  rail: { from: final plant, to: paint shop, trucks: 1, capacity: 1, drive: 40 min }`;
    expect(shippedAt(play(plants({ more: second })))).toEqual([490]);
    expect(shippedAt(play(plants({ more: second, find: ', by: rail' })))).toEqual([390]);
  });
});

describe('at the end of the way back', () => {
  // Unit 1 is at 240 welded -250, painted -280, driven -350, tested -370, home -510. Unit 2 is at 480 welded
  // -490 and painted -520. Then unit 1 gets the booth: -550, driven -620, tested -640.
  const two = { quantity: 2, every: 240 },
    tight = { ...two, booth: ', buffer: 0' };

  it('a unit takes a space ahead of the step', () => {
    expect(shippedAt(play(plants(two)))[0]).toBe(640);
  });

  it('it goes before those that were there, and has its rework buffer', () => {
    // Units at 125, 250, 375, 500, painted in 140 min: unit 1 -135-275, out -345, tested -365, home -505.
    // There unit 2 is painted 275-415 and unit 3 415-555; unit 4 waits since 510.
    for (const booth of ['', ', buffer: 1, rework buffer: 1']) {
      const played = play(
        plants({ quantity: 4, every: 125, booth }).replace('work: 30 min', 'work: 140 min'),
      );
      expect(shippedAt(played)[0]).toBe(555 + 140 + 70 + 20);
    }
  });

  it('without room it stays in the truck, which keeps the dock', () => {
    const played = play(plants(tight));
    expect(shippedAt(played)[0]).toBe(640);
    expect(Math.round(played.seen.lanes.truckBlocked[1] * played.seen.minutes)).toBe(10);
  });

  it('an arrival bank takes it, with places or without a limit', () => {
    for (const bank of ['1', 'unlimited']) {
      const played = play(plants({ ...tight, home: `, arrival bank: ${bank}` }));
      expect(shippedAt(played)[0]).toBe(640);
      expect(Math.round(played.seen.lanes.truckBlocked[1] * played.seen.minutes)).toBe(0);
    }
  });
});

describe('on its way forward again', () => {
  // A polish of 15 min that rework skips, a measurement of 5 min that only rework does.
  it('steps are skipped or done as in any rework', () => {
    const played = play(
      plants({
        before: `
  - { step: polish, at: stand, work: 15 min, rework: skip }
  - { step: measure, at: stand, work: 5 min, rework: only }`,
      }),
    );
    expect(shippedAt(played)).toEqual([490 + 15 + 5]);
    expect([visits(played, 'polish'), visits(played, 'measure')]).toEqual([1, 1]);
  });

  it('the inspection sees it again, whatever its sample', () => {
    const yaml = plants({ quantity: 2 }).replace(
      'step: test, at: bay,',
      'step: test, at: bay, sample: 1 in 2,',
    );
    const played = play(yaml);
    expect(visits(played, 'test')).toBe(2);
    // Unit 1 passes the test by at 210; unit 2, 100 min later, does all.
    expect(shippedAt(played)).toEqual([210, 590]);
  });

  it('it stands at the step it was sent to, whatever the conditions', () => {
    const yaml = plants({ paint: ', when: { kind: [slow] }' }).replace(
      'quantity: 1 }',
      'quantity: 1, options: { kind: { usual kind: 99.9 %, slow: 0.1 % } } }',
    );
    const played = play(yaml);
    expect(visits(played, 'paint')).toBe(1);
    // Not painted before: 30 min less.
    expect(shippedAt(played)).toEqual([460]);
  });
});

describe('what stays with a unit', () => {
  it('a carrier goes home with it and comes again', () => {
    const played = play(
      plants({ quantity: 2, sections: 'carriers: { cart: { count: 1, from: paint, to: test } }' }),
    );
    // Unit 2 is welded at 210 and waits in the booth for the cart of unit 1, which comes home into it.
    expect(ringIn(played)).toEqual([
      'unit 1 in truck home: room booth of 2',
      'unit 2 in place booth: carrier cart of 1',
    ]);
  });

  it('a team leaves it at the lane, and is claimed again where its steps are done again', () => {
    const played = play(
      plants({
        sections: 'teams: { crew of the bay: { crew: testers, people: 2, from: measure, to: test } }',
        before: '  - { step: measure, at: stand, work: 5 min }',
      }),
    );
    // Two of three, twice 25 min from the measurement to the end of the test; none of the 140 min home.
    expect(shippedAt(played)).toEqual([500]);
    const crew = at(played.model.resources.names, 'testers');
    expect(played.seen.crewBusy[crew] * played.seen.minutes * 3).toBeCloseTo(2 * 50, 9);
  });
});

describe('a feeder over two sites', () => {
  it('sends its parts back by the lane, too', () => {
    const played = play(`
scenario: doors
programme: { start: 2027-03-01, arrivals: 100 min, quantity: 1 }
defects: { dent: {} }
sites:
  paint shop: { stations: { jig: {} } }
  final plant: { stations: { bench: {}, line: {} } }
lanes:
  out: { from: paint shop, to: final plant, trucks: 1, capacity: 1, drive: 60 min }
  cart way: { from: paint shop, to: final plant, trucks: 1, capacity: 1, drive: 30 min }
  home: { from: final plant, to: paint shop, trucks: 1, capacity: 1, drive: 20 min }
feeders:
  doors:
    own: true
    route:
      - { step: press, at: jig, work: 10 min, creates: { dent: 100 % } }
      - { step: dress, at: jig, work: 10 min }
      - { lane: cart way }
      - { step: look, at: bench, work: 5 min, finds: { dent: { chance: 100 %, back to: dress } } }
route:
  - { step: take doors off, at: jig, work: 10 min, takes off: doors }
  - { lane: out }
  - { step: fit doors, at: line, work: 10 min, parts: { doors: own } }
`);
    // Off at 110: pressed -120, dressed -130, driven -160, looked at -165, home -185, dressed -195, driven
    // -225, looked at -230; fitted -240.
    expect(shippedAt(played)).toEqual([240]);
  });
});
