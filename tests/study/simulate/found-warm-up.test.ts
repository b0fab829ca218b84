import { describe, expect, it } from 'vitest';
import { withWarmUp } from '../../../src/scenario/data.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { findWarmUp } from '../../../src/study/simulate/found-warm-up.js';
import { simulateStudy } from '../../../src/study/simulate/simulate.js';

/** Benches one after another, each with an hour of work. */
function line(benches: number, length: string, work = '1 h', warmUp = 'mser-5'): Scenario {
  const names = Array.from({ length: benches }, (_, i) => `bench ${i + 1}`);
  const { scenario, problems } = readScenario(
    `
scenario: filling
programme: { arrivals: 1 h, length: ${length}, warm up: ${warmUp} }
sites: { hall: { stations: { ${names.map((name) => `${name}: { buffer: unlimited }`).join(', ')} } } }
route:
${names.map((name) => `  - { step: work at ${name}, at: ${name}, work: ${work} }`).join('\n')}
`,
    'line.yaml',
    () => '',
  );
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
}

describe('a warm-up that is left to MSER-5', () => {
  // Units inside rise by one an hour to the number of benches and stay there. The pilot is a week, or 20 times
  // what a unit takes: parts of 0.56 h, or of 0.8 h with twelve benches, fives of them 2.8 h and 4 h. The
  // statistic is 0, its least, from the first five on in which nothing changes (White 1997).
  it.each([
    [3, 300, 5.6],
    [5, 300, 5.6],
    [6, 300, 8.4],
    [12, 300, 12],
    [6, 600, 8.4],
  ])(
    'is three times the first whole five parts of a pilot after %i benches of a run of %i h have filled, %f h',
    async (benches, hours, end) => {
      expect(await findWarmUp({ scenario: line(benches, `${hours} h`), seed: '1', workers: 1 })).toBeCloseTo(
        3 * end * 60,
        8,
      );
    },
  );

  it('is that of the run, which says so', async () => {
    const scenario = line(6, '300 h'),
      warmed = withWarmUp(scenario, 600);
    const { warmUp, wip } = await simulateStudy({
      scenario: warmed,
      file: 'line.yaml',
      replications: 2,
      seed: '1',
      workers: 1,
    });
    expect(warmUp).toMatchObject({ givenHours: 10, isFound: true, verdict: 'long enough' });
    // Six benches, each always with a unit: nothing of the start is left in the mean.
    expect(wip.total.mean).toBe(6);
    const given = await simulateStudy({
      scenario: line(6, '300 h', '1 h', '10 h'),
      file: 'line.yaml',
      replications: 2,
      seed: '1',
      workers: 1,
    });
    expect(given.warmUp).toEqual({ ...warmUp, isFound: false });
    expect(given.wip).toEqual(wip);
  });

  it('is refused where the line never ends filling', async () => {
    // Work takes longer than the time between units: the queue grows without end.
    await expect(findWarmUp({ scenario: line(1, '300 h', '2 h'), seed: '1', workers: 1 })).rejects.toThrow(
      'programme: expected a start-up that MSER-5 ends within a quarter of 32 times the length',
    );
  });
});
