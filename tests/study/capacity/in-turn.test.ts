import { describe, expect, it } from 'vitest';
import { inTurn } from '../../../src/study/capacity/visits/in-turn.js';
import { lotChain } from './lot-chain.js';

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
    const chain = lotChain(shares, n),
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
