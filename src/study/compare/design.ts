import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { BASE, type Change, type WhatIf } from '../../scenario/what-ifs.js';
import { defined } from '../lists.js';
import type { FixedDesign } from '../run/fixed-design.js';
import { fingerprint, identityOf } from '../run/identity.js';
import type { ComparedVariant } from './measures.js';
import { type Reading, readingOf } from './reading.js';
import type { CompareResults } from './results.js';
import { summariseComparison } from './summary.js';

/** What `compare` is asked, as plain JSON. Of the names of files the folders are left out of the results. */
export interface CompareAsked {
  readonly scenario: Scenario;
  readonly file: string;
  readonly whatIfs: readonly WhatIf[];
  readonly whatIfsFile: string;
  readonly replications: number;
  readonly seed: string;
  readonly level: number;
}

/** The base first, then the what-ifs. */
export interface CompareDesign extends FixedDesign<Reading, CompareResults> {
  readonly variants: readonly ComparedVariant[];
}

/**
 * The scenario and its what-ifs under common random numbers, and how they differ. `planning` is called around
 * the planning of each variant, which throws a RangeError if it cannot be planned.
 */
export function compareDesign(
  { scenario, file, whatIfs, whatIfsFile, replications, seed, level }: CompareAsked,
  planning: <T>(name: string, plan: () => T) => T = (_, plan) => plan(),
): CompareDesign {
  const variant = (
    name: string,
    changed: Scenario,
    note: string | null,
    changes: readonly Change[],
  ): ComparedVariant => {
    const model = planning(name, () => compile(changed));
    return {
      key: digest(changed),
      name,
      note,
      changes,
      scenario: changed,
      model,
      read: readingOf(changed, model),
    };
  };
  const changed = whatIfs.map((each) => variant(each.name, each.scenario, each.note, each.changes)),
    base = variant(BASE, scenario, null, []);
  return {
    identity: identityOf({
      study: 'compare',
      scenario,
      seed,
      level,
      more: { 'what-ifs': fingerprint(changed.map(({ key }) => key)) },
    }),
    variants: [base, ...changed],
    replications,
    seed,
    gather: () => {
      const all = [base, ...changed].map((each) => ({ variant: each, readings: [] as Reading[] }));
      return {
        take: (reading, index) => all[index]?.readings.push(reading),
        found: () => {
          const [ofBase, ...ofWhatIfs] = all;
          return summariseComparison({
            base: defined(ofBase),
            whatIfs: ofWhatIfs,
            file,
            whatIfsFile,
            seed,
            level,
          });
        },
      };
    },
  };
}
