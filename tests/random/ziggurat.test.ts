import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { describe, expect, it } from 'vitest';
import { seedStream } from '../../src/random/streams.js';
import { fillNormal, nextNormal } from '../../src/random/ziggurat.js';
import { expectMoments, expectQuantiles, expectShare } from './sampled.js';

const COUNT = 400_000;
/** P(|Z| > z), from memory, as in any table of the normal law. */
const BEYOND: [number, number][] = [
  [1, 0.3173105078629142],
  [2, 0.04550026389635842],
  [3, 0.0026997960632601866],
  [4, 6.334248366623996e-5],
];

function normals(way: 'block' | 'single'): Float64Array {
  const state = new Int32Array(4);
  seedStream(state, 0, `tests/ziggurat/${way}`);
  const out = new Float64Array(COUNT);
  if (way === 'block') fillNormal(out, 0, COUNT, state, 0);
  else for (let k = 0; k < COUNT; k++) out[k] = nextNormal(state, 0);
  return out;
}

describe.each(['block', 'single'] as const)('standard normals, %s', (way) => {
  const values = normals(way);

  it('have mean 0 and variance 1', () => {
    expectMoments(values, 0, 1);
  });

  it('have skewness 0 and kurtosis 3, within 4 of the errors √(15/n) and √(96/n)', () => {
    const third = values.reduce((sum, z) => sum + z ** 3, 0) / COUNT;
    const fourth = values.reduce((sum, z) => sum + z ** 4, 0) / COUNT;
    expect(Math.abs(third)).toBeLessThan(4 * Math.sqrt(15 / COUNT));
    expect(Math.abs(fourth - 3)).toBeLessThan(4 * Math.sqrt(96 / COUNT));
  });

  it('have the quantiles of the normal law', () => {
    expectQuantiles(values, (p) => normalQuantile(p, 0, 1));
  });

  it.each(BEYOND)('lie beyond %d sd as often as the normal law says, equally on both sides', (z, chance) => {
    const above = values.filter((value) => value > z).length / COUNT;
    const below = values.filter((value) => value < -z).length / COUNT;
    expectShare(above + below, chance, COUNT);
    expectShare(above, chance / 2, COUNT);
  });

  it('do not depend on the one before: lag 1 correlation of values and of squares', () => {
    const lag = (f: (z: number) => number) => {
      let sum = 0;
      for (let k = 1; k < COUNT; k++) sum += f(values[k]) * f(values[k - 1]);
      return sum / COUNT;
    };
    expect(Math.abs(lag((z) => z))).toBeLessThan(4 / Math.sqrt(COUNT));
    // z² - 1 has variance 2, so the product of two has a standard deviation of 2.
    expect(Math.abs(lag((z) => z * z - 1))).toBeLessThan(8 / Math.sqrt(COUNT));
  });
});

describe('eight million standard normals', () => {
  const count = 8_000_000;
  const cells = new Float64Array(402);
  let beyond = 0;
  let excess = 0;
  const state = new Int32Array(4);
  seedStream(state, 0, 'tests/ziggurat/many');
  const block = new Float64Array(8000);
  for (let n = 0; n < count; n += block.length) {
    fillNormal(block, 0, block.length, state, 0);
    for (let k = 0; k < block.length; k++) {
      const z = block[k];
      cells[Math.min(401, Math.max(0, Math.floor((z + 4) * 50) + 1))]++;
      if (Math.abs(z) > 3.5) {
        beyond++;
        excess += Math.abs(z) - 3.5;
      }
    }
  }

  it('show no ripple at the layer edges: 400 cells from -4 to 4 pass a chi-square test', () => {
    const density = (x: number) => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
    let chi = 0;
    for (let k = 1; k <= 400; k++) {
      const low = (k - 1) / 50 - 4;
      // Simpson's rule over the cell: its error, 1e-9 of the count, does not matter.
      const wanted = (count * 0.02 * (density(low) + 4 * density(low + 0.01) + density(low + 0.02))) / 6;
      chi += (cells[k] - wanted) ** 2 / wanted;
    }
    // Mean 400, standard deviation √800; 4 of them on either side.
    expect(Math.abs(chi - 400)).toBeLessThan(4 * Math.sqrt(800));
  });

  it('fall off in the tail as the law does: share and mean excess beyond 3.5 sd, in the part made apart', () => {
    // Q(3.5) from memory; mean excess φ(a) / Q(a) - a; its spread is below 1/a, that of an exponential tail.
    const upper = 2.32629079035525e-4;
    expectShare(beyond / count, 2 * upper, count);
    const wanted = Math.exp(-0.5 * 3.5 ** 2) / Math.sqrt(2 * Math.PI) / upper - 3.5;
    expect(Math.abs(excess / beyond - wanted)).toBeLessThan(4 / 3.5 / Math.sqrt(beyond));
  });
});
