import { describe, expect, it } from 'vitest';
import { SHORT_EQUIPMENT } from '../../src/flow/floor/states.js';
import { expectAgreement, observations, perHour, SLOW } from './agree.js';
import { exponential } from './line.js';

/**
 * Bays with always a unit in each; each is without a hoist for a while (mean 1 / away), then wants one for a
 * while (mean 1 / lift). This is the repair of machines by a few people, a queue with a finite source, here
 * exact from the chain of births and deaths (Palm 1947; Gross & Harris, Fundamentals of Queueing Theory, on
 * finite-source queues; from memory).
 */
function finiteSource(bays: number, hoists: number, away: number, lift: number) {
  const weights = [1];
  for (let k = 1; k <= bays; k++)
    weights.push((weights[k - 1] * (bays - k + 1) * away) / (Math.min(k, hoists) * lift));
  const total = weights.reduce((a, b) => a + b, 0),
    mean = (of: (k: number) => number): number =>
      weights.reduce((sum, weight, k) => sum + (weight / total) * of(k), 0);
  return {
    /** Of the hoists, and bays that wait for one, on average. */
    inUse: mean((k) => Math.min(k, hoists)),
    waiting: mean((k) => Math.max(0, k - hoists)),
  };
}

/** Three bays at which more units arrive than they can do, each for one of them: nobody is ever without one. */
const bays = (hoists: number, steps: (bay: string) => string): string => `
scenario: shared hoist
programme:
  arrivals: { exponential: { mean: 0.3 h } }
  length: 12000 h
  warm up: 1000 h
  options: { bay: { a: 33.34 %, b: 33.33 %, c: 33.33 % } }
sites:
  hall:
    equipment: { hoist: ${hoists} }
    stations: { a: { buffer: unlimited }, b: { buffer: unlimited }, c: { buffer: unlimited } }
route:
${['a', 'b', 'c'].map(steps).join('\n')}
`;

/** In a place, work without the hoist of 1 h and then, without a move, work with it of 0.5 h; means. */
const wholeSteps = (bay: string): string => `
  - { step: prepare ${bay}, at: ${bay}, when: { bay: ${bay} }, work: ${exponential(1)} }
  - { step: lift ${bay}, at: ${bay}, when: { bay: ${bay} }, work: ${exponential(0.5)}, equipment: { hoist: 1 } }`;
/**
 * Work of 1 h with the hoist for the first (last) 0.5 h of it. Both exponential, so what is left of the one
 * when the other is over is as from its beginning: the hoist is given back (wanted again) at the same rates
 * as above. It is with a unit at rate 1 + 2 in all, since the work may be over first.
 */
const partSteps =
  (part: string) =>
  (bay: string): string =>
    `
  - { step: work ${bay}, at: ${bay}, when: { bay: ${bay} }, work: ${exponential(1)}, equipment: { hoist: { ${part}: ${exponential(0.5)} } } }`;

describe('a hoist that three bays share, against the queue with a finite source', SLOW, () => {
  it('has by hand, for one hoist and equal times, 3, 6 and 6 of 16 in the queue', () => {
    // 1, 3, 6, 6 by the number that want it: 15 of 16 of its time in use; (6 + 12) / 16 wait.
    const { inUse, waiting } = finiteSource(3, 1, 1, 1);
    expect([inUse, waiting]).toEqual([15 / 16, 18 / 16]);
  });

  it.each([
    ['one hoist, for the whole step', 1, wholeSteps],
    ['two hoists, for the whole step', 2, wholeSteps],
    ['one hoist, for the first part of the work', 1, partSteps('first')],
    ['one hoist, for the last part of the work', 1, partSteps('last')],
    ['two hoists, for the last part of the work', 2, partSteps('last')],
  ])('%s', (_, hoists, steps) => {
    const { inUse, waiting } = finiteSource(3, hoists, 1, 2),
      seen = observations(bays(hoists, steps), { replications: 40 });
    expectAgreement(
      seen.map(({ equipment: { used, there } }) => used[0] / there[0]),
      inUse / hoists,
      0.01,
    );
    expectAgreement(
      seen.map(({ equipment: { waitMinutes }, minutes }) => waitMinutes[0] / minutes),
      waiting,
      0.01,
    );
    const shortIn = seen.map(({ stationShares }) => {
      const states = stationShares.length / 3;
      return [0, 1, 2].reduce((sum, bay) => sum + stationShares[bay * states + SHORT_EQUIPMENT], 0);
    });
    expectAgreement(shortIn, waiting, 0.01);
    // Units are done as often as hoists are given back or, with parts, wherever work goes on.
    expectAgreement(seen.map(perHour), steps === wholeSteps ? 2 * inUse : 3 - waiting, 0.01);
  });
});
