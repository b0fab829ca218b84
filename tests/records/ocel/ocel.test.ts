import Ajv from 'ajv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { floorLog } from '../../../src/flow/floor-log.js';
import { prepare } from '../../../src/flow/plan.js';
import { EVENT_KINDS, type FloorEvent } from '../../../src/records/log/event.js';
import { eventsOfRun } from '../../../src/records/log/of-run.js';
import { referenceTo } from '../../../src/records/log/references.js';
import { asWritten, logLines } from '../../../src/records/log/write.js';
import { eventsOfOcel, ocelIn } from '../../../src/records/ocel/read.js';
import { ocelFaults } from '../../../src/records/ocel/rules.js';
import type { Ocel } from '../../../src/records/ocel/types.js';
import { ocelOf, ocelText } from '../../../src/records/ocel/write.js';
import { modelOf } from '../../flow/run-yaml.js';
import { randomScenario, toYaml } from '../../properties/random-scenario.js';
import { rowsAsEvents } from '../log/rows-as-events.js';
import { OCEL_SCHEMA } from './ocel20-schema.js';

const isValid = new Ajv({ allErrors: true }).compile(OCEL_SCHEMA);
const valid = (ocel: Ocel): void => {
  expect(isValid(ocel), JSON.stringify(isValid.errors?.slice(0, 3))).toBe(true);
  expect(ocelFaults(ocel)).toEqual([]);
};
const bare = (events: Iterable<object>) =>
  Array.from(events, (event) => {
    const { line, ...rest } = event as FloorEvent & { line?: number };
    expect(line ?? 1).toBeGreaterThan(0);
    return rest;
  });

/** CSV, events, OCEL 2.0, events, CSV. */
function goRound(events: readonly FloorEvent[]): void {
  const csv = [...logLines(events)],
    read = rowsAsEvents(`${csv.join('\n')}\n`);
  expect(bare(read)).toEqual(bare(events));
  const ocel = ocelOf(read);
  valid(ocel);
  const text = [...ocelText(ocel)].join('\n');
  expect(JSON.parse(text)).toEqual(ocel);
  const back = [...eventsOfOcel(ocelIn(text))] as FloorEvent[];
  expect(bare(back)).toEqual(bare(events));
  expect([...logLines(back)]).toEqual(csv);
}

/** Names that somebody may write, or mean ill by. */
const HOSTILE = [
  '<script>alert(1)</script>',
  'a "b"',
  'a;b',
  '=1+1',
  'x=y',
  'two\nlines',
  'a\r\nb',
  '\u202eright',
  '%3B',
  '50 %',
  'a,b',
  'a:b',
  '\ttab ',
  '__proto__',
  'constructor',
  'step',
  'station',
  'value step',
  'Ärger',
  '漢字',
  "'",
  '-',
  '😀',
];
const name = fc
  .oneof(fc.constantFrom(...HOSTILE), fc.string({ minLength: 1, maxLength: 12, unit: 'grapheme' }))
  // A text of spaces alone is no name, and a lone carriage return in quotes is kept.
  .filter((text) => text.trim() !== '');
const event: fc.Arbitrary<FloorEvent> = fc
  .record({
    at: fc.double({ min: 10_000_000, max: 60_000_000, noNaN: true }).map(asWritten),
    kind: fc.constantFrom(...EVENT_KINDS),
    object: name,
    type: fc.oneof(fc.constant('unit'), name),
    step: name,
    station: fc.oneof(fc.constant(''), name),
    others: fc.array(
      fc.tuple(name, name).map(([type, object]) => referenceTo(type, object)),
      { maxLength: 3 },
    ),
    values: fc
      .array(fc.tuple(name, fc.oneof(fc.constant(''), name)), { maxLength: 3 })
      .map((pairs) => Object.fromEntries(pairs.map(([key, value]) => [key.trim(), value.trim()]))),
  })
  .map((one) => ({ ...one, others: one.others.map((other) => other.trim()) }));

describe('a floor log in the form of OCEL 2.0', () => {
  it('goes round with CSV without a loss, whatever its names', () => {
    fc.assert(fc.property(fc.array(event, { maxLength: 8 }), goRound), { seed: 20270816, numRuns: 120 });
  });

  it('goes round without a loss for what happens in any small scenario', () => {
    fc.assert(
      fc.property(randomScenario, (drawn) => {
        const model = modelOf(toYaml(drawn)),
          { happenings } = floorLog(prepare(model), 'round', 1);
        // 2027-03-01, midnight of UTC.
        const events = [...eventsOfRun(happenings.slice(0, 600), model, Date.UTC(2027, 2, 1) / 60_000)];
        goRound(events.map((each) => ({ ...each, at: asWritten(each.at) })));
      }),
      { seed: 20270816, numRuns: 6 },
    );
  });

  const joined: FloorEvent[] = [
    {
      at: 30_306_240,
      kind: 'enter',
      object: 'RT-1',
      type: 'unit',
      step: '',
      station: '',
      others: [],
      values: { cab: 'long' },
    },
    {
      at: 30_306_300,
      kind: 'join',
      object: 'RT-1',
      type: 'unit',
      step: 'hang doors',
      station: 'bay',
      others: ['doors:17', 'carrier:skid 4'],
      values: {},
    },
  ];

  it('has units, sub-assemblies and carriers as objects, options as attributes from the entry on', () => {
    const { objects, events } = ocelOf(joined);
    // 30,306,240 minutes are 2027-08-16 00:00 of UTC: 21,046 days.
    expect(Date.UTC(2027, 7, 16) / 60_000).toBe(30_306_240);
    expect(objects).toEqual([
      {
        id: 'unit:RT-1',
        type: 'unit',
        attributes: [{ name: 'cab', value: 'long', time: '2027-08-16T00:00:00Z' }],
        relationships: [{ objectId: 'doors:17', qualifier: 'part' }],
      },
      { id: 'doors:17', type: 'doors', attributes: [], relationships: [] },
      { id: 'carrier:skid 4', type: 'carrier', attributes: [], relationships: [] },
    ]);
    expect(events[1]).toEqual({
      id: 'e2',
      type: 'join',
      time: '2027-08-16T01:00:00Z',
      attributes: [
        { name: 'step', value: 'hang doors' },
        { name: 'station', value: 'bay' },
      ],
      relationships: [
        { objectId: 'unit:RT-1', qualifier: 'itself' },
        { objectId: 'doors:17', qualifier: 'part' },
        { objectId: 'carrier:skid 4', qualifier: 'carrier' },
      ],
    });
  });

  it('finds the fault in each of some spoilt logs', () => {
    const good = ocelOf(joined),
      spoil = (change: (log: Ocel & Record<string, unknown>) => unknown) => {
        const log = structuredClone(good) as Ocel & Record<string, unknown>;
        change(log);
        return ocelFaults(log);
      };
    const set = (object: object, value: object): object => Object.assign(object, value);
    expect(spoil(() => 0)).toEqual([]);
    expect(spoil(({ events }) => set(events[1], { id: 'e1' }))[0]).toContain('events[1].id');
    expect(spoil(({ events }) => set(events[0], { type: 'start' }))[0]).toContain('events[0].type');
    expect(spoil(({ events }) => set(events[0], { time: '2027-08-16T00:00:00' }))[0]).toContain(
      'events[0].time',
    );
    expect(spoil(({ objects }) => set(objects[1], { id: 'unit:RT-1' })).join()).toContain('objects[1].id');
    expect(spoil(({ objects }) => set(objects[0], { type: 'tank' })).join()).toContain('objects[0].type');
    expect(spoil(({ events }) => set(events[0].relationships![0], { objectId: 'unit:9' }))[0]).toContain(
      'relationships[0].objectId',
    );
    expect(spoil(({ objectTypes }) => set(objectTypes[0], { attributes: [] }))[0]).toContain(
      'objects[0].attributes[0].name',
    );
    expect(spoil(({ objectTypes }) => set(objectTypes[0].attributes[0], { type: 'text' }))[0]).toContain(
      'objectTypes[0].attributes[0].type',
    );
  });

  it('of another maker is read as far as its events are those of the floor', () => {
    // Made up, after the example of section 8: numbers as values, an id of its own, options of the object.
    const text = JSON.stringify({
      eventTypes: [
        { name: 'enter', attributes: [] },
        { name: 'pay', attributes: [] },
      ],
      objectTypes: [{ name: 'unit', attributes: [{ name: 'doors', type: 'integer' }] }],
      events: [
        {
          id: 'a',
          type: 'enter',
          time: '2027-08-16T06:00:00+02:00',
          relationships: [{ objectId: '17', qualifier: 'vehicle' }],
        },
        { id: 'b', type: 'pay', time: '2027-08-16T06:00:00Z', relationships: [] },
        { id: 'c', type: 'enter', time: '2027-08-16T06:00:00Z', relationships: [] },
      ],
      objects: [
        { id: '17', type: 'unit', attributes: [{ name: 'doors', value: 4, time: '1970-01-01T00:00:00Z' }] },
      ],
    });
    const [first, second, third] = [...eventsOfOcel(ocelIn(text))];
    expect(first).toMatchObject({
      at: Date.UTC(2027, 7, 16, 4) / 60_000,
      object: '17',
      type: 'unit',
      values: { doors: '4' },
    });
    expect(second).toEqual({ kind: 'unknown event', position: 2, example: 'pay' });
    expect(third).toEqual({ kind: 'no object', position: 3, example: 'c' });
    expect(() => ocelIn('{"events":[]}')).toThrow(/OCEL 2\.0/);
    expect(() => ocelIn('at,event')).toThrow(/expected JSON/);
  });
});
