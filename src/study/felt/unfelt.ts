import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import { differencesOf } from './differences.js';
import { type Felt, morePeople, RULES } from './rules.js';

/** What is known of a changed model from replications of the base. */
export interface Unfelt {
  /** Whether a replication of the base would have gone just so with the change. */
  readonly leaves: (seen: Observation) => boolean;
  /** That replication as it would have been observed with the change, as far as money and units go. */
  readonly changed: (seen: Observation) => Observation;
}

/**
 * Proves from the run of the base alone that a changed model would have gone through the same events: nobody
 * ever wanted what it has more of. null: the rules know no such proof of it. A replication that ended in
 * gridlock is no proof, nor is one of a model that changes on a date.
 */
export function unfelt(base: Model, changed: Model): Unfelt | null {
  const where = differencesOf(base, changed);
  if (where === null || (where.length > 0 && base.later.length > 0)) return null;
  const felt: Felt[] = [];
  for (const { column, at } of where) {
    const rule = RULES[column]?.(base, changed, at) ?? null;
    if (rule === null) return null;
    felt.push(rule);
  }
  const people = Array.from({ length: base.resources.crews }, (_, crew) =>
    where.length === 0 ? 0 : (morePeople(base, changed, crew) ?? 0),
  );
  return {
    leaves: (seen) => seen.outcome !== 'gridlock' && !felt.some((isFelt) => isFelt(seen)),
    changed: people.some((more) => more > 0) ? (seen) => withPeople(seen, people) : (seen) => seen,
  };
}

/** The people who would have been there besides are paid. */
function withPeople(seen: Observation, people: readonly number[]): Observation {
  const { crewTime } = seen,
    paid = (minutes: Float64Array, ofOne: Float64Array): Float64Array =>
      minutes.map((each, crew) => each + (people[crew] ?? 0) * (ofOne[crew] ?? 0));
  return {
    ...seen,
    crewTime: {
      ...crewTime,
      usual: paid(crewTime.usual, crewTime.ofOne.usual),
      overtime: paid(crewTime.overtime, crewTime.ofOne.overtime),
    },
  };
}
