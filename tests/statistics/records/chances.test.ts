import { describe, expect, it } from 'vitest';
import { fillUniform, STATE_WORDS, seedStream, streamName } from '../../../src/random/streams.js';
import { type CountRow, fitChance } from '../../../src/study/chances/chance.js';
import { fitLearning } from '../../../src/study/chances/learning.js';
import { spansOf } from '../../../src/study/chances/spans.js';
import { fitStops } from '../../../src/study/chances/stops.js';
import { inTurn } from '../../../src/study/chances/two-looks.js';
import { normalQuantile, proportion } from '../../../src/study/statistics/proportion.js';

const SLOW = { timeout: 600_000 };

/** The share held by an interval that holds 95 % has a standard deviation of 0.69 points in 1,000 samples. */
const SAMPLES = 1000;

/** Numbers between 0 and 1, one after another. */
function uniforms(name: string): () => number {
  const state = new Int32Array(STATE_WORDS),
    shares = new Float64Array(1);
  seedStream(state, 0, streamName('chances', 1, name));
  return () => {
    fillUniform(shares, 0, 1, state, 0);
    return shares[0]!;
  };
}

const shareOf = (sample: () => boolean): number => {
  let count = 0;
  for (let i = 0; i < SAMPLES; i++) if (sample()) count++;
  return count / SAMPLES;
};

const holds = ({ low, high }: { readonly low: number; readonly high: number }, truth: number): boolean =>
  low <= truth && truth <= high;

const binomial = (draw: () => number, n: number, p: number): number => {
  let count = 0;
  for (let i = 0; i < n; i++) if (draw() < p) count++;
  return count;
};

describe('Wilson intervals of chances', SLOW, () => {
  // By the binomial distribution, not by lot. For a single chance the share swings about 95 % (Brown, Cai &
  // DasGupta 2001, Statist. Sci. 16(2), 101-133), so it is the mean over chances from 2 % to 50 % that counts.
  it.each([20, 50, 120, 400])('of %d units hold 93 to 97 % on average over chances', (n) => {
    const chances = Array.from({ length: 481 }, (_, i) => 0.02 + i / 1000),
      held = chances.map((p) => {
        let [sum, each] = [0, (1 - p) ** n];
        for (let k = 0; k <= n; each *= ((n - k) / (k + 1)) * (p / (1 - p)), k++)
          if (holds(proportion(k, n, 0.95), p)) sum += each;
        return sum;
      }),
      mean = held.reduce((a, b) => a + b, 0) / held.length;
    expect(mean).toBeGreaterThan(0.93);
    expect(mean).toBeLessThan(0.97);
  });
});

describe('whether options matter', SLOW, () => {
  const sample = (draw: () => number, chance: (red: boolean) => number): CountRow[] =>
    Array.from({ length: 8 }, (_, i) => {
      const options = {
          colour: i & 1 ? 'red' : 'white',
          cab: i & 2 ? 'long' : 'short',
          stripe: i & 4 ? 'yes' : 'no',
        },
        units = 40;
      return { units, found: binomial(draw, units, chance(options.colour === 'red')), options };
    });

  it('cries wolf in no more than 5 % where none of three does', () => {
    const draw = uniforms('none matters');
    expect(shareOf(() => fitChance(sample(draw, () => 0.1)).by !== null)).toBeLessThan(0.05);
  });

  it('cries wolf in no more than 6 % over 40 values of 3 units each', () => {
    const draw = uniforms('many values');
    let cried = 0;
    for (let i = 0; i < 300; i++) {
      const rows = Array.from({ length: 40 }, (_, v) => ({
        units: 3,
        found: binomial(draw, 3, 0.15),
        options: { batch: `${v}` },
      }));
      if (fitChance(rows).by !== null) cried++;
    }
    expect(cried / 300).toBeLessThan(0.06 + 0.02); // a standard deviation of 1.3 points
  });

  it('names the right one in 90 % where red units have 20 % and others 5 %', () => {
    const draw = uniforms('colour matters');
    expect(
      shareOf(() => fitChance(sample(draw, (red) => (red ? 0.2 : 0.05))).by?.option === 'colour'),
    ).toBeGreaterThan(0.9);
  });
});

describe('two inspections in a row', SLOW, () => {
  it('hold how many have it, and the detection of the first, in 93 to 97 %', () => {
    const draw = uniforms('two looks');
    let [made, detection] = [0, 0];
    for (let i = 0; i < SAMPLES; i++) {
      const first = binomial(draw, 600, 0.2 * 0.75),
        second = binomial(draw, 600 - first, (0.2 * 0.25 * 0.75) / (1 - 0.2 * 0.75)),
        fit = inTurn({ units: 600, first, second }, 'the same share');
      if (fit.made !== null && holds(fit.made, 0.2)) made++;
      if (fit.detection !== null && holds(fit.detection, 0.75)) detection++;
    }
    for (const held of [made / SAMPLES, detection / SAMPLES]) {
      expect(held).toBeGreaterThan(0.93);
      expect(held).toBeLessThan(0.97);
    }
  });
});

describe('learning', SLOW, () => {
  const times = (draw: () => number, n: number, at: (unit: number) => number, scatter: number) =>
    Array.from({ length: n }, (_, i) => ({
      unit: i + 1,
      minutes: at(i + 1) * Math.exp(scatter * normalQuantile(draw())),
    }));

  it.each([
    [40, 0.85, 0.15],
    [25, 0.95, 0.25],
    [100, 0.9, 0.3],
  ])(
    'of %d times and a rate of %d, scatter %d, is held in 93 to 97 %%, with a floor in 3 %% at most',
    (...one) => {
      const [n, rate, scatter] = one,
        draw = uniforms(`learning ${n}`);
      let floors = 0;
      const held = shareOf(() => {
        const fit = fitLearning(times(draw, n, (unit) => 200 * unit ** Math.log2(rate), scatter));
        if (fit.floor !== null) floors++;
        return holds(fit.rate!, rate);
      });
      expect(held).toBeGreaterThan(0.93);
      expect(held).toBeLessThan(0.97);
      expect(floors / SAMPLES).toBeLessThan(0.03);
    },
  );

  it('is seen in no more than 4 % of samples without it', () => {
    const draw = uniforms('no learning');
    expect(shareOf(() => fitLearning(times(draw, 60, () => 90, 0.25)).learns)).toBeLessThan(0.04);
  });

  it('has a floor in 85 % where times are flat from the 8th of 80 units on', () => {
    const draw = uniforms('floor'),
      at = (unit: number): number => 200 * Math.max(8 ** Math.log2(0.8), unit ** Math.log2(0.8));
    expect(shareOf(() => fitLearning(times(draw, 80, at, 0.15)).floor !== null)).toBeGreaterThan(0.85);
  });
});

describe('stops', SLOW, () => {
  /** Watched for so long; times to failure by the inverse of their distribution, repairs of 10 to 50 minutes. */
  const watched = (draw: () => number, long: number, toFailure: (share: number) => number) => {
    const stops: { from: number; to: number }[] = [];
    // The watch begins somewhere in the life of the station.
    for (let at = -long * draw(); at < long; ) {
      const from = at + toFailure(draw());
      at = from + 10 + 40 * draw();
      stops.push({ from, to: at });
    }
    return spansOf([{ from: 0, to: long, stops }]);
  };
  const exponential = (share: number): number => -600 * Math.log(1 - share),
    weibull = (share: number): number => 677.03 * (-Math.log(1 - share)) ** (1 / 2); // mean 600

  it.each([
    ['exponential', 15000, exponential],
    ['exponential', 4000, exponential],
    ['Weibull of shape 2', 20000, weibull],
  ] as const)(
    'of %s times to failure, watched for %d minutes, hold the mean in 93 to 97 %%',
    (_, long, draws) => {
      const draw = uniforms(`stops ${long}`),
        held = shareOf(() => {
          const { mean, atLeast } = fitStops(watched(draw, long, draws)).toFailure;
          return mean === null ? (atLeast ?? Infinity) <= 600 : holds(mean, 600);
        });
      expect(held).toBeGreaterThan(0.93);
      expect(held).toBeLessThan(0.97);
    },
  );

  it('choose the Weibull in 90 % of 25 or so failures of shape 2, in no more than 20 % of ageless ones', () => {
    const draw = uniforms('kinds'),
      chosen = (draws: (share: number) => number): number =>
        shareOf(() => fitStops(watched(draw, 15000, draws)).toFailure.chosen === 'weibull');
    expect(chosen(weibull)).toBeGreaterThan(0.9);
    expect(chosen(exponential)).toBeLessThan(0.2);
  });
});
