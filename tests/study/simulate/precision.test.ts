import { describe, expect, it } from 'vitest';
import { warmUp as warmUpChart } from '../../../src/report/charts/simulate/warm-up.js';
import { stableJson } from '../../../src/report/json.js';
import { resultsTable } from '../../../src/report/terminal/simulate.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { type SimulateOptions, simulateStudy } from '../../../src/study/simulate/simulate.js';

function read(programme: string, work = '{ exponential: { mean: 1 h } }'): Scenario {
  const { scenario, problems } = readScenario(
    `
scenario: queue
programme: { ${programme} }
sites: { hall: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: fit, at: bench, work: ${work} }]
`,
    'queue.yaml',
    () => '',
  );
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
}

const HALF_LOAD = 'arrivals: { exponential: { mean: 2 h } }, length: 500 h, warm up: 100 h';
const study = (scenario: Scenario, more: Partial<SimulateOptions> = {}) =>
  simulateStudy({ scenario, file: 'queue.yaml', replications: 10, seed: 'precise', workers: 1, ...more });

describe('a precision asked for', { timeout: 30_000 }, () => {
  it('is reached by adding replications, the same with one thread or two', async () => {
    const precision = { asked: 0.05, of: ['throughput', 'wip'] as const, most: 1000 };
    const [one, two] = await Promise.all(
      [1, 2].map((workers) => study(read(HALF_LOAD), { precision, workers })),
    );
    expect(stableJson(one)).toBe(stableJson(two));
    expect(one.replications).toBeGreaterThan(38);
    expect(one.precision!.replications).toBe(one.replications);
    for (const { relativeHalfWidth, reached } of one.precision!.measures) {
      expect(reached).toBe(true);
      // g / (1 + g), Law 9.4.1.
      expect(relativeHalfWidth).toBeLessThanOrEqual(0.05 / 1.05);
    }
    expect(one.findings).toEqual([]);
  });

  it('is a finding where the limit comes first', async () => {
    const results = await study(read(HALF_LOAD), { precision: { asked: 0.001, of: ['wip'], most: 15 } });
    expect(results.replications).toBe(15);
    expect(results.precision!.measures[0]).toMatchObject({ name: 'wip', reached: false });
    expect(results.findings.map(({ kind }) => kind)).toEqual(['precision']);
    expect(resultsTable(results)).toContain(
      'finding: a precision of 0.1 % is not reached within 15 replications: wip is known to ',
    );
  });

  it('stops at thirty and a quarter more where nothing varies, and is null where none is asked', async () => {
    const still = read('arrivals: 2 h, length: 500 h, warm up: 100 h', '1 h');
    expect(
      (await study(still, { replications: 2, precision: { asked: 0.01, of: ['throughput'], most: 100 } }))
        .replications,
    ).toBe(38);
    expect((await study(still, { replications: 2 })).precision).toBeNull();
  });
});

describe('the warm-up given', { timeout: 30_000 }, () => {
  it('is too short where a queue still builds up after it', async () => {
    // Units come twice as fast as they are done. (A queue that does end, by chance: tests/statistics/warm-up.)
    const results = await study(read('arrivals: 1 h, length: 300 h', '2 h'), { replications: 2 });
    // Inside after t hours are t less t / 2, so 75 in the mean of 300 h and 300 in that of the 600 h after it.
    expect(results.warmUp).toMatchObject({
      givenHours: 0,
      partHours: 1,
      cutHours: null,
      verdict: 'too short',
    });
    expect(results.warmUp!.bias!.left.mean).toBeCloseTo(75 - 300, 0);
    expect(results.findings.map(({ kind }) => kind)).toEqual(['warm-up']);
    expect(results.findings[0].text).toMatch(
      /^the line still fills after the warm-up of 0 h: the mean of the units inside is off by -225 \(99 % CI .*; how long/,
    );
    expect(warmUpChart(results)!.alt).toContain('The line still fills');
  });

  it('is long enough where the line has filled, and the mean after it is that of the run itself', async () => {
    const results = await study(read(HALF_LOAD.replace('500 h', '5500 h').replace('100 h', '500 h')));
    expect(results.warmUp!.verdict).toBe('long enough');
    // 6,000 h in 300 parts of 20 h: the first 25 are warm-up. The same events give the same units inside.
    const after = results.warmUp!.wip.slice(25);
    expect(after.reduce((a, b) => a + b, 0) / 275).toBeCloseTo(results.wip.total.mean, 9);
  });

  it('is not looked at in a programme, which really starts empty', async () => {
    const results = await study(read('start: 2027-03-01, quantity: 20, rate: [{ per day: 4 }]'), {
      replications: 2,
    });
    expect(results.warmUp).toBeNull();
    expect(warmUpChart(results)).toBeNull();
  });
});
