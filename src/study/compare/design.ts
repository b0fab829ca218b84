import { basename } from 'node:path';
import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/read.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { BASE, type Change, type WhatIf } from '../../scenario/what-ifs.js';
import type { FixedDesign } from '../run/fixed-design.js';
import { fingerprint, identityOf } from '../run/identity.js';
import { readingOf, type Reading } from './reading.js';
import type { CompareResults } from './results.js';
import { summariseComparison } from './summary.js';
import type { ComparedVariant } from './measures.js';

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
    variants = [variant(BASE, scenario, null, []), ...changed];
  const readers = new Map(variants.map(({ key, read }) => [key, read]));
  return {
    identity: identityOf({
      study: 'compare',
      scenario,
      seed,
      level,
      more: { 'what-ifs': fingerprint(changed.map(({ key }) => key)) },
    }),
    variants,
    replications,
    seed,
    read: (observation, { key }) => readers.get(key)!(observation),
    gather: () => {
      const readings = variants.map((): Reading[] => []);
      return {
        take: (reading, v) => void readings[v]!.push(reading),
        found: () =>
          summariseComparison({
            variants,
            readings,
            file,
            whatIfsFile: basename(whatIfsFile),
            seed,
            level,
          }),
      };
    },
  };
}
