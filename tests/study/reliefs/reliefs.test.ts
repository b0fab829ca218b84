import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { withHighestRate } from '../../../src/study/reliefs/changes.js';
import { reliefsOf } from '../../../src/study/reliefs/small.js';

// All numbers are invented.
const YAML = `
scenario: every relief
programme: { start: 2027-03-01, quantity: 40, rate: [{ from: 2027-03-01, per day: 2 }, { from: 2027-03-15, per day: 4 }] }
calendars:
  two shifts: { hours: ["06:00-14:00", "14:00-22:00"], on: Mon-Fri }
  round: { hours: ["06:00-18:00", "18:00-06:00"], on: every day }
sites:
  hall:
    zone: Europe/Berlin
    calendar: two shifts
    crews: { welders: { headcount: [3, 2] } }
    stations:
      jig: { places: 2, buffer: 1, failures: { every: 40 h, repair: 1 h } }
      check: { places: 1, buffer: unlimited, rework buffer: 2 }
  field:
    zone: Europe/Berlin
    calendar: round
    stations:
      bay: { places: 1, buffer: 3 }
defects: { crack: {} }
lanes:
  north: { from: hall, to: field, trucks: 1, capacity: 2, load: 10 min, drive: 2 h, unload: 10 min, return: 2 h, leaves: { at: ["08:00", "12:00", "18:00"] }, bank: 4 }
carriers: { frames: { count: 5, from: weld, to: look, return: 1 h } }
route:
  - { step: weld, at: jig, work: 60 min, crew: { welders: 1 }, creates: { crack: 10 % } }
  - { step: look, at: check, work: 10 min, finds: { crack: { chance: 90 %, repair: 5 min } } }
  - lane: north
  - at: bay
    side by side:
      - { step: left, work: 30 min }
      - { step: right, work: 20 min }
`;
const scenario = ((): Scenario => {
  const { scenario: read, problems } = readScenario(YAML, 'made.yaml', () => '');
  if (read === undefined) throw new Error(JSON.stringify(problems));
  return read;
})();
const after = (text: string): Scenario =>
  reliefsOf(scenario)
    .find((relief) => relief.text === text)!
    .change(scenario);

describe('the reliefs of a scenario', () => {
  it('are one small change of each kind, in a fixed order', () => {
    expect(reliefsOf(scenario).map(({ text }) => text)).toEqual([
      'one person more in welders (hall)',
      'one place more at jig',
      'one place more at check',
      'one place more at bay',
      'one space more ahead of jig',
      'one space more for rework ahead of check',
      'one space more ahead of bay',
      'one space more ahead of lane north',
      // The widest gap is 12:00 to 18:00.
      'one truck more on north',
      'one departure more on north at 15:00',
      'one more of frames',
      '10 % off the work of weld',
      'half as much crack from weld',
      '10 % off the work of look',
      '10 % off the work of left',
      '10 % off the work of right',
      // Round the clock no hour is free.
      'one hour of overtime a day in "two shifts" (22:00 to 23:00)',
      'failures of jig half as often',
    ]);
  });

  it('say what each is of', () => {
    const of = (text: string) => reliefsOf(scenario).find((relief) => relief.text === text)?.of;
    const road = 'hall to field';
    expect(of('one person more in welders (hall)')).toEqual({ kind: 'crew', name: 'welders', site: 'hall' });
    expect(of('one place more at bay')).toEqual({ kind: 'station', name: 'bay', site: 'field' });
    expect(of('failures of jig half as often')).toEqual({ kind: 'station', name: 'jig', site: 'hall' });
    expect(of('one space more ahead of jig')).toEqual({ kind: 'room', name: 'jig', site: 'hall' });
    expect(of('one space more ahead of lane north')).toEqual({ kind: 'room', name: 'north', site: 'hall' });
    expect(of('one truck more on north')).toEqual({ kind: 'lane', name: 'north', site: road });
    expect(of('one departure more on north at 15:00')).toEqual({ kind: 'lane', name: 'north', site: road });
    expect(of('one more of frames')).toEqual({ kind: 'carrier', name: 'frames', site: 'hall' });
    expect(of('10 % off the work of right')).toEqual({ kind: 'step', name: 'right', site: 'field' });
    expect(of('half as much crack from weld')).toEqual({ kind: 'step', name: 'weld', site: 'hall' });
    expect(of('one hour of overtime a day in "two shifts" (22:00 to 23:00)')).toEqual({
      kind: 'hours',
      name: 'two shifts',
      site: '',
    });
  });

  it('add one where one more is wanted, on every shift', () => {
    expect(after('one person more in welders (hall)').sites['hall'].crews['welders']).toMatchObject({
      headcount: 4,
      shifts: { headcounts: [4, 3] },
    });
    expect(after('one place more at jig').sites['hall'].stations['jig'].places).toBe(3);
    expect(
      after('one space more for rework ahead of check').sites['hall'].stations['check'].reworkBuffer,
    ).toBe(3);
    expect(after('one departure more on north at 15:00').lanes['north'].leaves).toEqual({
      kind: 'timetable',
      atMin: [480, 720, 900, 1080],
    });
    expect(after('one more of frames').carriers['frames'].count).toBe(6);
  });

  it('take a tenth off work, half off chances, and double the time between failures', () => {
    expect(after('10 % off the work of weld').route[0]).toMatchObject({
      work: { kind: 'constant', value: 54 },
    });
    expect(after('10 % off the work of right').route[3]).toMatchObject({
      sideBySide: [{ work: { value: 30 } }, { work: { value: 18 } }],
    });
    expect(after('half as much crack from weld').route[0]).toMatchObject({
      creates: { crack: { usual: 0.05 } },
    });
    expect(after('failures of jig half as often').sites['hall'].stations['jig'].failures[0].every).toEqual({
      kind: 'constant',
      value: 4800,
    });
  });

  it('leave the scenario itself and all else as it was', () => {
    const before = JSON.stringify(scenario);
    for (const { change } of reliefsOf(scenario)) expect(JSON.stringify(change(scenario))).not.toBe(before);
    expect(JSON.stringify(scenario)).toBe(before);
    expect({ ...after('one place more at jig'), sites: 0 }).toEqual({ ...scenario, sites: 0 });
  });

  it('leave stations of a pulse line alone', () => {
    const pulsed: Scenario = { ...scenario, pulseLines: { line: { stations: ['jig'], taktMin: 60 } } };
    expect(
      reliefsOf(pulsed)
        .filter(({ kind }) => kind === 'place')
        .map(({ text }) => text),
    ).toEqual(['one place more at check', 'one place more at bay']);
  });
});

describe('another rate', () => {
  it('is put in the place of the highest phase', () => {
    expect(withHighestRate(scenario, 5).programme.release).toEqual({
      kind: 'rate',
      phases: [
        { from: '2027-03-01', perDay: 2, perWeek: undefined },
        { from: '2027-03-15', perDay: 5 },
      ],
    });
  });
});
