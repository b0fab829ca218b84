import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spansOf } from '../../../src/study/chances/spans.js';
import { fitSpans, fitStops } from '../../../src/study/chances/stops.js';

const stop = (from: number, to: number) => ({ from, to });

describe('spans of a stop log', () => {
  it('run from a repair to the next failure; the last is cut by the end of the watch', () => {
    const { up, down, running, failures, headless } = spansOf([
      { from: 0, to: 1000, stops: [stop(700, 730), stop(200, 260)] },
    ]);
    expect(up).toEqual([
      { minutes: 440, ended: true },
      { minutes: 270, ended: false },
    ]);
    expect(down).toEqual([
      { minutes: 60, ended: true },
      { minutes: 30, ended: true },
    ]);
    expect([running, failures, headless]).toEqual([910, 2, 1]);
  });

  it('begin with the watch where it begins with a new machine', () =>
    expect(spansOf([{ from: 0, to: 100, stops: [stop(40, 50)], fresh: true }]).up[0]).toEqual({
      minutes: 40,
      ended: true,
    }));

  it('are cut where a repair goes on at the end, and have no repair that began before the watch', () => {
    const { up, down, before, failures } = spansOf([
      { from: 100, to: 500, stops: [stop(80, 130), stop(450, Infinity)] },
    ]);
    expect(up).toEqual([{ minutes: 320, ended: true }]);
    expect(down).toEqual([{ minutes: 50, ended: false }]);
    expect([before, failures]).toEqual([1, 1]);
  });

  it('count stops that overlap as one, and those outside the watch as none; each is told', () => {
    const spans = spansOf([
      {
        from: 0,
        to: 900,
        stops: [stop(100, 150), stop(140, 200), stop(200, 220), stop(950, 960), stop(8, 4)],
      },
    ]);
    expect(spans).toMatchObject({ failures: 1, joined: 2, outside: 2 });
    expect(spans.down).toEqual([{ minutes: 120, ended: true }]);
    expect(fitStops(spans).told).toEqual([
      '1 failure in 13 h of running.',
      '1 time to a first failure began before the watch: counted as running time only.',
      '2 stops overlapping or touching another: taken as one with it.',
      '2 stops outside the watch or ending before it begins: left out.',
    ]);
  });

  it('count the minutes that they are told to count, in operation or in the hours of repairs', () => {
    const day = (from: number, to: number): number => Math.max(0, Math.min(to, 480) - Math.max(from, 0));
    const { up, down, empty } = spansOf(
      [{ from: 0, to: 2000, stops: [stop(100, 110), stop(300, 600), stop(700, 710)] }],
      day,
      day,
    );
    expect(up).toEqual([{ minutes: 190, ended: true }]);
    expect(down).toEqual([
      { minutes: 10, ended: true },
      { minutes: 180, ended: true },
    ]);
    expect(empty).toBe(2);
  });

  it('add up to the watch: running and stopped', () => {
    const stops = fc.array(fc.tuple(fc.nat(1200), fc.nat(90)), { maxLength: 12 });
    fc.assert(
      fc.property(stops, (list) => {
        const { up, down, running, headless } = spansOf([
            { from: 0, to: 1000, stops: list.map(([from, long]) => stop(from + 1, from + 1 + long)) },
          ]),
          down_ = down.reduce((sum, { minutes }) => sum + minutes, 0),
          up_ = up.reduce((sum, { minutes }) => sum + minutes, 0);
        expect(running + down_).toBe(1000);
        expect(up_).toBeLessThanOrEqual(running);
        expect(up_ === running).toBe(headless === 0 && up_ > 0);
      }),
    );
  });
});

describe('what stops say', () => {
  it('is a least mean where nothing failed', () => {
    const { toFailure, toRepair } = fitStops(spansOf([{ from: 0, to: 60000, stops: [] }]));
    expect(toFailure).toMatchObject({
      chosen: 'nothing',
      distribution: null,
      atLeast: expect.closeTo(20028, 0),
    });
    expect(toFailure.told).toEqual([
      'No end in 1000 h: the mean time to failure is at least 334 h (95 % sure).',
    ]);
    expect(toRepair.told).toEqual(['Nothing tells the time to repair.']);
  });

  it('counts what ran before the first failure for the exponential mean', () => {
    const { toFailure } = fitStops(spansOf([{ from: 0, to: 1000, stops: [stop(200, 260), stop(700, 730)] }]));
    expect(toFailure.chosen).toBe('exponential');
    expect(toFailure.mean?.value).toBe(910 / 2);
    expect(toFailure.told[1]).toMatch(/^1 whole span tells no shape/);
  });

  it('is a constant where every repair took as long', () => {
    const { toRepair } = fitStops(spansOf([{ from: 0, to: 1000, stops: [stop(200, 230), stop(700, 730)] }]));
    expect(toRepair).toMatchObject({ chosen: 'constant', distribution: { kind: 'constant', value: 30 } });
    expect(toRepair.told).toEqual(['Time to repair was 30 min each of 2 times.']);
  });

  it('chooses the Weibull by AIC where wear shows, the exponential where it does not', () => {
    // Quantiles of a Weibull of shape 3, and of an exponential, at the middles of 20 equal parts.
    const parts = Array.from({ length: 20 }, (_, i) => -Math.log(1 - (i + 0.5) / 20)),
      spansOfShape = (shape: number) => parts.map((e) => ({ minutes: 600 * e ** (1 / shape), ended: true }));
    const worn = fitSpans(spansOfShape(3), 0.95, { what: 'time to failure' }),
      ageless = fitSpans(spansOfShape(1), 0.95, { what: 'time to failure' });
    expect(worn.chosen).toBe('weibull');
    expect(worn.weibull?.shape.value).toBeCloseTo(3, 0);
    expect(worn.told[1]).toMatch(/^Weibull by AIC, \d+\.\d below the exponential: shape 3\.\d\d/);
    expect(ageless.chosen).toBe('exponential');
    expect(ageless.told[1]).toMatch(/^Exponential by AIC, \d\.\d below the Weibull of shape/);
  });
});
