import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { type BufferOptions, buffersStudy } from '../../../src/study/buffers/buffers.js';
import { rateMeasure } from '../../../src/study/buffers/search/trial.js';
import { observation, shipping, twoPlants } from '../made-observation.js';
import { threeStations } from './buffers-line.js';

const study = (options: Partial<BufferOptions>) =>
  buffersStudy({
    scenario: threeStations('{ exponential: { mean: 1 h } }'),
    file: 'x/three.yaml',
    goal: { kind: 'budget', places: 2 },
    replications: 4,
    seed: 'a',
    workers: 1,
    looksAround: false,
    ...options,
  });
// Two hours at each station without chance: half a unit an hour, with and without places.
const even = threeStations('2 h');

describe('waiting places shared out', { timeout: 30_000 }, () => {
  it('are the same for any number of threads, and from one run to the next', async () => {
    const one = await study({ looksAround: true }),
      two = await study({ looksAround: true, workers: 2 });
    expect(two).toEqual(one);
    expect(one).toMatchObject({
      study: 'buffers',
      unit: 'units an hour',
      chosen: { total: 2, costPerDay: 24 },
      scenario: { file: 'three.yaml' },
    });
    expect(one.spots.map(({ name }) => name)).toEqual(['second', 'third']);
  });

  it('bring nothing to a line without chance: none are needed for its rate, and no number is enough for more', async () => {
    const none = await study({ scenario: even, goal: { kind: 'target', rate: 0.5 } });
    expect(none.answer.verdict).toBe('reached');
    expect(none.chosen).toMatchObject({ places: [0, 0], total: 0, rate: { mean: 0.5, low: null } });
    const more = await study({ scenario: even, goal: { kind: 'target', rate: 0.51 } });
    expect(more.answer).toMatchObject({
      verdict: 'out of reach',
      sentence: expect.stringMatching(
        /^0\.51 units an hour are out of reach of waiting places: arithmetic allows 0\.5 \(first\), unlimited places in 2 spots give 0\.5 /,
      ) as unknown,
    });
    expect(more.unlimited).toMatchObject({ rate: { mean: 0.5 }, exceeded: null });
    expect(more.bound).toEqual({ rate: 0.5, name: 'first', kind: 'station' });
  });

  it('are none where none brings anything, however many there may be and are', async () => {
    // Places are there, one at each, and ten more are allowed: without chance nothing ever waits for long.
    const found = await study({ scenario: even, goal: { kind: 'budget', places: 12 } });
    expect(found.chosen).toMatchObject({ places: [0, 0], total: 0, costPerDay: 0, rate: { mean: 0.5 } });
    expect(found.spots.map(({ chosen }) => chosen)).toEqual([0, 0]);
    // The best for the budget is what is there: of equal ones that stays.
    expect(found.best).toMatchObject({ places: [1, 1], standing: 'equal' });
    expect(found.more).toMatchObject({
      places: 2,
      isSettled: true,
      difference: { mean: 0, low: 0, high: 0 },
    });
    expect(found.answer.sentence).toBe(
      '0 places do as well as 2, the best found for up to 12, to within 1 %: they give 0.5 units an hour ' +
        '(the same in all 10 replications), 0 (always) against the 2 of the layout as it is. ' +
        '2 more would bring 0 (always).',
    );
    expect(found.curve.map(({ behind }) => behind)).toEqual(found.curve.map(() => 0));
  });

  it('are spread evenly where it makes no difference which spot has them', async () => {
    // None are there, and they bring nothing: twelve over two spots are six and six.
    const found = await study({
      scenario: threeStations('2 h', [0, 0]),
      goal: { kind: 'budget', places: 12 },
    });
    expect(found.curve.at(-1)?.places).toEqual([6, 6]);
    expect(found.chosen.places).toEqual([0, 0]);
    expect(found.best?.total).toBe(0);
    expect(found.more).toBeNull();
    expect(found.answer.sentence).toMatch(
      /^0 places give 0\.5 units an hour .*, which is the layout as it is\.$/,
    );
  });

  it('are all taken where fewer do not come within the zone, and the answer says so', async () => {
    // The exact chain (tests/statistics/exact-line.ts): 0.564 without a place, 0.613 with one (8.5 %
    // less than with two), 0.670 with two.
    const found = await study({});
    expect(found.chosen.total).toBe(2);
    expect(found.more).toBeNull();
    expect(found.best).toMatchObject({ total: 2, standing: 'chosen' });
    expect(found.answer.sentence).toMatch(
      /^2 places give 0\.6\d+ units an hour .* No layout found with fewer comes within 1 % of it\.$/,
    );
    // With a zone of 20 % none are needed: 0.564 is 15.9 % below 0.670.
    const wide = await study({ zone: 0.2 });
    expect(wide.chosen.total).toBe(0);
    expect(wide.more?.places).toBe(2);
    expect(wide.more?.difference.mean).toBeCloseTo(wide.best!.rate.mean - wide.chosen.rate.mean, 12);
  });

  it('are told from replications that the search has not seen, paired with the layout as it is', async () => {
    const found = await study({ scenario: threeStations('{ exponential: { mean: 1 h } }', [0, 0]) });
    expect(found.freshReplications).toBeGreaterThanOrEqual(10);
    expect(found.chosen.rate.n).toBe(found.freshReplications);
    expect(found.curve.map(({ total }) => total)).toEqual([0, 1, 2]);
    expect(found.curve[0].rate.n).toBe(4);
    expect(found.present.total).toBe(0);
    expect(found.gain.difference.mean).toBeCloseTo(found.chosen.rate.mean - found.present.rate.mean, 12);
    // Two spaces take a line of three from 0.564 towards 0.63 (the exact chain of
    // tests/statistics/exact-line.ts).
    expect(found.gain.difference.low).toBeGreaterThan(0);
  });

  it('can be taken away from the layout as it is', async () => {
    const found = await study({
      scenario: threeStations('{ exponential: { mean: 1 h } }', [3, 3]),
      from: 'present',
    });
    expect(found.chosen.total).toBe(2);
    expect(found.present.total).toBe(6);
    // All with fewer are tried, and are not enough.
    expect(found.curve.map(({ total }) => total)).toEqual([0, 1, 2]);
    expect(found.search).toEqual({ within: 6, fewer: 3 });
  });

  it('are refused with too few replications or a zone that is none', async () => {
    await expect(study({ replications: 2 })).rejects.toThrow(
      'replications: expected a whole number of at least 3, got 2',
    );
    await expect(study({ zone: 0 })).rejects.toThrow('zone: expected a share above 0 and below 1, got 0');
  });
});

describe('the throughput that layouts are compared by', () => {
  const model = compile(twoPlants),
    weeks = shipping([10, 20, 19, 20, 20, 1]);

  it('is that of the judged weeks of the base for a programme, and nothing after a gridlock', () => {
    const { unit, of, over } = rateMeasure(twoPlants, model, [weeks(1), weeks(2)], 0.95);
    expect(unit).toBe('units a working day');
    expect(over).toMatch(
      /^2027-03-\d\d to 2027-0\d-\d\d, counted over whole loads \(trucks of 2 on ferry\)$/,
    );
    expect(of(weeks(1))).toBeGreaterThan(3.7);
    expect(of({ ...weeks(1), outcome: 'gridlock' })).toBe(0);
  });

  it('is that of the whole run where no week can be judged', () => {
    const { over, of } = rateMeasure(twoPlants, model, [observation(twoPlants, 1)], 0.95);
    expect(over).toBe('the whole run');
    // 60 units in six weeks of five working days.
    expect(of(observation(twoPlants, 1, { shipped: 60 }))).toBeCloseTo(2, 12);
  });

  it('is units an hour of a steady-state run', () => {
    const { unit, of } = rateMeasure(even, compile(even), [], 0.95);
    expect(unit).toBe('units an hour');
    expect(of(observation(even, 1, { shipped: 30, minutes: 3600 }))).toBe(0.5);
  });
});
