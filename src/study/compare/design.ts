import { compile } from '../../scenario/compile.js';
import type { ScenarioData } from '../../scenario/data.js';
import { digest } from '../../scenario/digest.js';
import { BASE, type WhatIf } from '../../scenario/what-ifs.js';
import type { Origin } from '../head.js';
import type { Offer } from '../priced/offer.js';
import type { FixedDesign } from '../run/fixed-design.js';
import { fingerprint, identityOf } from '../run/identity.js';
import { type Reading, readingOf } from '../sample/reading.js';
import type { ComparedVariant } from './measures.js';
import type { ComparedInWeeks } from './results.js';
import { summariseComparison } from './summary.js';
import { sameZone, USUAL_ZONE, type Zones } from './zones.js';

/** What `compare` is asked, as plain JSON. Of the names of files the folders are left out of the results. */
export interface CompareAsked extends Origin {
  readonly whatIfs: readonly WhatIf[];
  readonly whatIfsFile: string;
  readonly replications: number;
  /** The scenario as data, where it has guesses or estimates. */
  readonly data?: ScenarioData | undefined;
  /** Of what-ifs that are changes with a name, by the digest of the changed scenario. */
  readonly offers?: Readonly<Record<string, Offer>> | undefined;
  /** Beyond which a difference matters, default `USUAL_ZONE` of each measure. */
  readonly zones?: Zones | undefined;
}

/** The base first, then the what-ifs. */
export interface CompareDesign extends FixedDesign<Reading, ComparedInWeeks> {
  readonly variants: readonly ComparedVariant[];
}

/**
 * The scenario and its what-ifs under common random numbers, and how they differ. `planning` is called around
 * the planning of each variant, which throws a RangeError if it cannot be planned.
 */
export function compareDesign(
  asked: CompareAsked,
  planning: <T>(name: string, plan: () => T) => T = (_, plan) => plan(),
): CompareDesign {
  const { scenario, whatIfs, replications, seed, zones = sameZone(USUAL_ZONE) } = asked;
  const variants = [{ name: BASE, note: null, changes: [], scenario }, ...whatIfs].map(
    ({ name, note, changes, scenario: changed }): ComparedVariant => {
      const model = planning(name, () => compile(changed)),
        key = digest(changed);
      return { key, name, note, changes, scenario: changed, model, read: readingOf(changed, model) };
    },
  );
  return {
    identity: identityOf({
      study: 'compare',
      ...asked,
      more: { 'what-ifs': fingerprint(variants.slice(1).map(({ key }) => key)) },
    }),
    variants,
    replications,
    seed,
    gather: () => {
      const all = variants.map((variant) => ({ ...variant, readings: [] as Reading[] }));
      return {
        take: (reading, index) => all[index]?.readings.push(reading),
        found: () => summariseComparison(all, asked, zones),
      };
    },
  };
}
