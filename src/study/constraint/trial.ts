import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import { keyOfThing, type Thing } from '../../scenario/reliefs/thing.js';
import { defined } from '../lists.js';
import type { Offer } from '../priced/offer.js';
import { offersOf } from '../priced/offers.js';
import { type Changed, compiled } from '../reliefs/changes.js';
import type { Relief } from '../reliefs/relief.js';
import { reliefsOf } from '../reliefs/small.js';
import type { Replicator } from '../run/replicator.js';
import { difference, familyLevel } from '../statistics/difference.js';
import type { Estimate } from '../statistics/estimate.js';
import type { Tried } from './results.js';

/** So many of the likeliest are tried, and an hour more on the likeliest calendar. */
export const MOST_TRIED = 5;

/** What makes a thing better, but is not more of it. */
const NOT_MORE: readonly Relief['kind'][] = ['work', 'defect', 'failure', 'lead time', 'lateness'];

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
 * @param likely the likeliest first; one may be named twice
 * @returns by gain; of equal ones the likelier first
 */
export async function tried(
  base: Changed,
  likely: readonly Thing[],
  { shippedPerDay, base: shipped, until, level }: TrialAsked,
  replicator: Replicator,
): Promise<Tried[]> {
  const reliefs = reliefsOf(base.scenario).filter(({ kind }) => !NOT_MORE.includes(kind)),
    able = new Set(reliefs.map(({ of }) => keyOfThing(of))),
    // What arithmetic names is among what units wait for, but is tried once.
    things = [...new Map(likely.map((thing) => [keyOfThing(thing), thing])).values()].filter((thing) =>
      able.has(keyOfThing(thing)),
    ),
    isHours = ({ kind }: Thing): boolean => kind === 'hours',
    chosen = new Set([
      ...things.filter((thing) => !isHours(thing)).slice(0, MOST_TRIED),
      ...things.filter(isHours).slice(0, 1),
    ]);
  const { changes } = await compiled(
      base,
      things
        .filter((thing) => chosen.has(thing))
        .flatMap((thing) => reliefs.filter(({ of }) => keyOfThing(of) === keyOfThing(thing)))
        .map((of) => ({ of, what: of.text, scenario: () => of.change(base.scenario) })),
    ),
    gains = await gainsOf(changes, { shippedPerDay, base: shipped, until, level }, replicator);
  const best = new Map<string, Tried>(),
    offers = offersOf(base.scenario);
  for (const [i, { of }] of changes.entries()) {
    const gain = defined(gains[i]),
      key = keyOfThing(of.of),
      known = best.get(key);
    if (known === undefined || gain.mean > known.gain.mean)
      best.set(key, { thing: of.of, what: of.text, gain, ...offered(offers, of.text) });
  }
  return [...best.values()].sort((a, b) => b.gain.mean - a.gain.mean);
}

/** Nothing where the scenario names no changes. */
const offered = (offers: ReadonlyMap<string, Offer>, text: string): Pick<Tried, 'offer'> =>
  offers.size === 0 ? {} : { offer: offers.get(text) ?? null };

/**
 * Units shipped a working day more by each changed build than by the base, in the base's replications; all of
 * them hold together.
 */
export async function gainsOf(
  changes: readonly Changed[],
  { shippedPerDay, base, until, level }: TrialAsked,
  replicator: Replicator,
): Promise<Estimate[]> {
  const rows = await replicator.rows(
      changes.map((changed) => ({
        key: `${changed.key} to ${until}`,
        model: over(changed.model, changed.model.programme.warmUp, until),
        read: shippedPerDay(changed),
      })),
      1,
      base.length,
    ),
    each = familyLevel(level, changes.length);
  return rows.map((row) => difference(base, row, each).difference);
}

/** The model, observed from one time to another, at which it ends if not sooner. */
export const over = (model: Model, warmUp: number, end: number): Model => ({
  ...model,
  programme: { ...model.programme, warmUp, end: Math.min(model.programme.end, end) },
});
