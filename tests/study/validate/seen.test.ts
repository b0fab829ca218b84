import { describe, expect, it } from 'vitest';
import { prepare } from '../../../src/flow/plan.js';
import type { EventKind, FloorEvent } from '../../../src/records/log/event.js';
import { compile } from '../../../src/scenario/compile.js';
import { runSpan } from '../../../src/scenario/programme/span.js';
import { type Frame, stepIds } from '../../../src/study/validate/seen/frame.js';
import { measuresOf } from '../../../src/study/validate/seen/measures.js';
import { shareAbove } from '../../../src/study/validate/seen/people.js';
import { peopleOf } from '../../../src/study/validate/seen/people-compared.js';
import { LogWatch } from '../../../src/study/validate/seen/watch.js';
import { scenarioOf } from './shop.js';

/** Invented: a break from 9:00 to 10:00, two steps, two looks for dirt. */
const scenario = scenarioOf(`
scenario: Two steps
programme: { start: 2027-03-01, rate: { per day: 2 }, quantity: 4 }
calendars: { day: { hours: ["06:00-14:00"], on: Mon-Fri, breaks: ["09:00-10:00"] } }
defects: { dirt: {} }
sites:
  shop:
    zone: UTC
    calendar: day
    crews: { painters: 3 }
    stations: { booth: { places: 3, buffer: unlimited }, bench: { places: 2, buffer: unlimited } }
route:
  - { step: coat, at: booth, crew: { painters: 1 }, work: 1 h, creates: { dirt: 50 % }, finds: { dirt: { chance: 50 %, repair: 10 min } } }
  - { step: look, at: bench, crew: { painters: 2 }, work: 1 h, finds: { dirt: { chance: 90 %, back to: coat } } }
`);
const model = compile(scenario),
  { origin } = runSpan(scenario);

/** `7.5`: half past seven on the first day. */
const event = (
  hour: number,
  kind: EventKind,
  object: string,
  step = '',
  values: Record<string, string> = {},
): FloorEvent => ({
  at: origin + 60 * hour,
  kind,
  object,
  type: 'unit',
  step,
  station: '',
  others: [],
  values,
});

function seen(events: readonly FloorEvent[], from = 0, to = 24, old: readonly string[] = []) {
  const frame: Frame = {
      model,
      calendars: prepare(model).calendars,
      origin,
      from: origin + 60 * from,
      to: origin + 60 * to,
      fromDay: 20,
      workingDays: 1,
      stepOf: stepIds(model),
      old: new Set(old),
    },
    watch = new LogWatch(frame);
  for (const each of events) watch.take(each);
  watch.end();
  const all = measuresOf(frame, watch);
  return {
    of: (topic: string, of: string, what = ''): number | undefined =>
      all.find((each) => each.topic === topic && each.of === of && each.what.startsWith(what))?.value,
    people: peopleOf(frame, watch),
    watch,
  };
}

/** A unit that is coated, looked at and shipped. */
const whole = (unit: string, at: readonly [number, number, number, number, number]): FloorEvent[] => [
  event(at[0], 'enter', unit),
  event(at[0], 'arrive', unit, 'coat'),
  event(at[1], 'start', unit, 'coat'),
  event(at[2], 'end', unit, 'coat'),
  event(at[2], 'arrive', unit, 'look'),
  event(at[3], 'start', unit, 'look'),
  event(at[4], 'end', unit, 'look'),
  event(at[4], 'ship', unit),
];
const inOrder = (...units: FloorEvent[][]): FloorEvent[] => units.flat().sort((a, b) => a.at - b.at);

describe('what is estimated of a log', () => {
  it('takes working minutes without breaks and nights, and lead time by the clock', () => {
    // coat 8:00 to 11:00 with an hour of break: 2 h; look 13:00 to 7:00 next day: 1 h + 1 h.
    const log = seen(whole('A', [7, 8, 11, 13, 31]), 0, 48);
    expect(log.of('minutes', 'coat')).toBe(120);
    expect(log.of('minutes', 'look')).toBe(120);
    expect(log.of('lead time', 'whole line')).toBe(1);
    // Waits 7:00 to 8:00, and 11:00 to 13:00.
    expect(log.watch.stays.waiting.map(({ mean }) => mean)).toEqual([60, 120]);
  });

  it('takes the mean of units inside over the period, those of before it among them', () => {
    const log = seen(inOrder(whole('A', [6, 6, 7, 7, 8]), whole('B', [7, 7, 8, 8, 12])), 7, 11);
    // A is there for 1 h of 4, B for all 4.
    expect(log.of('units inside', 'shop')).toBe(1.25);
    expect(log.of('rate', 'whole line')).toBe(1);
    // A came before the period: nothing is said of its lead time. B is not out.
    expect(log.of('lead time', 'whole line')).toBeNaN();
  });

  it('says nothing of the lead time of units that stood there at the start', () => {
    const events = whole('A', [6, 6, 7, 7, 8]);
    expect(seen(events).of('lead time', 'whole line')).toBe(2 / 24);
    expect(seen(events, 0, 24, ['A']).of('lead time', 'whole line')).toBeNaN();
  });

  it('tells what an inspection misses from what comes to it', () => {
    const events = inOrder(
      whole('A', [6, 6, 7, 7, 8]),
      [event(6.5, 'find', 'A', 'coat', { defect: 'dirt' })],
      whole('B', [6, 6, 7, 7, 8]),
      [event(7.5, 'find', 'B', 'look', { defect: 'dirt', to: 'coat' })],
      whole('C', [6, 6, 7, 7, 8]),
      whole('D', [6, 6, 7, 7, 8]),
    );
    const log = seen(events);
    // One of two that were there; both came to it on four visits; one of four was left to the last.
    expect(log.of('finds', 'coat', 'dirt found, of')).toBe(0.5);
    expect(log.of('finds', 'coat', 'dirt that comes')).toBe(0.5);
    expect(log.of('finds', 'look', 'dirt found in')).toBe(0.25);
    expect(log.of('quality', 'coat', 'right')).toBe(0.75);
    expect(log.of('quality', 'look', 'sent back')).toBe(0.25);
    // The visit with a find holds a repair: it does not tell how long the step takes.
    expect(log.watch.stays.minutes[0]?.n).toBe(3);
  });

  it('does not count again what was known', () => {
    const log = seen(
      inOrder(whole('A', [6, 6, 7, 7, 8]), [
        event(7.5, 'find', 'A', 'look', { defect: 'dirt', again: 'yes' }),
      ]),
    );
    expect(log.of('finds', 'look', 'dirt found in')).toBe(0);
  });

  it('counts people of the second half of a period of two weeks or more by themselves', () => {
    // Two looked at at once on the first day, one at a time on the ninth.
    const day = 24 * 8,
      events = inOrder(
        whole('A', [6, 6, 7, 7, 8]),
        whole('B', [6, 6, 7, 7, 8]),
        whole('C', [6 + day, 6 + day, 7 + day, 7 + day, 8 + day]),
      );
    const { people } = seen(events, 0, 24 * 14);
    expect(people.map(({ what, most }) => [what, most])).toEqual([
      ['', 4],
      ['from 1970-01-28 on', 2],
    ]);
    expect(seen(events, 0, 24 * 13).people).toHaveLength(1);
  });

  it('counts people at work at once in the hours of their crew', () => {
    // 1 painter 8:00 to 9:00 and, after the break, 10:00 to 11:00; beside 2 more from 10:00 to 10:30.
    const log = seen(inOrder(whole('A', [8, 8, 11, 12, 13]), whole('B', [6, 6, 7, 10, 10.5]))),
      [painters] = log.people;
    expect(painters.most).toBe(3);
    // A coats 8-9, 10-11; B coats 6-7; B is looked at 10-10:30, A 12-13: of 7 h none 2, one 2.5, two 1 ...
    expect(painters.minutes).toEqual([180, 150, 60, 30]);
    expect(shareAbove(painters.minutes, 1)).toBeCloseTo(90 / 420, 12);
  });

  it('forgets units that are gone', () => {
    const events = Array.from({ length: 50 }, (_, i) => whole(`U${i}`, [6, 6, 7, 7, 8])).flat(),
      { watch } = seen(events);
    for (const part of [watch.line, watch.stays, watch.finds, watch.people])
      for (const value of Object.values(part))
        if (value instanceof Map && value.size > 0)
          expect([...value.keys()].every(Number.isInteger)).toBe(true);
  });

  it('says nothing of what is found on units that stood there at the start', () => {
    const events = inOrder(whole('A', [6, 6, 7, 7, 8]), [
      event(6.5, 'find', 'A', 'coat', { defect: 'dirt' }),
    ]);
    expect(seen(events).of('quality', 'coat', 'right')).toBe(0);
    expect(seen(events, 0, 24, ['A']).of('quality', 'coat', 'right')).toBeNaN();
  });

  it('has a share sent back only of inspections that send back', () => {
    const log = seen(whole('A', [6, 6, 7, 7, 8]));
    expect(log.of('quality', 'look', 'sent back')).toBe(0);
    expect(log.of('quality', 'coat', 'sent back')).toBeUndefined();
  });
});

describe('overtime that a rule decides on', () => {
  const ruled = compile(
      scenarioOf(`
scenario: Saturdays
programme: { start: 2027-03-01, rate: { per day: 2 }, quantity: 4 }
calendars: { day: { hours: ["06:00-14:00"], overtime: [{ on: Sat, hours: ["06:00-12:00"], when: { units behind: 1, lead time: 1 day } }] } }
sites: { shop: { zone: UTC, calendar: day, crews: { fitters: 2 }, stations: { bench: { places: 2, buffer: unlimited } } } }
route: [{ step: fit, at: bench, crew: { fitters: 1 }, work: 1 h }]
`),
    ),
    frame: Frame = {
      model: ruled,
      calendars: prepare(ruled).calendars,
      origin,
      from: origin,
      to: origin + 60 * 24 * 9,
      fromDay: 20,
      workingDays: 6,
      stepOf: stepIds(ruled),
      old: new Set(),
    },
    friday = 4 * 24,
    /** Unit A is in work from Friday 13:00 to Monday 7:00. */
    over = [event(friday + 13, 'start', 'A', 'fit'), event(friday + 72 + 7, 'end', 'A', 'fit')];
  const read = (events: readonly FloorEvent[]) => {
    const watch = new LogWatch(frame);
    for (const each of inOrder([...events])) watch.take(each);
    return { minutes: watch.end().stays.minutes[0], people: peopleOf(frame, watch)[0].minutes };
  };

  it('is no working time where nothing begins or ends in it', () => {
    // An hour on Friday and one on Monday; six more only if somebody was seen at work on Saturday.
    expect(read(over).minutes.mean).toBe(120);
    expect(read(over).people[1]).toBe(120);
    const seenOnSaturday = read([
      ...over,
      event(friday + 24 + 7, 'start', 'B', 'fit'),
      event(friday + 24 + 8, 'end', 'B', 'fit'),
    ]);
    // A 8 h, B 1 h.
    expect([seenOnSaturday.minutes.n, seenOnSaturday.minutes.mean]).toEqual([2, 270]);
    expect(seenOnSaturday.people.slice(1)).toEqual([420, 60]);
  });
});

describe('what is found on sub-assemblies', () => {
  const yaml = `
scenario: A look at the bench
programme: { start: 2027-03-01, rate: { per day: 2 }, quantity: 4 }
defects: { leak: {} }
sites: { shop: { zone: UTC, stations: { bench: { buffer: unlimited }, line: { buffer: unlimited } } } }
feeders:
  pumps:
    stock: 2
    route:
      - { step: build pump, at: bench, work: 1 h, creates: { leak: 20 % } }
      - { step: try pump, at: bench, work: 10 min, finds: { leak: { chance: 50 %, repair: 5 min } } }
route:
  - { step: cut, at: line, work: 1 h }
  - { step: fit pump, at: line, parts: { pumps: 1 }, work: 1 h }
  - { step: last look, at: line, work: 10 min, finds: { leak: { chance: 90 %, repair: 1 h } } }
`;
  const pumps = compile(scenarioOf(yaml)),
    frame: Frame = {
      model: pumps,
      calendars: prepare(pumps).calendars,
      origin,
      from: origin,
      to: origin + 1440,
      fromDay: 20,
      workingDays: 1,
      stepOf: stepIds(pumps),
      old: new Set(),
    };

  it('comes ahead of the step at which they join, and stays with the unit', () => {
    const watch = new LogWatch(frame),
      of = (each: FloorEvent, more: Partial<FloorEvent>): FloorEvent => ({ ...each, ...more });
    // Pumps 1 and 2 are tried; 2 is found at the bench, 1 is missed and found on unit B, which it joined.
    for (const each of [
      of(event(6, 'end', '1', 'try pump'), { type: 'pumps' }),
      of(event(7, 'find', '2', 'try pump', { defect: 'leak' }), { type: 'pumps' }),
      of(event(7, 'end', '2', 'try pump'), { type: 'pumps' }),
      of(event(8, 'join', 'B', 'fit pump'), { others: ['pumps:1'] }),
      event(9, 'find', 'B', 'last look', { defect: 'leak' }),
      event(9, 'end', 'B', 'last look'),
    ])
      watch.take(each);
    const found = measuresOf(frame, watch.end()).filter(({ topic }) => topic === 'finds');
    expect(found.map(({ of: at, what, value, n }) => [at, what, value, n])).toEqual([
      ['last look', 'leak found in a visit, left by earlier ones', 1, 1],
      ['try pump', 'leak found, of those that it or a later one finds', 0.5, 2],
      ['try pump', 'leak that comes to it, as found by it or later', 1, 2],
    ]);
  });
});
