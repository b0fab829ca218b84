import { combinationName } from '../../scenario/changes/factors.js';
import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import { BASE } from '../../scenario/what-ifs.js';
import type { ComparedVariant } from '../compare/measures.js';
import { sameZone, USUAL_ZONE } from '../compare/zones.js';
import type { FixedDesign } from '../run/fixed-design.js';
import { fingerprint, identityOf } from '../run/identity.js';
import { type Reading, readingOf } from '../sample/reading.js';
import { Gathered } from './gathered.js';
import type { FactorsAsked, FactorsInWeeks } from './results.js';
import { summariseFactors } from './summary.js';

/** The scenario first, then each combination that is another. */
export interface FactorsDesign extends FixedDesign<Reading, FactorsInWeeks> {
  readonly variants: readonly ComparedVariant[];
}

/**
 * A scenario and combinations of its factors under common random numbers. `planning` is called around the
 * planning of each, which throws a RangeError if it cannot be planned.
 */
export function factorsDesign(
  asked: FactorsAsked,
  planning: <T>(name: string, plan: () => T) => T = (_, plan) => plan(),
): FactorsDesign {
  const { scenario, factors, combinations, replications, seed, zones = sameZone(USUAL_ZONE) } = asked;
  const variants: ComparedVariant[] = [],
    add = (of: Omit<ComparedVariant, 'key' | 'model' | 'read'>): number => {
      const key = digest(of.scenario),
        known = variants.findIndex((each) => each.key === key);
      if (known >= 0) return known;
      const model = planning(of.name, () => compile(of.scenario));
      return variants.push({ ...of, key, model, read: readingOf(of.scenario, model) }) - 1;
    };
  add({ name: BASE, note: null, changes: [], scenario });
  const variantOf = combinations.map(({ levels, changes, scenario: changed }) =>
    add({ name: combinationName(factors, levels), note: null, changes, scenario: changed }),
  );
  return {
    identity: identityOf({
      study: 'factors',
      ...asked,
      more: { combinations: fingerprint(variantOf.map((v) => variants[v]?.key)) },
    }),
    variants,
    replications,
    seed,
    gather: () => {
      const gathered = new Gathered(variants);
      return {
        take: (reading, index) => {
          gathered.take(reading, index);
        },
        found: () => summariseFactors(gathered, variantOf, asked, zones),
      };
    },
  };
}
