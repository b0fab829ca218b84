import { describe, expect, it } from 'vitest';
import { kaplanMeier, lifetimeQuantile } from '../../../src/study/chances/kaplan-meier.js';
import { exponentialLifetime, leastMean, weibullLifetime } from '../../../src/study/chances/lifetimes.js';
import type { Span } from '../../../src/study/chances/spans.js';

const spans = (ended: readonly number[], cut: readonly number[]): Span[] => [
  ...ended.map((minutes) => ({ minutes, ended: true })),
  ...cut.map((minutes) => ({ minutes, ended: false })),
];

/** NIST/SEMATECH e-Handbook 8.2.2.1: ten failures in hours, ten more units still good at 500. */
const HANDBOOK = spans([54, 187, 216, 240, 244, 335, 361, 373, 375, 386], new Array(10).fill(500));
/** Invented: cut off in between and at the end, shape below 1. */
const MIXED = spans([310, 42, 1250, 95, 780, 33, 2210, 640, 150, 505, 88, 410, 27, 960], [1900, 1100, 230]);

describe('Weibull of spans of which some are cut off', () => {
  it('is that of the e-Handbook, 8.4.1.3: shape 1.7208, scale 606.5280, mean 540.737, AIC 154.27', () => {
    const fit = weibullLifetime(HANDBOOK, 0.95);
    expect(fit?.shape.value).toBeCloseTo(1.7208, 4);
    expect(fit?.scale.value).toBeCloseTo(606.528, 3);
    expect(fit?.mean.value).toBeCloseTo(540.737, 3);
    expect(fit?.logLikelihood).toBeCloseTo(-75.135, 3);
    expect(fit?.aic).toBeCloseTo(154.27, 2);
  });

  // R 4.2.2, survival 3.5.3: survreg(Surv(t, e) ~ 1, dist = 'weibull'), vcov, and the delta method for the mean.
  it.each([
    [
      HANDBOOK,
      {
        shape: [1.72079726081, 0.971266101959, 3.048745556789],
        scale: [606.527558004, 405.089293533, 908.134785321],
        mean: [540.73702547, 354.805828442, 824.102952306],
        logLikelihood: -75.1346181645,
      },
    ],
    [
      MIXED,
      {
        shape: [0.789877763187, 0.515387990879, 1.210557661061],
        scale: [721.241133801, 369.330709275, 1408.463363655],
        mean: [824.756320628, 409.565296704, 1660.841369838],
        logLikelihood: -106.333424918,
      },
    ],
  ])('has the estimates and intervals of R (case %#)', (of, { logLikelihood, ...known }) => {
    const fit = weibullLifetime(of, 0.95)!;
    for (const key of ['shape', 'scale', 'mean'] as const) {
      const { value, low, high } = fit[key];
      [value, low, high].forEach((each, i) => expect(each / known[key][i]!).toBeCloseTo(1, 6));
    }
    expect(fit.logLikelihood).toBeCloseTo(logLikelihood, 7);
  });

  it('does not care for the unit of time', () => {
    const hours = weibullLifetime(MIXED, 0.95)!,
      seconds = weibullLifetime(
        MIXED.map((span) => ({ ...span, minutes: span.minutes * 3600 })),
        0.95,
      )!;
    expect(seconds.shape.value).toBeCloseTo(hours.shape.value, 9);
    expect(seconds.mean.high / hours.mean.high).toBeCloseTo(3600, 5);
  });

  it('is none of a single end, nor of spans that are all the same', () => {
    expect(weibullLifetime(spans([40], [90, 90]), 0.95)).toBeNull();
    expect(weibullLifetime(spans([40, 40, 40], []), 0.95)).toBeNull();
  });
});

describe('exponential of spans of which some are cut off', () => {
  // R 4.2.2, survival 3.5.3, survreg(dist = 'exponential'); qchisq for the interval.
  it.each([
    [HANDBOOK, 777.1, -76.5556904222, 422.558431291, 1620.515143281],
    [MIXED, 766.428571429, -106.984381084, 456.797491298, 1401.894139698],
  ])('has the mean, likelihood and interval of R (case %#)', (of, mean, logLikelihood, low, high) => {
    const total = of.reduce((sum, { minutes }) => sum + minutes, 0),
      fit = exponentialLifetime(total, of.filter(({ ended }) => ended).length, true, 0.95);
    expect(fit.mean.value).toBeCloseTo(mean, 8);
    expect(fit.logLikelihood).toBeCloseTo(logLikelihood, 8);
    expect(fit.mean.low).toBeCloseTo(low, 6);
    expect(fit.mean.high).toBeCloseTo(high, 6);
  });

  it('has the exact interval where all ended: 2 T / chi-square of 2 r', () =>
    expect(exponentialLifetime(7771, 10, false, 0.95).mean.low).toBeCloseTo(454.848662561, 6)); // R, qchisq

  it('without an end is at least T / -ln(0.05): e-Handbook 8.4.5.1', () =>
    expect(leastMean(3000, 0.95)).toBeCloseTo(3000 / 2.995732274, 5));
});

describe('Kaplan-Meier', () => {
  /** Miller 1997, the maintained group of the leukaemia data (`aml` of R's survival). */
  const AML = spans([9, 13, 18, 23, 31, 34, 48], [13, 28, 45, 161]);

  it('is that of survfit, with Greenwood errors (R 4.2.2, survival 3.5.3)', () => {
    const known = [
      [9, 11, 1, 0.909090909091, 0.0866784172041],
      [13, 10, 1, 0.818181818182, 0.1162912998303],
      [18, 8, 1, 0.715909090909, 0.1396649705572],
      [23, 7, 1, 0.613636363636, 0.1526323310273],
      [31, 5, 1, 0.490909090909, 0.1641932672211],
      [34, 4, 1, 0.368181818182, 0.1626688858271],
      [48, 2, 1, 0.184090909091, 0.1534927457863],
    ];
    expect(
      kaplanMeier(AML).map(({ minutes, atRisk, ended, longer, standardError }) => [
        minutes,
        atRisk,
        ended,
        longer,
        standardError,
      ]),
    ).toEqual(known.map((row) => row.map((value) => expect.closeTo(value, 11))));
  });

  it('has the quantiles of survfit, halfway where a share is met exactly', () => {
    const at = (of: Span[]) => (p: number) => lifetimeQuantile(kaplanMeier(of), p);
    expect([0.1, 0.25, 0.5, 0.75, 0.9].map(at(AML))).toEqual([13, 18, 31, 48, null]);
    expect([0.25, 0.5, 0.9].map(at(spans([5, 10, 15, 20], [])))).toEqual([7.5, 12.5, 20]);
  });
});
