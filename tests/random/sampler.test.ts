import { describe, expect, it } from 'vitest';
import { type Draw, Sampler } from '../../src/random/sampler.js';

const paint: Draw = { name: 'prime/work', distribution: { kind: 'lognormal', mu: 3, sigma: 0.3 } };
const cure: Draw = { name: 'prime/settle', distribution: { kind: 'pert', low: 6, likely: 8, high: 14 } };
const trim: Draw = { name: 'trim/work', distribution: { kind: 'gamma', shape: 0.7, scale: 9 } };
const test: Draw = { name: 'road test/fail', distribution: { kind: 'uniform', low: 0, high: 1 } };

/** More than two blocks, so that refills are met. */
const take = (sampler: Sampler, i: number, count = 150) =>
  Array.from({ length: count }, () => sampler.next(i));

describe('the values of a draw', () => {
  const alone = take(new Sampler([paint], 'seed', 4), 0);

  it('are the same again from the same seed, replication and name', () => {
    expect(take(new Sampler([paint], 'seed', 4), 0)).toEqual(alone);
  });

  it('are the ones recorded from this code at version 0.1, so that old results can be made again', () => {
    expect(alone.slice(0, 3)).toEqual([20.145087512436838, 17.968517717950746, 32.07849000808312]);
  });

  it('do not change when draws are added, taken away or reordered', () => {
    expect(take(new Sampler([cure, trim, paint, test], 'seed', 4), 2)).toEqual(alone);
    expect(take(new Sampler([test, paint], 'seed', 4), 1)).toEqual(alone);
  });

  it('do not change with the turn in which other draws are used', () => {
    const sampler = new Sampler([trim, paint, cure], 'seed', 4);
    const mixed = alone.map((_, k) => {
      for (let n = 0; n < k % 3; n++) sampler.next(0);
      sampler.next(2);
      return sampler.next(1);
    });
    expect(mixed).toEqual(alone);
  });

  it('use the same luck when a parameter changes: a wider lognormal ranks the same', () => {
    const wider: Draw = { ...paint, distribution: { kind: 'lognormal', mu: 3, sigma: 0.6 } };
    const other = take(new Sampler([wider], 'seed', 4), 0);
    alone.forEach((value, k) => {
      expect((Math.log(other[k]) - 3) / 2).toBeCloseTo(Math.log(value) - 3, 12);
    });
  });

  it('differ by seed, by replication and by name', () => {
    expect(take(new Sampler([paint], 'seed 2', 4), 0)).not.toEqual(alone);
    expect(take(new Sampler([paint], 'seed', 5), 0)).not.toEqual(alone);
    expect(take(new Sampler([{ ...paint, name: 'prime/rework' }], 'seed', 4), 0)).not.toEqual(alone);
  });
});

describe('a sampler set to another replication', () => {
  it('gives what a new one gives, from the beginning of every stream', () => {
    const used = new Sampler([paint, cure, trim], 'seed', 1);
    take(used, 0, 70);
    take(used, 2, 3);
    used.reset(9);
    const fresh = new Sampler([paint, cure, trim], 'seed', 9);
    for (let i = 0; i < 3; i++) expect(take(used, i)).toEqual(take(fresh, i));
  });
});

describe('a sampler refuses', () => {
  it('two draws of one name', () => {
    expect(() => new Sampler([paint, cure, paint], 's', 1)).toThrow(
      new RangeError('draws: expected names that differ, got "prime/work" twice'),
    );
  });

  it('a distribution without a meaning, naming the draw', () => {
    const bad: Draw = { name: 'trim/work', distribution: { kind: 'pert', low: 5, likely: 9, high: 7 } };
    expect(() => new Sampler([bad], 's', 1)).toThrow(
      new RangeError('draw "trim/work": pert likely: expected at most high (7), got 9'),
    );
  });
});

describe('a draw whose distribution changes', () => {
  const wider: Draw = { ...paint, distribution: { kind: 'lognormal', mu: 3.5, sigma: 0.6 } },
    before = take(new Sampler([paint], 'seed', 4), 0),
    after = take(new Sampler([wider], 'seed', 4), 0);

  it.each([0, 1, 40, 63, 64, 65, 127, 128, 129])(
    'gives after %i values those that stand there in the stream of the new one',
    (count) => {
      const sampler = new Sampler([trim, paint, cure], 'seed', 4, true),
        first = take(sampler, 1, count);
      sampler.change(1, wider.distribution);
      expect([...first, ...take(sampler, 1, 150 - count)]).toEqual([
        ...before.slice(0, count),
        ...after.slice(count),
      ]);
      expect(take(sampler, 2)).toEqual(take(new Sampler([cure], 'seed', 4), 0));
    },
  );

  it('is the old one again where it changes back, several times in a block', () => {
    const sampler = new Sampler([paint], 'seed', 4, true),
      got = Array.from({ length: 60 }, (_, k) => {
        sampler.change(0, (k % 2 === 0 ? paint : wider).distribution);
        return sampler.next(0);
      });
    expect(got).toEqual(got.map((_, k) => (k % 2 === 0 ? before : after)[k]));
  });
});
