import { describe, expect, it } from 'vitest';
import { WORKING } from '../../../src/flow/floor/states.js';
import { minutesIn, play, shippedAt } from '../run-yaml.js';

/** Rule 9, by hand. */
const route = (steps: string, { quantity = 1, more = '' } = {}): string => `
scenario: measured twice
programme: { arrivals: saturated, quantity: ${quantity}${more} }
defects: { camber: {} }
sites: { hall: { crews: { surveyors: 1 }, stations: { mill: {}, gate: {}, second gate: {} } } }
route:
${steps}
`;
const compared = (first: number, second: number, { then = 'repair: 3 min', more = '' } = {}) =>
  play(
    route(`
  - { step: make, at: mill, work: 10 min, creates: { camber: 100 % } }
  - { step: measure, at: gate, work: 5 min, finds: { camber: { chance: ${first} %, repair: 1 min } } }
  - { step: measure again, at: second gate, crew: { surveyors: 1 }, work: 5 min, fails: { chance: ${second} %, ${then} }, compares with: { step: measure, if it differs: 40 min }${more} }`),
  );

describe('a second measurement', () => {
  it('that agrees costs nothing', () => {
    expect(shippedAt(compared(0, 0))).toEqual([20]);
    expect(shippedAt(compared(100, 100))).toEqual([10 + 6 + 5 + 3]);
  });

  it('counts good-good, good-bad, bad-good and bad-bad', () => {
    for (const [first, second, cell] of [
      [0, 0, 0],
      [0, 100, 1],
      [100, 0, 2],
      [100, 100, 3],
    ] as const) {
      const expected = [0, 0, 0, 0];
      expected[cell] = 1;
      expect(Array.from(compared(first, second).seen.quality.compared.subarray(4))).toEqual(expected);
    }
  });

  it('that differs takes the extra work of the crew there, and then what was found takes its course', () => {
    const worse = compared(0, 100);
    expect(shippedAt(worse)).toEqual([10 + 5 + 5 + 40 + 3]);
    expect(minutesIn(worse, 'second gate', WORKING)).toBe(48);
    expect(Array.from(worse.seen.quality.differMinutes)).toEqual([0, 40]);
    expect(worse.seen.reworkMinutes[0]).toBe(43);
    const better = compared(100, 0);
    expect(shippedAt(better)).toEqual([10 + 6 + 5 + 40]);
    expect(better.seen.inspections.repaired[1]).toBe(0);
  });

  it('that differs is cleared up before the unit is scrapped or sent back', () => {
    const scrapped = compared(0, 99.9999999, { then: 'scrap: true' });
    expect(scrapped.seen).toMatchObject({ scrapped: 1, shipped: 0, endedAt: 60 });
    // Back to make once; the second visits are not compared: 10 + 5 + 5 + 40, then 10 + 5 + 5.
    const back = compared(0, 99.9999999, { then: 'back to: make, limit: 1' });
    expect(shippedAt(back)).toEqual([80]);
    expect(Array.from(back.seen.quality.compared.subarray(4))).toEqual([0, 1, 0, 0]);
  });

  it('counts only units that both have seen', () => {
    const played = play(
      route(
        `
  - { step: make, at: mill, work: 10 min, creates: { camber: 100 % } }
  - { step: measure, at: gate, sample: 1 in 3, work: 1 min, finds: { camber: { chance: 100 %, repair: 1 min } } }
  - { step: measure again, at: second gate, work: 1 min, finds: { camber: { chance: 100 %, repair: 1 min } }, compares with: measure }`,
        { quantity: 9 },
      ),
    );
    // Units 3, 6 and 9: mended at the first, so nothing is found at the second.
    expect(Array.from(played.seen.quality.compared.subarray(4))).toEqual([0, 0, 3, 0]);
  });
});

describe('work done again', () => {
  it('is counted by crew: steps up to the one that sent back, the repeated inspection, and repairs', () => {
    // Failing twice: fit (2 people, 10) and test (1, 5) twice more; last not. Repairs of 4 by the tester,
    // once for the crack.
    const played = play(`
scenario: again
programme: { arrivals: saturated, quantity: 1 }
defects: { crack: {} }
sites: { hall: { crews: { fitters: 2, testers: 1 }, stations: { line: {}, stand: {}, gate: {} } } }
route:
  - { step: fit, at: line, crew: { fitters: 2 }, work: 10 min, creates: { crack: { usual: 100 % } } }
  - { step: test, at: stand, crew: { testers: 1 }, work: 5 min, fails: { chance: 99.9999999 %, back to: fit, limit: 2 } }
  - { step: last, at: gate, crew: { testers: 1, fitters: 1 }, work: 7 min, finds: { crack: { chance: 100 %, repair: 4 min } } }
`);
    expect(Array.from(played.seen.reworkMinutes)).toEqual([2 * 2 * 10 + 4, 2 * 5 + 4]);
  });

  it('counts a step done over at once', () => {
    const played = play(`
scenario: done over
programme: { arrivals: saturated, quantity: 1 }
sites: { hall: { crews: { fitters: 2 }, stations: { line: {} } } }
route: [{ step: fit, at: line, crew: { fitters: 2 }, work: 10 min, fails: { chance: 99.9999999 %, back to: fit, limit: 3 } }]
`);
    expect(Array.from(played.seen.reworkMinutes)).toEqual([60]);
  });
});
