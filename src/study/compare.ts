import { basename } from 'node:path';
import type { Model } from '../flow/model.js';
import type { Observation } from '../measure/observation.js';
import { compile } from '../scenario/compile.js';
import { digest } from '../scenario/read-digest.js';
import type { Scenario } from '../scenario/scenario.js';
import { BASE, type Change, type WhatIf } from '../scenario/what-ifs.js';
import { readingOf, type Reading } from './reading.js';
import { Replicator, type Variant } from './replicator.js';
import type { CompareResults } from './results-compare.js';
import { summariseComparison } from './summary-compare.js';

/** A scenario as one of several that are set side by side. Its key is the digest of the scenario. */
export interface DesignVariant extends Variant {
  readonly name: string;
  readonly note: string | null;
  readonly changes: readonly Change[];
  readonly scenario: Scenario;
  readonly model: Model;
  readonly read: (observation: Observation) => Reading;
}

/** Variants, the base first, each to be run for replications 1 to `replications`. Any part of them may be run anywhere. */
export interface Design { readonly variants: readonly DesignVariant[]; readonly replications: number }

/**
 * Step 1: what is to be run. `planning` is called around the planning of each variant, which throws a RangeError if it cannot be planned.
 */
export function compareDesign(scenario: Scenario, whatIfs: readonly WhatIf[], replications: number, planning: <T>(name: string, plan: () => T) => T = (_, plan) => plan()): Design {
  const variant = (name: string, changed: Scenario, note: string | null, changes: readonly Change[]): DesignVariant => {
    const model = planning(name, () => compile(changed));
    return { key: digest(changed), name, note, changes, scenario: changed, model, read: readingOf(changed, model) };
  };
  return { variants: [variant(BASE, scenario, null, []), ...whatIfs.map((each) => variant(each.name, each.scenario, each.note, each.changes))], replications };
}

/** What readings of a variant are made with, for a `Replicator` over several variants. */
export function readerOf({ variants }: Design): (observation: Observation, variant: Variant) => Reading {
  const readers = new Map(variants.map(({ key, read }) => [key, read]));
  return (observation, { key }) => readers.get(key)!(observation);
}

export interface CompareOptions {
  readonly design: Design;
  /** Names of the files; folders are left out of the results. */
  readonly file: string;
  readonly whatIfsFile: string;
  readonly seed: string;
  readonly workers: number;
  /** Confidence of the intervals, default 0.95. */
  readonly level?: number | undefined;
  readonly onReplication?: ((done: number, of: number) => void) | undefined;
  readonly signal?: AbortSignal | undefined;
}

/** Runs all variants under common random numbers and sums up how the what-ifs differ from the base. Same input and seed: same results. */
export async function compareStudy({ design, file, whatIfsFile, seed, workers, level = 0.95, onReplication, signal }: CompareOptions): Promise<CompareResults> {
  // Step 2: readings by variant and replication.
  const replicator = new Replicator<Reading>({ seed, workers, read: readerOf(design), onReplication, signal });
  try {
    const readings = await replicator.run(design.variants, 1, design.replications);
    // Step 3: what they say.
    return summariseComparison({ design, readings, file: basename(file), whatIfsFile: basename(whatIfsFile), seed, level });
  } finally {
    await replicator.close();
  }
}
