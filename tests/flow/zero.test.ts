import { describe, expect, it } from 'vitest';
import { play, shippedAt } from './run-yaml.js';

/** Every number is invented. 2027-03-01 is a Monday; nothing stops at night. */
const build = (arrivals: string, station = '', find = '', more = ''): string => `
scenario: zeros
programme: { start: 2027-03-01, zone: UTC, arrivals: ${arrivals}, quantity: 3 }
defects: { runs: {} }
sites: { a: { zone: UTC, stations: { s: { buffer: unlimited${station} }, t: { buffer: unlimited } } } }
${more}route:
  - { step: make, at: s, work: 1 h, creates: { runs: 100 % } }
  - { step: look, at: t, work: 10 min, finds: { runs: { chance: 100 %${find} } } }
`;

describe('a time of zero', () => {
  // Made by 60, 120, 180 min, looked at for ten minutes each.
  const AT_ONCE = [70, 130, 190];

  it('between arrivals lets all units come at once', () => {
    expect(shippedAt(play(build('0 min', '', ', repair: 0 min')))).toEqual(AT_ONCE);
  });

  it('of a repair, of what was found or of a failure, passes at once', () => {
    // Fails at 45 and 90 min of work, and is up again at the same moment.
    const failing = build('0 min', ', failures: { every: 45 min, repair: 0 min }', ', repair: 0 min');
    expect(shippedAt(play(failing))).toEqual(AT_ONCE);
  });
});

describe('a station with as many places as a planner may write', () => {
  it('is built', () => {
    const { model, seen } = play(build('0 min', ', places: 130000', ', repair: 0 min'));
    expect(model.stations.places[0]).toBe(130_000);
    // All three are made at once; one place looks at them.
    expect(Array.from(seen.shippedAt)).toEqual([70, 80, 90]);
  });
});
