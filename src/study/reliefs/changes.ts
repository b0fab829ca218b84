import { setImmediate } from 'node:timers/promises';
import type { Model } from '../../flow/model/model.js';
import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import { askedRate, daysAWeek } from '../../scenario/programme/rates.js';
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

/** What was left out, and why. */
export type Skipped = ReliefsResults['skipped'][number];
export interface Changes<Of> {
  readonly changes: readonly (Changed & { readonly of: Of })[];
  readonly skipped: readonly Skipped[];
}

/**
 * What can be run; what cannot be, changes nothing, cannot be planned or is counted in other weeks is left
 * out, with the reason. Between two a signal can come through: many of a large scenario take a while.
 */
export async function compiled<Of>(
  base: Changed,
  changes: readonly Change<Of>[],
  signal?: AbortSignal,
): Promise<Changes<Of>> {
  const found: (Changed & { readonly of: Of })[] = [],
    skipped: Skipped[] = [];
  for (const { of, what, scenario: make } of changes) {
    await setImmediate();
    signal?.throwIfAborted();
    const changed = changedOr(base, make);
    if (typeof changed === 'string') skipped.push({ what, why: changed });
    else found.push({ ...changed, of });
  }
  return { changes: found, skipped };
}

/** The change as it can be run, or why it cannot be. */
export const changedOr = (base: Changed, make: () => Scenario | undefined): Changed | string =>
  orWhy(() => {
    const scenario = make();
    if (scenario === undefined) return 'the value cannot be varied this way';
    if (digest(scenario) === base.key) return 'nothing changes';
    const changed = changedTo(scenario);
    return isCountedAlike(base, changed) ? changed : 'the weeks of the run would be others';
  });

/** What is made; or, where a RangeError says that it cannot be, why. */
export function orWhy<Made>(make: () => Made): Made | string {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return error.message;
  }
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
 * by the week stays so, and clock times have more units each.
 */
export function withHighestRate(scenario: Scenario, perDay: number): Scenario {
  const { programme } = scenario,
    { release } = programme,
    { phases: asked, highest } = askedRate(scenario);
  if (release.kind !== 'rate') return scenario;
  const phases = release.phases.map((phase, i) =>
    asked[i]?.perDay !== highest
      ? phase
      : phase.perWeek === undefined
        ? { from: phase.from, perDay }
        : { from: phase.from, perWeek: perDay * daysAWeek(scenario) },
  );
  return { ...scenario, programme: { ...programme, release: { ...release, phases } } };
}
