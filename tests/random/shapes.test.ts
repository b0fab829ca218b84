import { describe, expect, it } from 'vitest';
import { meanOf, varianceOf } from '../../src/random/distribution.js';
import { erlangOf, gammaOf, lognormalOf, weibullOf } from '../../src/random/shapes.js';

const builders = { lognormalOf, gammaOf, weibullOf };

describe.each(Object.entries(builders))('%s', (name, build) => {
  it.each([0.01, 0.1, 0.3, 1, 2.5])('keeps the mean of 42 and a cv of %d', (cv) => {
    const d = build(42, cv);
    expect(meanOf(d)).toBeCloseTo(42, 9);
    expect(Math.sqrt(varianceOf(d)) / 42 / cv).toBeCloseTo(1, 9);
  });

  it('is a constant at cv 0', () => {
    expect(build(42, 0)).toEqual({ kind: 'constant', value: 42 });
  });

  it('refuses a mean that is not above 0 and a cv below 0, by name and value', () => {
    const kind = name.slice(0, -2);
    expect(() => build(0, 0.3)).toThrow(
      new RangeError(`${kind} mean: expected a finite number above 0, got 0`),
    );
    expect(() => build(NaN, 0.3)).toThrow(
      new RangeError(`${kind} mean: expected a finite number above 0, got NaN`),
    );
    expect(() => build(42, -0.1)).toThrow(
      new RangeError(`${kind} cv: expected a finite number of 0 or more, got -0.1`),
    );
  });
});

describe('weibullOf', () => {
  it('finds the shapes with a closed form: exponential at cv 1, Rayleigh at √(4/π - 1), 1/2 at √5', () => {
    const shape = (cv: number) => {
      const d = weibullOf(1, cv);
      return d.kind === 'weibull' ? d.shape : NaN;
    };
    expect(shape(1)).toBeCloseTo(1, 10);
    expect(shape(Math.sqrt(4 / Math.PI - 1))).toBeCloseTo(2, 10);
    expect(shape(Math.sqrt(5))).toBeCloseTo(0.5, 10);
  });
});

describe('lognormalOf', () => {
  it('gives the parameters of the yardstick model: mean 1, cv 0.3 has sigma² = ln 1.09', () => {
    expect(lognormalOf(1, 0.3)).toEqual({
      kind: 'lognormal',
      mu: -Math.log1p(0.3 * 0.3) / 2,
      sigma: Math.sqrt(Math.log1p(0.3 * 0.3)),
    });
  });
});

describe('erlangOf', () => {
  it('is a gamma of whole shape with cv 1/√phases', () => {
    expect(erlangOf(12, 4)).toEqual({ kind: 'gamma', shape: 4, scale: 3 });
    expect(Math.sqrt(varianceOf(erlangOf(12, 4))) / 12).toBeCloseTo(0.5, 12);
  });

  it('refuses a part of a phase', () => {
    expect(() => erlangOf(12, 2.5)).toThrow(
      new RangeError(
        'erlang phases: expected a whole number of at least 1 (gamma takes other spreads), got 2.5',
      ),
    );
  });
});
