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
import { boundsOf, type Estimate } from '../statistics/estimate.js';
import type { Tried } from './results.js';

/** So many of the likeliest are tried, and an hour more on the likeliest calendar. */
export const MOST_TRIED = 5;

/** What makes a thing better, but is not more of it. */
const NOT_MORE: readonly Relief['kind'][] = ['work', 'defect', 'failure', 'lead time', 'lateness'];

/** Units shipped a working day by a build, the base or a changed one, in a replication. */
export type ShippedPerDay = (of: Changed) => (seen: Observation) => number;

/** Replications of a trial after which is looked whether it can matter at all. */
export const FIRST_LOOK = 5;

/** What changes are set against. */
export interface Base {
  /** Replications of each trial at most. */
  readonly most: number;
  /** Units shipped a working day, by replication, with so many of them at least. */
  readonly upTo: (replications: number) => Promise<readonly number[]>;
}

export interface TrialAsked {
  /** Units shipped a working day in a replication, over loads of the changed build's own. */
  readonly shippedPerDay: ShippedPerDay;
  readonly base: Base;
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
  asked: TrialAsked & { readonly zone: number },
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
    isThing = changes.map(({ of }) => !isHours(of.of)),
    gains = await gainsOf(changes, asked, mayStop(isThing, asked.zone), replicator);
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
 * Whether a trial may name what stops the build: by its bound it may bring enough to matter, and as much as
 * the single thing that surely brings most.
 */
const mayStop =
  (isThing: readonly boolean[], zone: number): MayMatter =>
  (all) => {
    const most = Math.max(zone, ...all.filter((_, i) => isThing[i]).map((gain) => boundsOf(gain).low));
    return all.map((gain) => boundsOf(gain).high > zone && boundsOf(gain).high >= most);
  };

/** Of each of several trials whether it may matter, by the intervals of their gains. */
export type MayMatter = (gains: readonly Estimate[]) => readonly boolean[];

/**
 * Units shipped a working day more by each changed build than by the base, in the base's replications. After
 * a first look only those go on that may matter. All intervals of both looks hold together (Bonferroni's
 * inequality), so none that surely matters is left behind but by the chance that the level leaves.
 */
export async function gainsOf(
  changes: readonly Changed[],
  { shippedPerDay, base, until, level }: TrialAsked,
  mayMatter: MayMatter,
  replicator: Replicator,
): Promise<Estimate[]> {
  const looks = base.most > FIRST_LOOK ? [FIRST_LOOK, base.most] : [base.most],
    each = familyLevel(level, changes.length * looks.length),
    trials = changes.map((changed) => ({
      variant: {
        key: `${changed.key} to ${until}`,
        model: over(changed.model, changed.model.programme.warmUp, until),
        read: shippedPerDay(changed),
      },
      row: [] as number[],
    }));
  let gains: Estimate[] = [],
    going = trials,
    done = 0;
  for (const look of looks) {
    if (going.length === 0) break;
    const more = await replicator.rows(
        going.map(({ variant }) => variant),
        done + 1,
        look,
      ),
      shipped = await base.upTo(look);
    for (const [i, values] of more.entries()) defined(going[i]).row.push(...values);
    gains = trials.map(({ row }) => difference(shipped.slice(0, row.length), row, each).difference);
    const may = mayMatter(gains);
    going = going.filter((trial) => may[trials.indexOf(trial)]);
    done = look;
  }
  return gains;
}

/** The model, observed from one time to another, at which it ends if not sooner. */
export const over = (model: Model, warmUp: number, end: number): Model => ({
  ...model,
  programme: { ...model.programme, warmUp, end: Math.min(model.programme.end, end) },
});
