import type { Observation } from '../../measure/observe.js';
import { defined } from '../lists.js';
import { type Changed, compiled } from '../reliefs/changes.js';
import { reliefsOf } from '../reliefs/kinds/kinds.js';
import type { ReliefKind } from '../reliefs/relief.js';
import type { Thing } from '../reliefs/thing.js';
import type { Replicator } from '../run/replicator.js';
import { difference, familyLevel } from '../statistics/difference.js';
import { keyOfThing } from './likeliest.js';
import type { Tried } from './results.js';

/** So many of the likeliest are tried, and an hour more on the likeliest calendar. */
export const MOST_TRIED = 5;

/** What makes a thing better, but is not more of it. */
const NOT_MORE: readonly ReliefKind[] = ['work', 'defect', 'failure', 'lead time', 'lateness'];

/** Units shipped a working day by a build, the base or a changed one, in a replication. */
export type ShippedPerDay = (of: Changed) => (seen: Observation) => number;

export interface TrialAsked {
  /** Units shipped a working day in a replication, over loads of the changed build's own. */
  readonly shippedPerDay: ShippedPerDay;
  /** The same of the base, by replication. */
  readonly base: readonly number[];
  /** When the last week judged is over, minutes; nothing behind it is run. */
  readonly until: number;
  readonly level: number;
}

/**
 * One more of each of the likeliest things of which there can be more, set against the base in the same
 * replications (common random numbers). Of a thing with several ways to have more of it, such as a truck and
 * a departure, the one that gains most is told.
 * @param things the likeliest first
 * @returns by gain; of equal ones the likelier first
 */
export async function tried(
  base: Changed,
  things: readonly Thing[],
  { shippedPerDay, base: shipped, until, level }: TrialAsked,
  replicator: Replicator,
): Promise<Tried[]> {
  const reliefs = reliefsOf(base.scenario).filter(({ kind }) => !NOT_MORE.includes(kind)),
    ofThing = new Map<string, typeof reliefs>();
  for (const relief of reliefs) {
    const key = keyOfThing(relief.of);
    ofThing.set(key, [...(ofThing.get(key) ?? []), relief]);
  }
  const chosen = things
    .flatMap((thing) => ofThing.get(keyOfThing(thing)) ?? [])
    .map((of) => ({ of, what: of.text, scenario: () => of.change(base.scenario) }));
  const keys: string[] = [],
    hours: string[] = [];
  const few = chosen.filter(({ of }) => {
    const key = keyOfThing(of.of),
      group = of.of.kind === 'hours' ? hours : keys;
    if (!group.includes(key)) group.push(key);
    return group.indexOf(key) < (group === hours ? 1 : MOST_TRIED);
  });
  const { changes } = await compiled(base, few),
    rows = await replicator.rows(
      changes.map((changed) => ({
        key: `${changed.key} to ${until}`,
        model: endingAt(changed.model, until),
        read: shippedPerDay(changed),
      })),
      1,
      shipped.length,
    ),
    each = familyLevel(level, changes.length);
  const best = new Map<string, Tried>();
  for (const [i, { of }] of changes.entries()) {
    const { difference: gain } = difference(shipped, defined(rows[i]), each),
      key = keyOfThing(of.of),
      known = best.get(key);
    if (known === undefined || gain.mean > known.gain.mean)
      best.set(key, { thing: of.of, what: of.text, gain });
  }
  return [...best.values()].sort((a, b) => b.gain.mean - a.gain.mean);
}

/** The model, run to a time at most. */
export const endingAt = <Of extends Changed['model']>(model: Of, until: number): Of => ({
  ...model,
  programme: { ...model.programme, end: Math.min(model.programme.end, until) },
});
