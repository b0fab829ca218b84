import { describe, expect, it } from 'vitest';
import { SHORT_PARTS } from '../../../src/flow/floor/states.js';
import { minutesIn, play, ringIn, shippedAt } from '../run-yaml.js';

/** Rule 12, by hand. */
describe('a supply that is ordered in lots', () => {
  const bolts = (supply: string, more = ''): string => `
scenario: bolts
programme: { start: 2027-03-01, arrivals: 10 min, quantity: 6 }
sites: { hall: { stations: { line: { buffer: unlimited } } } }
supplies: { bolts: { site: hall, ${supply} } }
route: [{ step: fit, at: line, parts: { bolts: 1 }, work: 4 min }${more}]
`;

  it('goes down and up like the teeth of a saw', () => {
    // Units ask at 10, 20 .. 60. Stock 4, level 2, lot 3, lead time 15 min: at 20 the position comes to 2, so
    // 3 are ordered for 35 (position 5); at 50 it comes to 2 again: 3 for 65, which no longer come, since the
    // last unit is out at 64.
    const played = play(bolts('at start: 4, reorder: { level: 2, lot: 3, lead time: 15 min }')),
      { supplies } = played.seen;
    expect(shippedAt(played)).toEqual([14, 24, 34, 44, 54, 64]);
    // Stock: 4 to 10, 3 to 20, 2 to 30, 1 to 35, 4 to 40, 3 to 50, 2 to 60, 1 to 64.
    expect(played.seen.stockMean[0] * 64).toBeCloseTo(40 + 30 + 20 + 5 + 20 + 30 + 20 + 4, 9);
    expect(played.seen.stockOut[0]).toBe(0);
    // On order: 3 from 20 to 35, 3 from 50 to 64.
    expect(supplies.onOrder[0] * 64).toBeCloseTo(3 * 15 + 3 * 14, 9);
    expect(supplies).toMatchObject({
      least: Float64Array.of(1),
      lots: Float64Array.of(1),
      lateLots: Float64Array.of(0),
      waits: Float64Array.of(0),
      waitMinutes: Float64Array.of(0),
    });
  });

  it('keeps the line waiting when it was ordered too late, and demand that waits counts against the orders', () => {
    // Stock 1, level 0, lot 1, lead time 30. Unit 1 at 10: position 0, order for 40. Unit 2 asks at 20:
    // position 0, order for 50. It gets the lot of 40, works 40-44. Unit 3 asks at 44: order for 74, gets the
    // lot of 50, 50-54; and so on: every unit orders one as it asks, and has one that was ordered by the unit
    // before. Unit 4 asks at 54: order for 84, gets that of 74, out at 78; unit 5 asks at 78, gets that of
    // 84, out at 88; unit 6 asks at 88, gets the one that unit 5 ordered at 78 for 108, out at 112.
    const played = play(bolts('at start: 1, reorder: { level: 0, lot: 1, lead time: 30 min }')),
      { supplies } = played.seen;
    expect(shippedAt(played)).toEqual([14, 44, 54, 78, 88, 112]);
    // Waits 20-40, 44-50, 54-74, 78-84, 88-108.
    expect(minutesIn(played, 'line', SHORT_PARTS)).toBe(72);
    expect(supplies).toMatchObject({
      least: Float64Array.of(0),
      lots: Float64Array.of(5),
      waits: Float64Array.of(5),
      waitMinutes: Float64Array.of(72),
    });
  });

  it('is ordered at the start if the stock is at the level, as many lots as it takes', () => {
    // Stock 0, level 3, lot 2: two lots at once (position 4), for 25; unit 1 waits from 10 to 25.
    const played = play(bolts('reorder: { level: 3, lot: 2, lead time: 25 min }'));
    expect(shippedAt(played)[0]).toBe(29);
    expect(played.seen.supplies.lots[0]).toBeGreaterThanOrEqual(2);
  });

  it('is ordered earlier by its safety stock', () => {
    const least = (safety: number): number =>
      play(bolts(`at start: 4, reorder: { level: 0, lot: 3, lead time: 15 min }, safety stock: ${safety}`))
        .seen.supplies.least[0];
    // As with a level of 2 in the first test; without, the stock runs out.
    expect([least(2), least(0)]).toEqual([1, 0]);
  });

  it('may have a lot overtake another', () => {
    // Lead times 60 and 5 min, drawn: some of 200 replications have a lot that was ordered later come
    // earlier, so more than one unit waits less than 60 min for a lot ordered before. The audit checks the
    // books of each.
    const yaml = bolts(
      'at start: 2, reorder: { level: 1, lot: 1, lead time: { discrete: { 60 min: 50 %, 5 min: 50 % } } }',
    );
    const lots = Array.from({ length: 50 }, (_, r) => play(yaml, 'crossing', r + 1).seen);
    // Unit 1 orders at 10, unit 2 at 20; where the first takes 60 and the second 5, unit 3 goes on with the
    // second at 30.
    expect(lots.some((seen) => seen.shippedAt[2] === 34 && seen.shippedAt[5] > 64)).toBe(true);
    expect(lots.every(({ outcome }) => outcome === 'finished')).toBe(true);
  });

  it('is late by its chance', () => {
    // Every lot is 20 min late: as with a lead time of 35 in the first test. Ordered at 20, there at 55:
    // stock 2 to 30, 1 to 40, none to 55.
    const played = play(
      bolts(
        'at start: 4, reorder: { level: 2, lot: 3, lead time: 15 min }, late: { chance: 100 %, by: 20 min }',
      ),
    );
    expect(played.seen.supplies).toMatchObject({ lots: Float64Array.of(1), lateLots: Float64Array.of(1) });
    // Unit 5 asks at 50 and waits for 5 min, unit 6 begins at 60.
    expect(shippedAt(played)).toEqual([14, 24, 34, 44, 59, 64]);
    expect(played.seen.stockOut[0]).toBeCloseTo(15 / 64, 12);
  });

  it('is claimed together with people: neither is held while the other lacks', () => {
    // Both units want the smith and a bolt; the bolt is there at 30. Unit 2 wants the smith only, and has him
    // meanwhile.
    const played = play(`
scenario: both
programme: { start: 2027-03-01, arrivals: saturated, quantity: 2, options: { big: 50 % } }
sites: { hall: { crews: { smiths: 1 }, stations: { gate: { buffer: 2 }, anvil: { places: 2 } } } }
supplies: { bolts: { site: hall, reorder: { level: 0, lot: 5, lead time: 30 min } } }
route:
  - { step: forge, at: gate, crew: { smiths: 1 }, work: 10 min }
  - { step: fit, at: anvil, crew: { smiths: 1 }, parts: { bolts: 1 }, work: 10 min }
`);
    // Unit 1 forge 0-10, waits for a bolt 10-30; unit 2 forge 10-20, waits. Fits 30-40, 40-50.
    expect(shippedAt(played)).toEqual([40, 50]);
  });
});

describe('a plan of deliveries', () => {
  const plan = (deliveries: string, more = ''): string => `
scenario: plan
programme: { start: 2027-03-01, rate: { per day: 1 }, quantity: 6 }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites: { hall: { calendar: days, stations: { line: { buffer: unlimited } } } }
supplies: { bolts: { site: hall, at start: 2, deliveries: ${deliveries}${more} } }
route: [{ step: fit, at: line, parts: { bolts: 1 }, work: 60 min }]
`;
  const day = 1440,
    six = 360,
    h = 60;

  it('comes with the first working minute on or after its date', () => {
    // Units at 06:00 on Mon 1 to Fri 5 and Mon 8 March. Two bolts at start: units 1 and 2 go on Monday and
    // Tuesday. The lot of Thursday lets unit 3 (Wednesday) and unit 4 go, one after the other at the one
    // place; the one of Saturday is there on Monday.
    const played = play(plan('[{ on: 2027-03-04, lot: 2 }, { on: 2027-03-06, lot: 3 }]'));
    expect(shippedAt(played)).toEqual([
      six + h,
      day + six + h,
      3 * day + six + h,
      3 * day + six + 2 * h,
      7 * day + six + h,
      7 * day + six + 2 * h,
    ]);
    const { supplies } = played.seen;
    // Unit 3 lacks it from Wednesday to Thursday 06:00, unit 5 from Friday (unit 4 is out on Thursday) to
    // Monday 06:00.
    expect(supplies).toMatchObject({
      lots: Float64Array.of(2),
      lateLots: Float64Array.of(0),
      waits: Float64Array.of(2),
      waitMinutes: Float64Array.of(day + 3 * day),
      least: Float64Array.of(0),
    });
    // Of the 8 h shift of Wednesday all of it, of Friday too.
    expect(minutesIn(played, 'line', SHORT_PARTS)).toBe(2 * 8 * h);
  });

  it('has lots that are late, and later lots that overtake them', () => {
    // Every lot is late by 1 day or by 6: over some replications the second (due Friday) comes before the
    // first (due Thursday).
    const yaml = plan(
      '[{ on: 2027-03-04, lot: 2 }, { on: 2027-03-05, lot: 3 }]',
      ', late: { chance: 100 %, by: { discrete: { 1 days: 50 %, 6 days: 50 % } } }',
    );
    const runs = Array.from({ length: 40 }, (_, r) => play(yaml, 'late', r + 1));
    const thirdOut = new Set(runs.map((played) => shippedAt(played)[2]));
    // On time + 1 day: Friday; both late by 6: Wednesday 10th; the second by 1, the first by 6: Saturday
    // 06:00, work on Monday.
    expect(thirdOut).toEqual(new Set([4 * day + six + h, 9 * day + six + h, 7 * day + six + h]));
    for (const { seen } of runs) expect(seen.supplies.lateLots[0]).toBe(seen.supplies.lots[0]);
  });

  it('comes in a rhythm of days, weekends counted', () => {
    // 1 bolt a day from the 3rd, but the lots of Saturday and Sunday come on Monday with its own: units 3, 4,
    // 5 each on their day.
    const played = play(plan('{ lot: 1, every: 1 days, from: 2027-03-03 }'));
    expect(shippedAt(played)).toEqual([0, 1, 2, 3, 4, 7].map((d) => d * day + six + h));
    // Mon 8: three lots come at 06:00, of which the sixth unit takes one.
    expect(played.seen.supplies.lots[0]).toBe(3 + 3);
  });

  it('goes on behind the run: who waits for the next lot when it ends is not stuck', () => {
    // Two bolts at the start and one a week from Monday 1 March, and the run ends on Friday the 12th: four units
    // are out, the fifth waits for a lot that is due on the 15th.
    const { seen } = play(
      plan('{ lot: 1, every: 7 days }').replace('quantity: 6', 'quantity: 6, until: 2027-03-12'),
    );
    expect(seen).toMatchObject({ outcome: 'ended', shipped: 4, endedAt: 11 * day });
    expect(seen.supplies.lots[0]).toBe(2);
  });

  it('that ends too early is a gridlock that names the parts', () => {
    const stuck = play(plan('{ lot: 1, every: 7 days, from: 2027-03-08, to: 2027-03-10 }'));
    // Bolts for 3 of 6 units; the fourth stands at the line on Monday 8 March at 07:00, when the third is
    // out.
    expect(stuck.seen).toMatchObject({ outcome: 'gridlock', shipped: 3, endedAt: 7 * day + six + h });
    expect(ringIn(stuck)).toEqual(['unit 4 in place line: supply bolts of nobody']);
  });

  it('does not keep a truck or a lot of units waiting for more, when only deliveries are ahead', () => {
    // Three units, a truck of two that leaves full: the third goes alone when nothing moves any more, at 82,
    // not after the last delivery.
    const played = play(`
scenario: last truck
programme: { start: 2027-03-01, arrivals: 10 min, quantity: 3 }
sites: { hall: { stations: { line: {} } }, yard: { stations: { gate: {} } } }
lanes: { road: { from: hall, to: yard, trucks: 2, capacity: 2, drive: 60 min, leaves: when full } }
supplies: { bolts: { site: hall, at start: 9, deliveries: { lot: 1, every: 1 days } } }
route: [{ step: fit, at: line, parts: { bolts: 1 } }, { lane: road }, { step: check, at: gate, work: 1 min }]
`);
    expect(shippedAt(played)).toEqual([81, 82, 82 + 60 + 1]);
  });
});

it('a feeder prepares a supply at the line side before use', () => {
  // A kit is cut to length from one hose in 15 min, two kits ahead. Hoses: 1 at start, 2 on order for 100 at
  // time 0 (level 1, lot 2). Kit 1 0-15; kit 2 waits for a hose until 100. Unit 1 at 10 waits to 15, out 20;
  // kits for units 2 and 3: hoses of 100, bench 100-115, 115-130; unit 2 out 120, unit 3 out 135.
  const played = play(`
scenario: hoses
programme: { start: 2027-03-01, arrivals: 10 min, quantity: 3 }
sites: { hall: { stations: { line: { buffer: unlimited }, bench: { buffer: unlimited } } } }
supplies: { hoses: { site: hall, at start: 1, reorder: { level: 1, lot: 2, lead time: 100 min } } }
feeders: { cut hoses: { stock: 2, route: [{ step: cut, at: bench, parts: { hoses: 1 }, work: 15 min }] } }
route: [{ step: fit, at: line, parts: { cut hoses: 1 }, work: 5 min }]
`);
  expect(shippedAt(played)).toEqual([20, 120, 135]);
});
