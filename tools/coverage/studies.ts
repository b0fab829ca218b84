import type { Observation } from '../../src/measure/observe.js';
import type { Scenario } from '../../src/scenario/types/scenario.js';
import type { PrecisionAsked } from '../../src/study/answer/precision.js';
import type { Estimate } from '../../src/study/statistics/estimate.js';
import { Coverage, Plain } from './coverage.js';
import { estimatesIn } from './estimates.js';

/** The program as built: its engine is several times as fast as its sources run by a tool. */
export type Built = typeof import('../../src/study/library.js');

export interface CoverageAsked {
  readonly scenario: Scenario;
  readonly file: string;
  readonly seed: string;
  readonly level: number;
  readonly studies: number;
  /** Of each study; with a precision those to begin with. */
  readonly replications: number;
  readonly precision?: PrecisionAsked | undefined;
  /** Whether Student's intervals are reckoned too; takes each replication by itself. */
  readonly plain: boolean;
  readonly workers: number;
  readonly onStudy: (done: number, replications: number) => void;
}

export interface Covered {
  readonly coverage: Coverage;
  readonly truth: ReadonlyMap<string, Estimate>;
  readonly plain: { readonly coverage: Coverage; readonly truth: ReadonlyMap<string, Estimate> } | null;
}

/**
 * Runs so many studies of a build and sums each up as `simulate` does; what is true of the build is what all
 * their replications together say. Studies are parts of one long row of replications, which are independent
 * whatever study they belong to. Outages are not left out and nothing is tried.
 */
export async function coverStudies(built: Built, asked: CoverageAsked): Promise<Covered> {
  const { scenario, seed, level, studies, replications, precision, workers } = asked,
    design = built.simulateDesign({ scenario, file: asked.file, seed, level, replications }),
    [first] = design.variants;
  if (first === undefined) throw new Error('coverage: expected a design with a variant, got one without');
  // Watched closely are the first of each study.
  const base = { ...first, closely: Infinity },
    { closely = 0 } = first;
  const replicator = new built.Replicator({ seed, workers }),
    together = design.gather(),
    coverage = new Coverage(),
    plain = asked.plain ? { coverage: new Coverage(), values: new Plain() } : null;
  let all = 0;
  for (let study = 0; study < studies; study++) {
    const gathering = design.gather(precision?.of),
      until = precision === undefined ? null : new built.UntilPrecise(gathering.measured, precision);
    let done = 0,
      next: number | null = replications;
    while (next !== null) {
      await replicator.each([base], all + done + 1, all + next, 1, (value) => {
        const seen = ofStudy(value as Observation, ++done, closely);
        gathering.take(seen, 0);
        together.take(seen, 0);
        if (plain === null) return;
        const alone = design.gather();
        alone.take(seen, 0);
        plain.values.add(estimatesIn(alone.found().results));
      });
      next = until?.next(done) ?? null;
    }
    coverage.add(estimatesIn(gathering.found().results));
    plain?.coverage.add(plain.values.end(level));
    all += done;
    asked.onStudy(study + 1, done);
  }
  await replicator.close();
  const truth = new Map<string, Estimate>();
  for (const { path, estimate } of estimatesIn(together.found().results)) truth.set(path, estimate);
  return {
    coverage,
    truth,
    plain: plain === null ? null : { coverage: plain.coverage, truth: plain.values.truth(level) },
  };
}

/** A replication as if it had been the n-th of its study. */
const ofStudy = (seen: Observation, replication: number, closely: number): Observation => ({
  ...seen,
  replication,
  momentary: replication <= closely ? seen.momentary : null,
  startUp: replication <= closely ? seen.startUp : null,
});
