import { copyFileSync, mkdtempSync, statSync, truncateSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readScenario, scenarioData } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { readWhatIfs } from '../../../src/scenario/what-ifs.js';
import { buffersStudy } from '../../../src/study/buffers/buffers.js';
import { compareDesign } from '../../../src/study/compare/design.js';
import { withConstraint } from '../../../src/study/compare/with-constraint.js';
import { rateStudy } from '../../../src/study/rate/rate.js';
import { reliefsStudy } from '../../../src/study/reliefs/reliefs.js';
import { answerOf } from '../../../src/study/run/fixed-design.js';
import { Journal } from '../../../src/study/run/journal.js';

// Invented. Random, limited, without prices: readings hold NaN as well.
const YAML = `
scenario: two benches
programme: { start: 2027-03-01, zone: UTC, quantity: 90, rate: [{ from: 2027-03-01, per day: 2 }, { from: 2027-03-15, per day: 4 }] }
sites: { hall: { zone: UTC, stations: { bench: { buffer: 2 }, trim bench: { buffer: 1 } } } }
route:
  - { step: build, at: bench, work: { mean: 5 h, cv: 0.5, basis: guess } }
  - { step: trim, at: trim bench, work: { mean: 5 h, cv: 0.5 } }
`;
function read(yaml: string): Scenario {
  const { scenario, problems } = readScenario(yaml, 'two.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
}
const scenario = read(YAML),
  file = 'two.yaml',
  seed = 's';
const { whatIfs } = readWhatIfs(
  'room: { changes: { sites.hall.stations.trim bench.buffer: 5 } }',
  'what-ifs.yaml',
  { text: YAML, file },
  () => '',
);

/** Each study with a journal: what it found, as it is written. */
const STUDIES: Readonly<Record<string, (journal: Journal<never> | undefined) => Promise<unknown>>> = {
  // With what stops the best of them, and which guess it hangs on.
  compare: async (journal) => {
    const asked = {
        ...{ scenario, file, seed, whatIfs: whatIfs!, whatIfsFile: 'what-ifs.yaml' },
        ...{ replications: 4, level: 0.95, data: scenarioData(YAML, file, () => '') },
      },
      how = { workers: 1, journal };
    return withConstraint(await answerOf(compareDesign(asked), how), asked, how);
  },
  // The pilot run by which the floor fills is in it, and the weeks of the ramp.
  rate: (journal) =>
    rateStudy({
      scenario,
      file,
      from: 3,
      to: 5,
      step: 0.5,
      weeks: 8,
      sure: 0.5,
      replications: 3,
      seed,
      workers: 1,
      journal,
    }),
  reliefs: (journal) =>
    reliefsStudy({
      scenario,
      data: scenarioData(YAML, file, () => ''),
      file,
      replications: 12,
      seed,
      workers: 1,
      journal,
    }),
  buffers: (journal) =>
    buffersStudy({
      scenario,
      file,
      goal: { kind: 'target', rate: 3.5 },
      replications: 4,
      seed,
      workers: 1,
      journal,
    }),
};

describe('a study with a journal', { timeout: 60_000 }, () => {
  it.each(Object.entries(STUDIES))(
    '%s finds the same when it was cut off, and runs nothing where all is known',
    async (_, study) => {
      const path = join(mkdtempSync(join(tmpdir(), 'journal-studies-')), 'study.journal'),
        cut = `${path}.cut`;
      const run = async (from: string): Promise<{ found: unknown; known: number; added: number }> => {
        const journal = new Journal<never>(from, { study: 'made' }),
          known = journal.size,
          found = await study(journal);
        journal.close();
        return { found, known, added: journal.size - known };
      };
      const whole = await run(path),
        size = statSync(path).size;
      expect(whole.known).toBe(0);
      expect(await study(undefined)).toEqual(whole.found);
      for (const share of [0.3, 0.7]) {
        copyFileSync(path, cut);
        truncateSync(cut, Math.floor(share * size));
        const rest = await run(cut);
        expect(rest.found).toEqual(whole.found);
        expect(rest.known).toBeGreaterThan(0);
        expect(rest.added).toBeGreaterThan(0);
        expect(rest.added).toBeLessThan(whole.added);
      }
      // The same way is walked again.
      const again = await run(path);
      expect(again.found).toEqual(whole.found);
      expect(again.added).toBe(0);
    },
  );
});

describe('the key of a variant', () => {
  it('tells two changes apart that have the same text', async () => {
    // "10 % off the work of build (axles)": of a step of the route, which is the constraint, and of a step of
    // a feeder, which has time.
    const named = read(`
scenario: names alike
programme: { start: 2027-03-01, quantity: 60, arrivals: saturated }
sites: { hall: { stations: { line: {}, axle bench: {} } } }
feeders: { axles: { stock: 5, route: [{ step: build, at: axle bench, work: 1 h }] } }
route: [{ step: build (axles), at: line, parts: { axles: 1 }, work: 10 h }]
`);
    const { reliefs } = await reliefsStudy({
      scenario: named,
      file,
      replications: 2,
      seed,
      workers: 1,
    });
    const gains = reliefs
      .filter(({ text }) => text === '10 % off the work of build (axles)')
      .map(({ gain }) => gain.mean);
    expect(gains).toHaveLength(2);
    // 2.4 a day become 2.67.
    expect(gains[0]).toBeGreaterThan(0.2);
    // Only the first axle is waited for: 6 minutes of 600 h.
    expect(gains[1]).toBeLessThan(0.001);
  });
});
