import { describe, expect, it } from 'vitest';
import { stableJson } from '../../../src/report/json.js';
import { readScenario } from '../../../src/scenario/read.js';
import { type RateOptions, rateStudy } from '../../../src/study/rate/rate.js';

/** Every number is invented. 2027-03-01 is a Monday. */
function study(yaml: string, options: Partial<RateOptions> = {}) {
  const { scenario, problems } = readScenario(yaml, 'line.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return rateStudy({
    scenario,
    file: 'line.yaml',
    from: 3,
    to: 6,
    step: 0.1,
    weeks: 12,
    sure: 0.6,
    replications: 8,
    seed: '1',
    workers: 1,
    ...options,
  });
}
const bench = (work: string, rate = '{ per day: 4 }', rest = ''): string => `
scenario: One bench
programme: { start: 2027-03-01, zone: UTC, quantity: 300, rate: ${rate} }
sites: { hall: { zone: UTC, stations: { bench: { buffer: unlimited } } } }
route: [{ step: work, at: bench, work: ${work}${rest} }]
`;

describe('the highest rate that holds', () => {
  it('is the capacity of a station without chance, to the step', async () => {
    // 24 h of 5 h each are 4.8 a day; 4.9 pile up at a tenth of a unit a day.
    const results = await study(bench('5 h'));
    expect(results.answer).toMatchObject({ highestPerDay: 4.8, abovePerDay: 4.9, contradictions: [] });
    expect(results.arithmetic).toMatchObject({ name: 'bench', perDay: expect.closeTo(4.8, 9) as number });
    const above = results.points.find(({ perDay }) => perDay === 4.9)!;
    expect(above).toMatchObject({ verdict: 'does not hold', keptUp: { count: 0 } });
    expect(above.shippedPerDay.mean).toBeCloseTo(4.8, 1);
    expect(above.stops).toMatchObject([{ name: 'bench', share: { count: above.replications } }]);
  });

  it('is told with the weeks of its window that an outage hits or that are short', async () => {
    // Settled for two weeks, from Monday 2027-03-15 on, for twelve: weeks 11 to 22. Of the outages the first
    // lies before them.
    const outages = `
outages:
  - { stations: bench, from: 2027-03-10, to: 2027-03-10 }
  - { stations: bench, from: 2027-04-10, to: 2027-04-10, note: inspection }`;
    const marked = await study(bench('5 h') + outages, { settleWeeks: 2, replications: 2, from: 4, to: 4 });
    expect(marked.window).toMatchObject({
      from: '2027-03-15',
      unusual: [{ label: '2027-W14', causes: [{ kind: 'outage', what: '"inspection"' }] }],
    });
    expect(marked.answer.sentence).toContain(
      '. 1 of the 12 weeks watched is hit by an outage: 2027-W14 (outage "inspection"). ',
    );
  });

  it('is the one on the grid below the capacity where that lies between two', async () => {
    // 24 / 5.2 = 4.615
    expect((await study(bench('5.2 h'))).answer).toMatchObject({ highestPerDay: 4.6, abovePerDay: 4.7 });
  });

  it('is that of a crew shared by two stations, of which neither is full', async () => {
    // 3 h at each of two stations by one person: 24 / 6 = 4 a day; with two people 24 / 3 = 8.
    const shared = (people: number): string => `
scenario: Two benches
programme: { start: 2027-03-01, zone: UTC, quantity: 300, rate: { per day: 4 } }
sites: { hall: { zone: UTC, crews: { fitters: ${people} }, stations: { first: { buffer: unlimited }, second: { buffer: unlimited } } } }
route: [{ step: one, at: first, crew: { fitters: 1 }, work: 3 h }, { step: two, at: second, crew: { fitters: 1 }, work: 3 h }]
`;
    const one = await study(shared(1), { to: 9, step: 0.5 }),
      two = await study(shared(2), { to: 9, step: 0.5 });
    expect([one.answer.highestPerDay, two.answer.highestPerDay]).toEqual([4, 8]);
    expect(one.points.find(({ perDay }) => perDay === 4)!.stops[0]).toMatchObject({
      name: 'fitters',
      kind: 'crew',
    });
  });

  it('says so where none holds, or all do', async () => {
    const none = await study(bench('5 h'), { from: 5 }),
      all = await study(bench('5 h'), { to: 4 });
    expect(none.answer).toMatchObject({ highestPerDay: null, abovePerDay: 5 });
    expect(none.answer.sentence).toMatch(/^No rate from 5 a day on holds/);
    expect(none.ramp.outcome).toBe('no rate');
    expect(all.answer).toMatchObject({ highestPerDay: 4, abovePerDay: null });
    expect(all.ramp.outcome).toBe('no ramp');
  });

  it('is found with few replications of the rates that are sure, and as many as it takes of what tells', async () => {
    const { answer, points } = await study(bench('{ mean: 5 h, cv: 0.3 }'), { replications: 30, sure: 0.5 });
    expect(answer.highestPerDay).toBeLessThanOrEqual(4.8);
    expect(answer.highestPerDay).toBeGreaterThanOrEqual(4.6);
    // All of nine keep up: surely more than half; of five that could be chance, but no more than 4.9 a day is shipped.
    const runs = (perDay: number): number => points.find((point) => point.perDay === perDay)!.replications;
    expect([runs(3), runs(5.4)]).toEqual([9, 5]);
    expect(points.every(({ replications }) => replications <= 120)).toBe(true);
    expect(points.reduce((all, { replications }) => all + replications, 0)).toBeLessThan(15 * points.length);
  });

  it('gets more replications where it is not settled, up to four times as many', async () => {
    // All of 2 are 2 / (2 + 1.96^2) = 34 % at least, all of 8 are 68 %.
    // A rate a little above is run beside it, to see whether as much is shipped when more is asked.
    const { points } = await study(bench('5 h'), { replications: 2, from: 4, to: 4 });
    expect(points).toMatchObject([{ perDay: 4, verdict: 'holds', replications: 8 }, { perDay: 4.1 }]);
  });

  it('is the same, to the last bit, for any number of threads', async () => {
    const line = bench(
      '{ exponential: { mean: 4 h } }',
      '[{ from: 2027-03-01, per day: 2 }, { from: 2027-03-22, per day: 5 }]',
    );
    const one = await study(line, { step: 0.5 });
    expect(one.answer.highestPerDay).not.toBeNull();
    expect(stableJson(await study(line, { step: 0.5, workers: 3 }))).toBe(stableJson(one));
  });

  it('asks for a window with enough units in it', async () => {
    await expect(study(bench('5 h'), { from: 0.1, to: 0.2 })).rejects.toThrow(
      'programme: expected at least 50 units in a window of 12 weeks at 0.1 a day, got 8; give more --weeks or a higher rate',
    );
  });
});

describe('the earliest week of the last phase', () => {
  const FIRST = 640,
    RATE = 0.93,
    WEEK = 7 * 1440,
    WEEKS = 8,
    LEAD_WEEKS = 1;

  /**
   * The same bench by Lindley's (1952) recursion: unit n begins when it has come and the one before has gone.
   */
  function keepsUp(week: number): boolean {
    const change = week * WEEK,
      from = change + LEAD_WEEKS * WEEK,
      to = from + WEEKS * WEEK,
      releases: number[] = [];
    for (let i = 0; i * 720 < change; i++) releases.push(i * 720);
    for (let i = 0; change + i * 360 < to; i++) releases.push(change + i * 360);
    let free = 0,
      shipped = 0;
    releases.forEach((release, n) => {
      free = Math.max(free, release) + FIRST * (n + 1) ** Math.log2(RATE);
      if (free >= from && free < to) shipped++;
    });
    return shipped >= 0.98 * 4 * 7 * WEEKS;
  }

  it('is that of a recursion by hand, tried week by week, where people learn', async () => {
    const line = bench(
      '640 min',
      '[{ from: 2027-03-01, per day: 2 }, { from: 2027-09-06, per day: 4 }]',
      `, learning: { rate: ${100 * RATE} % }`,
    );
    const results = await study(line, {
      from: 2,
      to: 2,
      rampTo: 4,
      weeks: WEEKS,
      settleWeeks: LEAD_WEEKS + 4,
    });
    const expected = Array.from({ length: 53 }, (_, week) => week).find(keepsUp)!;
    // The case shall tell something: neither at once nor at the end.
    expect(expected).toBeGreaterThan(0);
    expect(expected).toBeLessThan(26);
    expect(results.ramp).toMatchObject({
      outcome: 'from a week on',
      week: expected,
      perDay: 4,
      settleWeeks: LEAD_WEEKS,
    });
    for (const { week, verdict } of results.ramp.tried)
      expect([week, verdict === 'holds']).toEqual([week, keepsUp(week)]);
  });

  it('is the start where the rate holds at once, and none where it never does', async () => {
    const ramp = '[{ from: 2027-03-01, per day: 2 }, { from: 2027-09-06, per day: 4 }]';
    expect((await study(bench('5 h', ramp), { from: 4, to: 4 })).ramp).toMatchObject({
      outcome: 'from the start',
      begins: '2027-03-01',
      week: 0,
    });
    expect((await study(bench('5 h', ramp), { from: 4, to: 4, rampTo: 5 })).ramp).toMatchObject({
      outcome: 'not within a year',
      begins: null,
      week: null,
    });
  });
});
