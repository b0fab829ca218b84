import { describe, expect, it } from 'vitest';
import { fillUniform, nextUniform, nextWord, seedStream, streamName } from '../../src/random/streams.js';

function uniforms(name: string, count: number): Float64Array {
  const state = new Int32Array(4);
  seedStream(state, 0, name);
  const out = new Float64Array(count);
  fillUniform(out, 0, count, state, 0);
  return out;
}

function correlation(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += (a[k] - 0.5) * (b[k] - 0.5);
  return (12 * sum) / a.length;
}

describe('a stream name', () => {
  it('is seed, replication, thing and purpose', () => {
    expect(streamName('7', 3, 'prime/work')).toBe('7/3/prime/work');
  });
});

describe('a word of sfc32', () => {
  it('follows the published recurrence from a state set by hand', () => {
    // Worked by hand from C. Doty-Humphrey's definition: out = a + b + d; a' = b ^ b>>>9; b' = c + (c<<3);
    // c' = rotl(c, 21) + out; d' = d + 1.
    const state = Int32Array.of(1, 512, 3, 4);
    expect(nextWord(state, 0)).toBe(517);
    expect([...state]).toEqual([513, 27, 6_291_456 + 517, 5]);
  });
});

describe('uniforms', () => {
  it('are the same in a block as one by one', () => {
    const state = new Int32Array(8);
    seedStream(state, 4, 'a/1/b/c');
    expect([...uniforms('a/1/b/c', 100)]).toEqual(Array.from({ length: 100 }, () => nextUniform(state, 4)));
  });

  it('stay off 0 and 1 at the ends of the words', () => {
    expect(nextUniform(Int32Array.of(0, 0, 0, 0), 0)).toBe(2 ** -33);
    expect(nextUniform(Int32Array.of(-1, 0, 0, 0), 0)).toBe(1 - 2 ** -33);
  });

  it('fill 256 cells evenly by a chi-square test, 400,000 values', () => {
    const cells = new Float64Array(256);
    for (const u of uniforms('tests/cells', 400_000)) cells[Math.floor(u * 256)]++;
    const wanted = 400_000 / 256;
    const chi = cells.reduce((sum, seen) => sum + (seen - wanted) ** 2 / wanted, 0);
    // 255 degrees of freedom: mean 255, standard deviation √510; 4 of them on either side.
    expect(Math.abs(chi - 255)).toBeLessThan(4 * Math.sqrt(510));
  });

  it('fill a 16 by 16 board of successive pairs evenly', () => {
    const values = uniforms('tests/pairs', 400_000);
    const cells = new Float64Array(256);
    for (let k = 0; k < values.length; k += 2)
      cells[Math.floor(values[k] * 16) * 16 + Math.floor(values[k + 1] * 16)]++;
    const wanted = 200_000 / 256;
    const chi = cells.reduce((sum, seen) => sum + (seen - wanted) ** 2 / wanted, 0);
    expect(Math.abs(chi - 255)).toBeLessThan(4 * Math.sqrt(510));
  });

  it('pass the Kolmogorov-Smirnov test, 100,000 values', () => {
    const sorted = uniforms('tests/ks', 100_000).sort();
    let gap = 0;
    sorted.forEach((u, k) => (gap = Math.max(gap, u - k / sorted.length, (k + 1) / sorted.length - u)));
    // Kolmogorov 1933: P(√n gap > 1.95) = 0.001.
    expect(gap * Math.sqrt(sorted.length)).toBeLessThan(1.95);
  });

  it('set each of the 32 bits of a word half of the time', () => {
    const state = new Int32Array(4);
    seedStream(state, 0, 'tests/bits');
    const set = new Float64Array(32);
    for (let k = 0; k < 100_000; k++) {
      const word = nextWord(state, 0);
      for (let bit = 0; bit < 32; bit++) set[bit] += (word >>> bit) & 1;
    }
    for (const count of set) expect(Math.abs(count - 50_000)).toBeLessThan(4 * Math.sqrt(25_000));
  });
});

describe('streams of like names', () => {
  const names = [
    '1/1/a/work',
    '1/1/b/work',
    '1/2/a/work',
    '2/1/a/work',
    '1/1/a/fail',
    '1/11/a/work',
    '1/1/aa/work',
  ];

  it('are uncorrelated with one another, also shifted by one', () => {
    const count = 20_000;
    const values = names.map((name) => uniforms(name, count + 1));
    for (let i = 0; i < names.length; i++) {
      for (let j = 0; j < i; j++) {
        expect(
          Math.abs(correlation(values[i].subarray(0, count), values[j].subarray(0, count))),
        ).toBeLessThan(4 / Math.sqrt(count));
        expect(Math.abs(correlation(values[i].subarray(1), values[j].subarray(0, count)))).toBeLessThan(
          4 / Math.sqrt(count),
        );
      }
    }
  });

  it('begin evenly: the first values of 20,000 replications pass a chi-square test and are uncorrelated in turn', () => {
    const count = 20_000;
    const first = Float64Array.from(
      { length: count },
      (_, k) => uniforms(streamName('1', k, 'a/work'), 1)[0],
    );
    const cells = new Float64Array(64);
    for (const u of first) cells[Math.floor(u * 64)]++;
    const chi = cells.reduce((sum, seen) => sum + (seen - count / 64) ** 2 / (count / 64), 0);
    expect(Math.abs(chi - 63)).toBeLessThan(4 * Math.sqrt(126));
    expect(Math.abs(correlation(first.subarray(1), first.subarray(0, count - 1)))).toBeLessThan(
      4 / Math.sqrt(count),
    );
  });

  it('never begin in the same state, over 20,000 names', () => {
    const states = new Set<string>();
    const state = new Int32Array(4);
    for (let k = 0; k < 20_000; k++) {
      seedStream(state, 0, streamName('1', k % 100, `station ${Math.floor(k / 100)}/work`));
      states.add(state.join());
    }
    expect(states.size).toBe(20_000);
  });
});
