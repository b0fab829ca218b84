import { describe, expect, it } from 'vitest';
import { CHANGEOVER, OFF_SHIFT, SHORT_CREW, UNATTENDED } from '../../../src/flow/floor/states.js';
import { minutesIn, type Played, play, shippedAt, visits } from '../run-yaml.js';

/**
 * Rules 4 and 5, by hand: an oven that is set to the temperature of its step. Units are white, red, white, red, white
 * and then red, as the seed draws them.
 */
const oven = (programme: string, station: string, route: string, more = ''): Played => {
  const played = play(
    `
scenario: oven
programme: { start: 2027-03-01, ${programme}, options: { colour: { red: 50 %, white: 50 % } } }
${more}
route: [${route}]
sites: { hall: { ${station} } }
`,
    'c',
  );
  expect('WRWRWRRRR').toContain(Array.from(played.seen.optionsOf, (value) => 'RW'[value]).join(''));
  return played;
};

describe('a setting of a step', () => {
  it('is changed where the step before had another one, by the time of the pair', () => {
    // Bake 1 to 30; the oven goes from 60 to 80 in 20 (50) and bakes to 90; back to 60 in 25: 115. The second
    // unit waits outside till 90.
    const played = oven(
      'arrivals: saturated, quantity: 2',
      'stations: { oven: { changeover: { on: setting, work: 25 min, from to: { 60 degrees: { 80 degrees: 20 min } } } } }',
      `{ step: bake 1, at: oven, process: 30 min, setting: 60 degrees },
       { step: bake 2, at: oven, process: 40 min, setting: 80 degrees }`,
    );
    expect(shippedAt(played)).toEqual([90, 90 + 25 + 30 + 20 + 40]);
    expect(minutesIn(played, 'oven', CHANGEOVER)).toBe(65);
    // By value before * 2 + value after.
    expect([...played.seen.changeovers]).toEqual([0, 2, 1, 0]);
    expect([...played.seen.changeoverMinutes]).toEqual([0, 40, 25, 0]);
    expect(played.model.stations.changeoverValues).toEqual([['60 degrees', '80 degrees']]);
    // One unit took the place, and stands in the log once for each setting.
    expect([...played.seen.taken]).toEqual([2]);
    expect(
      played.seen.stays[0].map(({ value, from, to, changedFrom }) => [value, from, to, changedFrom]),
    ).toEqual([
      [0, 0, 30, -1],
      [1, 30, 90, 0],
      [0, 90, 145, 1],
      [1, 145, 205, 0],
    ]);
  });

  it('may follow an option, with a usual one', () => {
    // White at 80, red at the usual 60: 20 + 30 each.
    const played = oven(
      `arrivals: saturated, quantity: 4`,
      'stations: { oven: { changeover: { on: setting, work: 20 min } } }',
      '{ step: bake, at: oven, process: 30 min, setting: { colour: { white: 80 }, usual: 60 } }',
    );
    expect(played.model.stations.changeoverValues).toEqual([['60', '80']]);
    expect(shippedAt(played)).toEqual([30, 80, 130, 180]);
  });

  it('of a unit sent back in its place is set again', () => {
    // Bake 30, test at 80 degrees 20 + 10: 60, fails; back to 60 degrees 20 + 30, 20 + 10: 140, at its limit.
    const played = oven(
      'arrivals: saturated, quantity: 1',
      'stations: { oven: { changeover: { on: setting, process: 20 min } } }',
      `{ step: bake, at: oven, process: 30 min, setting: 60 degrees },
       { step: test, at: oven, process: 10 min, setting: 80 degrees,
         fails: { chance: 99.9999 %, back to: bake, limit: 1 } }`,
    );
    expect(shippedAt(played)).toEqual([140]);
    expect([...played.seen.changeovers]).toEqual([0, 2, 1, 0]);
  });

  it('of a unit sent back from elsewhere is set for it, and for the next one again', () => {
    const played = oven(
      'rate: { per day: 288 }, quantity: 2',
      `stations: { oven: { buffer: unlimited, changeover: { on: setting, process: 20 min } }, mask: { buffer: unlimited }, bay: { buffer: unlimited } }`,
      `{ step: bake, at: oven, process: 30 min, setting: 60 degrees },
       { step: mask, at: mask },
       { step: cure, at: oven, process: 10 min, setting: 80 degrees },
       { step: test, at: bay, work: 5 min, fails: { chance: 99.9999 %, back to: cure, limit: 1 } }`,
    );
    // Bake 1 0-30; 2 is first in order: 30-60. Cure 1 at 80 degrees: 80-90, 2: -100. Test 1 90-95, back: 100-110;
    // test 2 100-105, back: 110-120. Tests 110-115, 120-125.
    expect(shippedAt(played)).toEqual([115, 125]);
    expect([...played.seen.changeovers]).toEqual([0, 1, 0, 0]);
  });
});

describe('a changeover by itself', () => {
  const night = (kind: string): Played =>
    oven(
      `arrivals: saturated, quantity: 2`,
      `calendar: days, crews: { bakers: 1 }, stations: { oven: { changeover: { on: setting, ${kind}: 90 min } } }`,
      '{ step: bake, at: oven, crew: { bakers: 1 }, work: 30 min, setting: { colour: { white: 80, red: 60 } } }',
      'calendars: { days: { hours: ["00:00-01:00"], on: every day } }',
    );

  it('goes on through the night, without its crew', () => {
    // An hour a day. 1 0-30; the oven heats from 30 to 120, at night; 2 is loaded with the next day: 1440-1470.
    const played = night('process');
    expect(shippedAt(played)).toEqual([30, 1470]);
    expect(minutesIn(played, 'oven', CHANGEOVER)).toBe(90);
    expect(minutesIn(played, 'oven', OFF_SHIFT)).toBe(1440 - 120);
    expect(played.seen.crewBusy[0] * played.seen.crewTime.usual[0]).toBeCloseTo(60, 9);
    expect(played.seen.stays[0][1]).toMatchObject({ changeFrom: 30, changeTo: 120, pieces: [[30, 120]] });
  });

  it('is work of the crew where it is given as work, and stops at night', () => {
    // 30-60 and the next day all the hour: 2 is worked on in the third day, 2880-2910.
    const played = night('work');
    expect(shippedAt(played)).toEqual([30, 2910]);
    expect(minutesIn(played, 'oven', CHANGEOVER)).toBe(90);
    expect(played.seen.crewBusy[0] * played.seen.crewTime.usual[0]).toBeCloseTo(150, 9);
  });

  it('leaves the crew to others, and asks for it afterwards', () => {
    // One baker. 1 W: oven 0-30, then hang 30-50. 2 R: the oven heats 30-50 meanwhile; hang 1 asked at 30, the
    // oven asks at 50: 50-80. 2 hangs 80-100.
    const played = oven(
      `arrivals: saturated, quantity: 2`,
      'crews: { bakers: 1 }, stations: { oven: { changeover: { on: setting, process: 10 min } }, rack: { buffer: unlimited } }',
      `{ step: bake, at: oven, crew: { bakers: 1 }, work: 30 min, setting: { colour: { white: 80, red: 60 } } },
       { step: hang, at: rack, crew: { bakers: 1 }, work: 20 min }`,
    );
    // Heats 30-40, short of its baker 40-50.
    expect(shippedAt(played)).toEqual([50, 100]);
    expect(minutesIn(played, 'oven', CHANGEOVER)).toBe(10);
    expect(minutesIn(played, 'oven', SHORT_CREW)).toBe(10);
  });

  it('also stands in for the work of an option', () => {
    const played = oven(
      `arrivals: saturated, quantity: 3`,
      'stations: { oven: { changeover: { on: colour, process: 20 min } } }',
      '{ step: bake, at: oven, process: 30 min }',
    );
    expect(shippedAt(played)).toEqual([30, 80, 130]);
    expect(minutesIn(played, 'oven', UNATTENDED)).toBe(90);
  });

  it('goes before steps side by side', () => {
    const played = oven(
      'arrivals: saturated, quantity: 2',
      'crews: { bakers: 2 }, stations: { oven: { changeover: { on: setting, process: 20 min } } }',
      `{ at: oven, setting: { colour: { white: 80, red: 60 } }, side by side:
         [{ step: left, crew: { bakers: 1 }, work: 30 min }, { step: right, crew: { bakers: 1 }, work: 10 min }] }`,
    );
    expect(shippedAt(played)).toEqual([30, 80]);
  });

  it('that an outage breaks off goes on after it with what is left', () => {
    // Heats 30-40, down 40-60, 60-70; bake -100.
    const played = oven(
      `arrivals: saturated, quantity: 2`,
      'stations: { oven: { changeover: { on: setting, process: 20 min } } }',
      '{ step: bake, at: oven, process: 30 min, setting: { colour: { white: 80, red: 60 } } }',
      'outages: [{ stations: oven, from: 2027-03-01 00:40, to: 2027-03-01 01:00 }]',
    );
    expect(shippedAt(played)).toEqual([30, 100]);
    expect(played.seen.stays[0][1].pieces).toEqual([
      [30, 40],
      [60, 70],
    ]);
  });
});

describe('a batch by setting', () => {
  it('goes by the steps of the units', () => {
    // Units every 5 min: bake 30 at 60, cure 30 at 80 in the same oven, by way of a rack. Two in a row: bakes 1
    // and 2 -60, 1 waits for its cure from 30: 20 + 30 -> 110, 2 -> 140; then bake 3 at 60, 20 + 30.
    const played = oven(
      'rate: { per day: 288 }, quantity: 3',
      'stations: { oven: { buffer: unlimited, changeover: { on: setting, process: 20 min, batch: { most: 2 } } }, rack: { buffer: unlimited } }',
      `{ step: bake, at: oven, process: 30 min, setting: 60 degrees }, { step: hang, at: rack },
       { step: cure, at: oven, process: 30 min, setting: 80 degrees }`,
    );
    expect(shippedAt(played)).toEqual([110, 140, 190 + 50]);
    expect([...played.seen.changeovers]).toEqual([0, 2, 1, 0]);
  });
});

describe('a lot at a station with settings', () => {
  const lots = (rule: string): Played =>
    oven(
      'arrivals: saturated, quantity: 9',
      `stations: { oven: { places: 2, buffer: unlimited, lot: { least: 2, most: 2 }, changeover: { on: setting, process: 20 min${rule} } }, gate: {} }`,
      '{ step: come, at: gate }, { step: bake, at: oven, process: 30 min, setting: { colour: { white: 80, red: 60 } } }',
    );

  it('gathers units of one setting, which pass others, and changes it once', () => {
    // All are there at 0. W1 gathers W3: -30. R2 R4: -80. W5 alone, when nothing can come to it: that is seen
    // once nothing else happens, at 80: -130. R6 R7: -180, R8 R9: -210.
    const played = lots('');
    expect(shippedAt(played)).toEqual([30, 80, 30, 80, 130, 180, 180, 210, 210]);
    // Two places each, W5 has one of them for itself.
    expect(minutesIn(played, 'oven', CHANGEOVER)).toBe(2 * 20 + 20 + 2 * 20);
    expect([...played.seen.changeovers]).toEqual([0, 1, 2, 0]);
  });

  it('is one of the most lots in a row', () => {
    // W1 W3 -30; another lot of white before R2, W5 alone: -60. R2 R4 -110, R6 R7 -140; no white is left.
    expect(shippedAt(lots(', batch: { most: 2 }'))).toEqual([30, 110, 30, 110, 60, 140, 140, 170, 170]);
    // One in a row: W1 W3, R2 R4 -80, W5 -130, R6 R7 -180, R8 R9.
    expect(shippedAt(lots(', batch: { most: 1 }'))).toEqual([30, 80, 30, 80, 130, 180, 180, 210, 210]);
  });

  it('is shared by steps that are alike and have one setting, each unit going its own way after it', () => {
    // Prime 0-30 with 1 and 2; both come for their clear, at the same 80, while 3 and 4 come for their prime:
    // who is first decides, and those alike join.
    const played = oven(
      'arrivals: saturated, quantity: 3',
      'stations: { oven: { places: 2, buffer: unlimited, lot: { least: 2, most: 2 }, changeover: { on: setting, process: 20 min } }, gate: { }, rack: { places: 2 } }',
      `{ step: come, at: gate, work: 10 min }, { step: prime bake, at: oven, process: 30 min, setting: 80 degrees },
       { step: coat, at: rack, work: 5 min }, { step: clear bake, at: oven, process: 30 min, setting: 80 degrees }`,
    );
    // 1 10, 2 20: -50. 3 (30) gathers at 50, 1 and 2 come for their clear at 55: 1 joins, -85. 2 then waits for
    // 3, out at 85, back at 90: -120.
    expect(shippedAt(played)).toEqual([85, 120, 120]);
    expect([visits(played, 'prime bake'), visits(played, 'clear bake')]).toEqual([3, 3]);
    expect(minutesIn(played, 'oven', CHANGEOVER)).toBe(0);
  });

  it('is not shared by steps of another length', () => {
    const played = oven(
      'arrivals: saturated, quantity: 3',
      'stations: { oven: { places: 2, buffer: unlimited, lot: { least: 2, most: 2 }, changeover: { on: setting, process: 20 min } }, gate: { }, rack: { places: 2 } }',
      `{ step: come, at: gate, work: 10 min }, { step: prime bake, at: oven, process: 30 min, setting: 80 degrees },
       { step: coat, at: rack, work: 5 min }, { step: clear bake, at: oven, process: 31 min, setting: 80 degrees }`,
    );
    // 3 gathers alone from 50; nothing can come to it: from 55, when 1 and 2 stand before the oven, -85; 1 and 2
    // -116; 3 -147.
    expect(shippedAt(played)).toEqual([116, 116, 147]);
  });
});
