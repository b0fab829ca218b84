import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EventQueue } from '../../src/flow/queue.js';

interface Event {
  readonly time: number;
  readonly kind: number;
  readonly id: number;
  readonly sequence: number;
}
/** The order of events: time, then kind, then the order in which they were pushed. */
const order = (a: Event, b: Event): number => a.time - b.time || a.kind - b.kind || a.sequence - b.sequence;

const KINDS = 5,
  SOURCES = 8;
/** Few times and kinds, so that ties are common; null takes an event out. */
const operation = fc.option(
  fc.record({
    time: fc.integer({ min: 0, max: 12 }).map((n) => n / 4),
    kind: fc.integer({ min: 0, max: KINDS - 1 }),
    id: fc.integer({ min: 0, max: SOURCES - 1 }),
  }),
  { freq: 2 },
);

describe('EventQueue', () => {
  it('gives events out by time, kind and order of pushing, as a sorted array does, whatever comes between', () => {
    fc.assert(
      fc.property(fc.array(operation, { maxLength: 300 }), (operations) => {
        const queue = new EventQueue(new Array<number>(KINDS).fill(SOURCES));
        const sorted: Event[] = [];
        operations.forEach((push, sequence) => {
          if (push === null) expectNext(queue, sorted.shift());
          else {
            // A source has one event at most: a second one takes the first one out.
            const present = sorted.findIndex(({ kind, id }) => kind === push.kind && id === push.id);
            if (present >= 0) {
              expect(queue.remove(push.kind, push.id)).toBe(sorted[present].time);
              sorted.splice(present, 1);
              return;
            }
            queue.push(push.time, push.kind, push.id);
            sorted.push({ ...push, sequence });
            sorted.sort(order);
          }
          expect(queue.size).toBe(sorted.length);
        });
        while (sorted.length > 0) expectNext(queue, sorted.shift());
        expectNext(queue, undefined);
      }),
      { seed: 20270301, numRuns: 400 },
    );
  });

  it('refuses to take out what is not in it', () => {
    const queue = new EventQueue([2]);
    queue.push(1, 0, 0);
    expect(() => queue.remove(0, 1)).toThrow(
      'event queue: expected an event of source 1 of kind 0, got none',
    );
  });

  it('holds an event of every source at once', () => {
    const count = 10_000,
      queue = new EventQueue([count]),
      times: number[] = [];
    for (let i = 0; i < count; i++) queue.push((i * 7919) % count, 0, i);
    while (queue.ready()) {
      times.push(queue.times[0]);
      queue.pop();
    }
    expect(times).toEqual(Array.from({ length: count }, (_, i) => i));
  });
});

function expectNext(queue: EventQueue, event: Event | undefined): void {
  expect(queue.ready()).toBe(event !== undefined);
  if (event === undefined) return;
  expect(queue.times[0]).toBe(event.time);
  const source = queue.pop();
  expect([queue.kindOf(source), queue.idOf(source)]).toEqual([event.kind, event.id]);
}
