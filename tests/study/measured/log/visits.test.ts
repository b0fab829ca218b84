import { describe, expect, it } from 'vitest';
import type { FloorEvent } from '../../../../src/records/log/event.js';
import { anyPlace } from '../../../../src/study/fit/places.js';
import { learningResults } from '../../../../src/study/measured/learning.js';
import { readFloor } from '../../../../src/study/measured/log/floor.js';
import { logNotes } from '../../../../src/study/measured/log/notes.js';
import { logPlaces } from '../../../../src/study/measured/log/steps.js';
import { logOf, scenarioOf, sourceOf } from '../../validate/shop.js';

/** Invented. Two plants in zones of their own; the clock of Oslo goes forward on 28 March 2027 at 02:00. */
const PLANT = scenarioOf(`
scenario: Over nights
programme: { start: 2027-03-22, zone: Europe/Oslo, rate: { per day: 1 }, quantity: 12, options: { cab: { long: 50 %, short: 50 % } } }
calendars:
  days: { hours: ['06:00-14:00'], breaks: ['09:00-09:15', '12:00-12:30'], on: Mon-Fri }
  two: { hours: ['06:00-14:00', '14:00-22:00'], breaks: ['10:00-10:30'], on: Mon-Fri }
  nights: { hours: ['22:00-06:00'], on: every day }
defects: { gap: {} }
sites:
  works:
    zone: Europe/Oslo
    calendar: days
    crews: { fitters: 6, painters: { headcount: [3, 3], calendar: two }, night crew: { headcount: 4, calendar: nights } }
    equipment: { hoist: { count: 2, calendar: days } }
    stations:
      bay: { places: 4, buffer: unlimited }
      booth: { places: 2, buffer: unlimited, calendar: two }
      oven: { places: 3, buffer: unlimited, unattended: true }
      night bay: { places: 4, buffer: unlimited, calendar: nights }
      bench: { places: 4, buffer: unlimited }
      gate: { places: 4, buffer: unlimited }
  finish:
    zone: America/New_York
    calendar: days
    stations: { last bay: { places: 4, buffer: unlimited } }
lanes: { over: { from: works, to: finish, trucks: 2, capacity: 1, drive: 10 h } }
route:
  - { step: build, at: bay, crew: { fitters: 1 }, equipment: { hoist: { first: 20 min } }, work: 300 min, work factor: { cab: { long: 1.5 } }, creates: { gap: 30 % } }
  - { step: coat, at: booth, crew: { painters: 1 }, work: 700 min }
  - { step: bake, at: oven, process: 200 min }
  - { step: cure, at: oven, work: 10 min, process: 100 min }
  - { step: wire, at: night bay, crew: { night crew: 1 }, work: 700 min }
  - at: bench
    side by side:
      - { step: left, crew: { fitters: 1 }, work: 310 min }
      - { step: right, crew: { fitters: 1 }, work: 500 min }
  - { step: look, at: gate, crew: { fitters: 1 }, work: 30 min, finds: { gap: { chance: 50 %, repair: 45 min } } }
  - { lane: over }
  - { step: finish, at: last bay, work: 900 min }
`);

const times = (events: readonly FloorEvent[], isPlain = false) =>
  readFloor(PLANT, sourceOf(events), { by: [] }).then((floor) => ({
    floor,
    steps: floor.visits.times(isPlain),
  }));

describe('times from a floor log', () => {
  it('are working minutes over breaks, nights, weekends, shifts, zones and a change of the clock', async () => {
    const { floor, steps } = await times(logOf(PLANT, 'nights')),
      of = Object.fromEntries(steps.map(({ step, minutes }) => [step, [...new Set(minutes)]])),
      all = Object.fromEntries(steps.map(({ step, minutes }) => [step, minutes.length]));
    expect(of).toMatchObject({
      coat: [700],
      bake: [200],
      wire: [700],
      left: [310],
      right: [500],
      look: [30],
      finish: [900],
    });
    // As clocked; without the factor of the long cab on request.
    expect(of['build'].sort()).toEqual([300, 450]);
    expect([...new Set((await times(logOf(PLANT, 'nights'), true)).steps[0].minutes)]).toEqual([300]);
    // Some of these went over a night, or they would show nothing.
    const events = logOf(PLANT, 'nights'),
      longest = (step: string): number => {
        const at = (kind: string) =>
          events.filter((each) => each.step === step && each.kind === kind).map((e) => e.at);
        return Math.max(...at('end').map((end, i) => end - (at('start')[i] ?? 0)));
      };
    for (const step of ['build', 'coat', 'wire', 'right', 'finish'])
      expect(longest(step)).toBeGreaterThan(Math.max(...(of[step] ?? [])) + 400);
    // Repairs are in the visits at which something was found.
    expect(all['look']).toBe(12 - floor.visits.withFinds);
    expect(floor.visits.withFinds).toBeGreaterThan(0);
    expect(all['wire']).toBe(12);
  });

  it('stand where the scenario has a value for them, and say why where it has none', () => {
    const placeOf = logPlaces(PLANT, anyPlace);
    expect(placeOf('build').path).toBe('route[build].work');
    expect(placeOf('bake').path).toBe('route[bake].process');
    expect(placeOf('right').path).toBe('route[right].work');
    expect(placeOf('cure').notWritten).toMatch(/work and process together/);
    expect(placeOf('nowhere').notWritten).toMatch(/no such step/);
  });

  it('count units from the log on, and only what begins on the days asked', async () => {
    const floor = await readFloor(PLANT, sourceOf(logOf(PLANT, 'nights')), {
        by: ['cab'],
        from: '2027-03-25',
        to: '2027-03-30',
      }),
      build = floor.visits.times().find(({ step }) => step === 'build')!;
    expect(build.numbers).toEqual([4, 5, 6, 7]);
    expect(build.by['cab']).toHaveLength(4);
    await expect(
      readFloor(PLANT, sourceOf(logOf(PLANT, 'nights')), { by: [], from: '2027-04-30', to: '2027-04-01' }),
    ).rejects.toThrow('at least one whole day');
  });

  it('tell no learning of a scenario that has none, and leave its work to times', async () => {
    const { steps } = await times(logOf(PLANT, 'nights'), true),
      results = learningResults(steps, PLANT, { file: 'log.csv', seed: '1', isWhole: true });
    expect(results.map(({ learns, entries }) => [learns, entries.length])).toEqual(
      steps.map(() => [false, 0]),
    );
    expect(results[0].notWritten).toEqual(['Its work is written by `--of times`.']);
  });
});

describe('times that hold more than work', () => {
  const line = scenarioOf(`
scenario: Waits inside
programme: { start: 2027-03-01, arrivals: 8 h, quantity: 10 }
calendars: { two: { hours: ['06:00-14:00', '14:00-22:00'] } }
sites:
  works:
    calendar: two
    crews: { painters: { headcount: [2, 1], calendar: two }, polishers: { headcount: 2, calendar: two, hand over: wait } }
    stations: { booth: { places: 3, failures: { every: 9 h, repair: 20 min } }, bay: { places: 3 } }
route:
  - { step: coat, at: booth, crew: { painters: 1 }, work: 5 h, work factor: {} }
  - { step: polish, at: bay, crew: { polishers: 1 }, work: 5 h }
`);

  it('are told: repairs of the station, and waits where a crew gets smaller', async () => {
    const floor = await readFloor(line, sourceOf(logOf(line, 'waits')), { by: [] }),
      all = floor.visits.times(),
      notes = logNotes(floor, all, line, 'times').join(' ');
    expect(Math.max(...(all.find(({ step }) => step === 'coat')?.minutes ?? []))).toBeGreaterThan(300);
    expect(notes).toMatch(/may hold a repair: coat\./);
    expect(notes).toMatch(/wait for people at a shift change: coat\./);
    expect(notes).not.toMatch(/Divided/);
  });

  it('are not written where who began a job ends it in a shift of theirs', () => {
    expect(logPlaces(line, anyPlace)('polish').path).toBeNull();
    expect(logPlaces(line, anyPlace)('polish').notWritten).toMatch(/hand over: wait/);
    expect(logPlaces(line, anyPlace)('coat').path).toBe('route[coat].work');
  });
});
