import { describe, expect, it } from 'vitest';
import { BLOCKED } from '../../../src/flow/floor/states.js';
import { minutesIn, play, shippedAt } from '../run-yaml.js';

/** Rule 11, by hand: a unit every so many minutes, handed over in 1 min; the yard takes 1 min. */
interface Road {
  readonly lane: string;
  readonly every?: number;
  readonly quantity?: number;
  readonly yard?: string;
  readonly take?: string;
}
const road = ({ lane, every = 10, quantity = 4, yard = '{ places: 3 }', take = '1 min' }: Road): string => `
scenario: road
programme: { start: 2027-03-01, rate: { per day: ${1440 / every} }, quantity: ${quantity} }
calendars: { day: { hours: ["06:00-18:00"], on: every day } }
sites:
  here: { stations: { gate: { places: 3 } } }
  there: { stations: { yard: ${yard} } }
lanes: { road: { from: here, to: there, ${lane} } }
route:
  - { step: hand over, at: gate, work: 1 min }
  - { lane: road }
  - { step: take over, at: yard, work: ${take} }
`;
const shuttle = 'trucks: 1, load: 5 min, drive: 60 min, unload: 5 min, return: 60 min';

describe('a truck that leaves when full', () => {
  // Units at the bank at 1, 11, 21, 31. First trip 11-16-76-81, back at 141; second 141-146-206-211.
  it('takes two at a time and comes back for the next', () => {
    const played = play(road({ lane: `${shuttle}, capacity: 2` }));
    expect(shippedAt(played)).toEqual([82, 82, 212, 212]);
    expect(played.seen.lanes).toMatchObject({
      trips: Float64Array.of(2),
      carried: Float64Array.of(4),
      waitMinutes: Float64Array.of(10 + 0 + 120 + 110),
    });
    // Away 11-141 and 141-212.
    expect(played.seen.lanes.truckBusy[0] * 212).toBeCloseTo(201, 9);
  });

  it('has its units in work in process, in neither site', () => {
    const { seen } = play(road({ lane: `${shuttle}, capacity: 2` }));
    // Two units for 70 min each, twice; in the yard 1 min each; here the rest.
    expect(seen.wipByLocation[2] * 212).toBeCloseTo(2 * 70 + 2 * 70, 9);
    expect(seen.wipByLocation[1] * 212).toBeCloseTo(4, 9);
    expect(seen.wipByLocation[0] * 212).toBeCloseTo(4 + 240, 9);
  });

  it('goes with what it has when nothing more can come', () => {
    const played = play(road({ lane: `${shuttle}, capacity: 2`, quantity: 3 }));
    expect(shippedAt(played)).toEqual([82, 82, 212]);
  });
});

describe('a truck that leaves when full or after a wait', () => {
  it('goes at the end of the longest wait, and at once when it comes back after it', () => {
    // Bank at 1, 21, 41, 61. First due at 31 with two: 31-36-96-101, back 161, when unit 3 has waited 120
    // min.
    const played = play(
      road({ lane: `${shuttle}, capacity: 3, leaves: { when full or after: 30 min }`, every: 20 }),
    );
    expect(shippedAt(played)).toEqual([102, 102, 232, 232]);
  });
});

describe('a truck that was full before the wait was over', () => {
  it('leaves the wait of the next load as it should be', () => {
    // Two trucks of two, longest wait 100 min, units at the bank at 1, 11, 21, 31, 41: full at 11 and 31,
    // their waits would be over at 101 and 121; unit 5 waits to 141, and unit 6 from 1441 to 1541 (one a day
    // from then on). Driving 10 min, take-over 1 min.
    const played = play(
      road({
        lane: 'trucks: 3, capacity: 2, drive: 10 min, leaves: { when full or after: 100 min }',
        quantity: 6,
      })
        .replace(
          'rate: { per day: 144 }',
          'rate: [{ from: 2027-03-01, per day: 5 }, { from: 2027-03-02, per day: 1 }]',
        )
        .replace('here: { stations', 'here: { calendar: early, stations')
        .replace('calendars: {', 'calendars: { early: { hours: ["00:00-00:50"], on: every day },')
        .replace('gate: { places: 3 }', 'gate: { places: 3, unattended: true }'),
    );
    expect(shippedAt(played)).toEqual([22, 22, 42, 42, 152, 1552]);
  });
});

describe('a truck with a timetable', () => {
  it('leaves at the times given, with as many as it holds, and misses those at which it is away', () => {
    // 01:00: units 1 and 2; back at 190, so 03:00 is missed; unit 3 goes at 01:00 next day:
    // 1500-1505-1565-1570.
    const played = play(
      road({ lane: `${shuttle}, capacity: 2, leaves: { at: ["01:00", "03:00"] }`, quantity: 3 }),
    );
    expect(shippedAt(played)).toEqual([131, 131, 1571]);
  });
});

describe('docks', () => {
  it('load one truck at a time', () => {
    // 1-31, 31-61; drive 10.
    const played = play(
      road({ lane: 'trucks: 2, capacity: 1, load: 30 min, drive: 10 min, docks: { from: 1 }', quantity: 2 }),
    );
    expect(shippedAt(played)).toEqual([42, 72]);
  });

  it('unload one truck at a time', () => {
    // At the gate at 11 and 21; 11-51, 51-91.
    const played = play(
      road({ lane: 'trucks: 2, capacity: 1, drive: 10 min, unload: 40 min, docks: { to: 1 }', quantity: 2 }),
    );
    expect(shippedAt(played)).toEqual([52, 92]);
  });

  const oneYard = { every: 10, quantity: 3, yard: '{ places: 1 }', take: '100 min' };

  it('are kept by a truck whose units find no room', () => {
    // Yard 16-116 with unit 1. Unit 2 unloads 21-26 and stays aboard to 116. Truck 1, back at 26, brings unit
    // 3 to the gate at 36: no dock until 116, unloads to 121. Yard 116-216, 216-316.
    const played = play(
      road({
        ...oneYard,
        lane: 'trucks: 2, capacity: 1, drive: 10 min, unload: 5 min, return: 10 min, docks: { to: 1 }',
      }),
    );
    expect(shippedAt(played)).toEqual([116, 216, 316]);
    // On the road: unit 1 1-16, unit 2 11-116, unit 3 26-216.
    expect(played.seen.wipByLocation[2] * 316).toBeCloseTo(15 + 105 + 190, 9);
  });

  it('are left free by an arrival bank', () => {
    // Unit 2 goes into the bank at 26, truck 2 home at 36; unit 3 unloads 36-41 and stays aboard until the
    // bank is free at 116.
    const played = play(
      road({
        ...oneYard,
        lane: 'trucks: 2, capacity: 1, drive: 10 min, unload: 5 min, return: 10 min, arrival bank: 1, docks: { to: 1 }',
      }),
    );
    expect(shippedAt(played)).toEqual([116, 216, 316]);
    expect(played.seen.wipByLocation[2] * 316).toBeCloseTo(15 + 15 + 90, 9);
  });

  it('are never kept by an arrival bank without a limit, whose units are in the site of arrival', () => {
    // As above, but unit 3 goes into the bank at 41 too. In it: unit 2 26-116, unit 3 41-216.
    const { seen } = play(
      road({
        ...oneYard,
        lane:
          'trucks: 2, capacity: 1, drive: 10 min, unload: 5 min, return: 10 min, ' +
          'arrival bank: unlimited, docks: { to: 1 }',
      }),
    );
    expect(seen.wipByLocation[2] * 316).toBeCloseTo(15 + 15 + 15, 9);
    expect(seen.lanes.arrivedMean[0] * 316).toBeCloseTo(90 + 175, 9);
    expect(seen.wipByLocation[1] * 316).toBeCloseTo(300 + 90 + 175, 9);
    expect(seen.lanes.truckBlocked[0]).toBe(0);
  });
});

describe('an arrival bank without a limit', () => {
  /** Two roads that end at one yard, carriers until there, faults that are sent back to it. */
  const plants = (arrival: string): string => `
scenario: plants
programme: { arrivals: { exponential: { mean: 18 min } }, quantity: 60, options: { by: { land: 60 %, sea: 40 % } } }
calendars: { day: { hours: ["06:00-18:00"], on: every day } }
sites:
  here: { stations: { gate: { places: 2, buffer: unlimited } } }
  there: { calendar: day, stations: { yard: { rework buffer: 2 }, look: { buffer: 1 } } }
carriers: { frames: { count: 30, from: set up, to: take over, in rework: again, return: 30 min } }
defects: { scratch: {} }
lanes:
  road: { from: here, to: there, trucks: 2, capacity: 3, drive: { mean: 60 min, cv: 0.5 }, unload: 5 min, return: 1 h, leaves: { when full or after: 2 h }${arrival} }
  ferry: { from: here, to: there, trucks: 1, capacity: 2, drive: { mean: 90 min, cv: 0.5 }, return: 90 min, leaves: { when full or after: 2 h }${arrival} }
route:
  - { step: set up, at: gate, work: { mean: 20 min, cv: 0.5 } }
  - { lane: road, when: { by: land } }
  - { lane: ferry, when: { by: sea } }
  - { step: take over, at: yard, work: { mean: 17 min, cv: 1 }, creates: { scratch: 30 % } }
  - { step: look, at: look, work: 5 min, finds: { scratch: { chance: 90 %, back to: take over } } }
`;

  it('is one larger than all that are built, to the last minute', () => {
    const [unlimited, large] = [', arrival bank: unlimited', ', arrival bank: 60'].map((bank) =>
      play(plants(bank)),
    );
    expect(shippedAt(unlimited)).toEqual(shippedAt(large));
    expect([...unlimited.seen.wipByLocation]).toEqual([...large.seen.wipByLocation]);
    expect(unlimited.seen.lanes.truckBusy).toEqual(large.seen.lanes.truckBusy);
    // As many wait as in the places of the large one.
    const { stations } = large.model,
      waiting = minutesIn(large, 'road: arrival bank', BLOCKED) / large.seen.minutes;
    expect(stations.names).toContain('ferry: arrival bank');
    expect(unlimited.model.stations.names).not.toContain('ferry: arrival bank');
    expect(waiting).toBeGreaterThan(1);
    expect(unlimited.seen.lanes.arrivedMean[0]).toBeCloseTo(waiting, 9);
    // It makes a difference.
    expect(shippedAt(play(plants(', arrival bank: 1')))).not.toEqual(shippedAt(large));
  });
});

describe('a blocked truck', () => {
  const oneYard = { every: 10, quantity: 3, yard: '{ places: 1 }', take: '100 min' };

  it('stands loaded without room, or at the gate behind one that does; it is neither busy nor active', () => {
    // As in "are kept by a truck whose units find no room". Truck 1: busy 1-36, gate 36-116 behind truck 2,
    // unloads 116-121, no room to 216, home 226. Truck 2: busy 11-26, no room to 116, home 126. Both at work
    // 11-26 and 116-121.
    const { seen } = play(
        road({
          ...oneYard,
          lane: 'trucks: 2, capacity: 1, drive: 10 min, unload: 5 min, return: 10 min, docks: { to: 1 }',
        }),
      ),
      truckMinutes = 2 * 316;
    expect(seen.lanes.truckBusy[0] * truckMinutes).toBeCloseTo(35 + 5 + 10 + 15 + 10, 9);
    expect(seen.lanes.truckBlocked[0] * truckMinutes).toBeCloseTo(80 + 95 + 90, 9);
    expect(seen.lanes.truckFree[0] * truckMinutes).toBeCloseTo(1 + 90 + 11 + 190, 9);
    expect(seen.utilisation[2] * truckMinutes).toBeCloseTo(75, 9);
    expect(seen.activePeriod[2]).toBeCloseTo((15 + 5) / 2, 9);
  });

  it('is not one that waits for a dock at which another unloads', () => {
    // At the gate 21-51 behind truck 1, which unloads 11-51; busy 1-51 and 11-91.
    const { seen } = play(
      road({ lane: 'trucks: 2, capacity: 1, drive: 10 min, unload: 40 min, docks: { to: 1 }', quantity: 2 }),
    );
    expect(seen.lanes.truckBusy[0] * 2 * 92).toBeCloseTo(50 + 80, 9);
    expect(seen.lanes.truckBlocked[0]).toBe(0);
  });

  it('waits until the last of its units has room', () => {
    // Two aboard at 11, one place of 100 min: the second waits 21-121 in the truck, which is home at 131.
    const { seen } = play(
      road({ ...oneYard, quantity: 2, lane: 'trucks: 1, capacity: 2, drive: 10 min, return: 10 min' }),
    );
    expect(seen.lanes.truckBusy[0] * 221).toBeCloseTo(10 + 10, 9);
    expect(seen.lanes.truckBlocked[0] * 221).toBeCloseTo(100, 9);
  });

  it('is busy for its trips alone ahead of a slower station, which is the bottleneck', () => {
    // The yard takes 100 min a unit; a trip is 5 + 10 + 5 + 10 min, with a unit always waiting: one trip
    // every 100 min, in the 2000 h observed 1200.
    const { seen } = play(
      road({
        ...oneYard,
        lane: 'trucks: 1, capacity: 1, load: 5 min, drive: 10 min, unload: 5 min, return: 10 min, bank: 2',
        quantity: 1000,
      }).replace('quantity: 1000', 'length: 2000 h, warm up: 1000 h'),
    );
    const { trips, truckBusy, truckBlocked, truckFree } = seen.lanes;
    expect(trips[0]).toBe(1200);
    expect(truckBusy[0]).toBeCloseTo((1200 * 30) / 120_000, 12);
    expect(truckBlocked[0]).toBeCloseTo(0.7, 12);
    expect(truckFree[0]).toBe(0);
    expect(seen.utilisation[1]).toBeCloseTo(1, 12);
    expect(seen.utilisation[2]).toBeCloseTo(0.3, 12);
  });
});

describe('driving hours', () => {
  it('stop a drive for the night', () => {
    // Loaded at 1 min past midnight; 20 h of driving in 06:00-18:00: 12 h, and 8 h from 06:00 next day.
    const played = play(road({ lane: 'trucks: 1, capacity: 1, drive: 20 h, hours: day', quantity: 1 }));
    expect(shippedAt(played)).toEqual([1440 + 14 * 60 + 1]);
  });
});

describe('the bank ahead of a lane', () => {
  it('that is full blocks the station before it', () => {
    // Bank of 1: unit 1 leaves at 1 with the only truck, back at 1 + 130 = 131; unit 2 in the bank at 11,
    // unit 3 stays at the gate 21-131.
    const played = play(road({ lane: `${shuttle}, capacity: 1, bank: 1`, quantity: 3 }));
    expect(shippedAt(played)).toEqual([72, 202, 332]);
    expect(minutesIn(played, 'gate', BLOCKED)).toBe(110);
  });
});
