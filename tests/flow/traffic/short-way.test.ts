import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { play } from '../run-yaml.js';

/**
 * A condition that every unit meets makes a step no longer plain, so its units go the long way. The draws
 * stay as they are, since each has a stream of its own: the two runs must have the same bits.
 */
const station = fc.record({
  places: fc.integer({ min: 1, max: 3 }),
  buffer: fc.constantFrom(0, 0, 1, 2, 'unlimited'),
  // Whole minutes make ties common.
  work: fc.constantFrom(
    '10 min',
    '15 min',
    '5 min',
    '{ exponential: { mean: 10 min } }',
    '{ low: 5 min, high: 15 min }',
    '{ discrete: { 5 min: 50 %, 20 min: 50 % } }',
  ),
  same: fc.boolean(),
  calendar: fc.constantFrom('', '', ', calendar: days'),
  changeover: fc.constantFrom('', '', '', ', changeover: { on: kind, work: 5 min }'),
});
const line = fc.record({
  stations: fc.array(station, { minLength: 2, maxLength: 6 }),
  arrivals: fc.constantFrom('saturated', '12 min', '{ exponential: { mean: 12 min } }'),
  back: fc.boolean(),
});
type Line = typeof line extends fc.Arbitrary<infer T> ? T : never;

function yaml({ stations, arrivals, back }: Line, when: string): string {
  const steps = stations.flatMap(({ work, same }, i) => [
    `  - { step: step ${i}, at: station ${i}, work: ${work}${when}${back && i === stations.length - 1 ? ', fails: { chance: 20 %, back to: step 0, limit: 2 }' : ''} }`,
    ...(same ? [`  - { step: more ${i}, at: station ${i}, work: ${work}${when} }`] : []),
  ]);
  return `
scenario: line
programme: { start: 2027-03-01, arrivals: ${arrivals}, length: 6000 min, warm up: 500 min, options: { kind: { a: 50 %, b: 50 % } } }
calendars: { days: { hours: ["06:00-14:00", "14:00-22:00"], on: every day, breaks: ["10:00-10:20"] } }
sites:
  hall:
    stations:
${stations.map(({ places, buffer, calendar, changeover }, i) => `      station ${i}: { places: ${places}, buffer: ${i === 0 && arrivals === 'saturated' ? 0 : buffer}${calendar}${changeover}${back ? ', rework buffer: unlimited' : ''} }`).join('\n')}
route:
${steps.join('\n')}
`;
}

describe('the short way of plain steps', () => {
  it('gives the same bits as the long way, with buffers, places, blocking, ties and shifts', () => {
    fc.assert(
      fc.property(line, fc.integer({ min: 1, max: 1000 }), (drawn, replication) => {
        const short = play(yaml(drawn, ''), 'ways', replication),
          long = play(yaml(drawn, ', when: { kind: [a, b] }'), 'ways', replication);
        expect(long.model.steps.whenOption.length).toBe(short.model.steps.count);
        expect(short.seen.shipped).toBeGreaterThan(0);
        expect(JSON.stringify(short.seen)).toBe(JSON.stringify(long.seen));
      }),
      { seed: 20270301, numRuns: 60 },
    );
  }, 60_000);
});
