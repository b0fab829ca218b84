import { describe, expect, it } from 'vitest';
import { inTurn } from '../../../src/study/capacity/visits/in-turn.js';

/**
 * The same by an exact Markov chain: units of each kind since the last lot of the kind began, modulo n, and the
 * kind of the last lot; a unit is one step. Chances of pairs of kinds, by before * kinds + after.
 */
function byChain(shares: readonly number[], n: number): number[] {
  const kinds = shares.length,
    states = n ** kinds * kinds;
  let chance = new Float64Array(states).fill(1 / states),
    pairs = new Float64Array(kinds * kinds);
  for (let round = 0; round < 3000; round++) {
    const next = new Float64Array(states);
    pairs = new Float64Array(kinds * kinds);
    for (let state = 0; state < states; state++)
      shares.forEach((share, kind) => {
        const last = state % kinds,
          place = kinds * n ** kind,
          digit = Math.floor(state / place) % n,
          flow = chance[state] * share;
        // The n-th since the last that began a lot begins one.
        const begins = digit === n - 1;
        next[state + place * (begins ? 1 - n : 1) + (begins ? kind - last : 0)] += flow;
        if (begins) pairs[last * kinds + kind] += flow;
      });
    chance = next;
  }
  return Array.from(pairs, (flow) => flow * n);
}

describe('lots in turn', () => {
  it('of one unit follow each other as independent draws', () => {
    const shares = [0.5, 0.3, 0.2];
    inTurn(shares, 1).forEach((chance, at) => {
      expect(chance).toBeCloseTo(shares[Math.floor(at / 3)] * shares[at % 3], 6);
    });
  });

  it.each([
    [[0.5, 0.3, 0.2], 4],
    [[0.8, 0.2], 3],
    [[0.34, 0.33, 0.33], 2],
    [[0.4, 0.3, 0.2, 0.1], 3],
  ])('of kinds with shares %j, %i units each, have the chances of the exact chain', (shares, n) => {
    const chain = byChain(shares, n),
      got = [...inTurn(shares, n)];
    got.forEach((chance, at) => {
      expect(chance).toBeCloseTo(chain[at], 6);
    });
    expect(got.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 6);
  });

  it('of one kind follow each other always', () => {
    expect(inTurn([1], 4)[0]).toBeCloseTo(1, 6);
  });
});
