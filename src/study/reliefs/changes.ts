import type { Model } from '../../flow/model/model.js';
import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import { askedRate } from '../../scenario/programme/rates.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { ReliefsResults } from './results.js';

/** A change of the scenario that is looked at; `of` says what it is for the study. */
export interface Change<Of> {
  readonly of: Of;
  readonly what: string;
  /** undefined: the value cannot be there. */
  readonly scenario: () => Scenario | undefined;
}

/** A scenario that can be run; its key is its digest. */
export interface Changed {
  readonly key: string;
  readonly scenario: Scenario;
  readonly model: Model;
}

export const changedTo = (scenario: Scenario): Changed => ({
  key: digest(scenario),
  scenario,
  model: compile(scenario),
});

/**
 * What can be run; what cannot be, cannot be planned or is counted in other weeks is left out, with the
 * reason.
 */
export function compiled<Of>(
  base: Changed,
  changes: readonly Change<Of>[],
): { changes: (Changed & { readonly of: Of })[]; skipped: ReliefsResults['skipped'] } {
  const found: (Changed & { readonly of: Of })[] = [],
    skipped: { what: string; why: string }[] = [];
  for (const { of, what, scenario: make } of changes) {
    const scenario = make();
    if (scenario === undefined) {
      skipped.push({ what, why: 'the value cannot be varied this way' });
      continue;
    }
    try {
      const changed = changedTo(scenario);
      if (isCountedAlike(base, changed)) found.push({ ...changed, of });
      else skipped.push({ what, why: 'the weeks of the run would be others' });
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      skipped.push({ what, why: error.message });
    }
  }
  return { changes: found, skipped };
}

/** The weeks that both have are the same. */
function isCountedAlike(base: Changed, changed: Changed): boolean {
  const { bucketEdges: edges } = base.model.programme,
    { bucketEdges: others } = changed.model.programme;
  const both = Math.max(0, Math.min(edges.length, others.length) - 1);
  return edges.subarray(0, both).every((edge, b) => edge === others[b]);
}

/**
 * The scenario with every phase that asks for its highest rate at `perDay` instead, units a working day; one
 * by the week stays so.
 */
export function withHighestRate(scenario: Scenario, perDay: number): Scenario {
  const { programme } = scenario,
    { release } = programme,
    { phases: asked, highest, daysAWeek } = askedRate(scenario);
  if (release.kind !== 'rate') return scenario;
  const phases = release.phases.map((phase, i) =>
    asked[i]?.perDay !== highest
      ? phase
      : phase.perWeek === undefined
        ? { from: phase.from, perDay }
        : { from: phase.from, perWeek: perDay * daysAWeek },
  );
  return { ...scenario, programme: { ...programme, release: { kind: 'rate', phases } } };
}
