import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import { compile } from '../../scenario/compile.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { type Replicator, whole } from '../run/replicator.js';
import { type Prices, pricesOf } from './around/prices.js';
import { type Bound, boundOf } from './bound.js';
import { Choice } from './choice.js';
import type { BufferGoal } from './goal.js';
import { unlimitedOf } from './search/ample.js';
import { Bar } from './search/bar.js';
import { forBudget } from './search/budget.js';
import type { Found, Hunt } from './search/hunt.js';
import { loadsAt } from './search/loads.js';
import { areMany } from './search/moves.js';
import { Search } from './search/search.js';
import { forTarget } from './search/target.js';
import { type RateMeasure, rateMeasure, readTrial } from './search/trial.js';
import { keyIn, type Setting, Trials } from './search/trials.js';
import type { Layout, Spot } from './spots.js';

/** A place is moved only for a gain of at least a tenth of the zone; of many spots, for a quarter of it. */
const WORTH = 10,
  WORTH_OF_MANY = 4;
/** To nine digits a rate is what arithmetic allows. */
const ROUNDING = 1e-9;

export interface Asked {
  readonly scenario: Scenario;
  /** As in `Setting`. */
  readonly name?: string | undefined;
  readonly spots: readonly Spot[];
  readonly from?: 'least' | 'present' | undefined;
  readonly replications: number;
  readonly zone: number;
  readonly level: number;
  readonly onStage?: ((text: string) => void) | undefined;
  /** After each step of a walk: how many are left. */
  readonly onStep?: ((left: number) => void) | undefined;
}

/** A scenario whose layout is looked for; what is known so far is the layout as it is, and no limit. */
export interface Prepared {
  readonly hunt: Hunt & { readonly trials: Trials; readonly fresh: Trials };
  readonly setting: Setting;
  readonly measure: RateMeasure;
  readonly bound: Bound | null;
  readonly prices: Prices | null;
  readonly loads: readonly number[];
  /** Of the scenario as it is, from the first replication on. */
  readonly base: readonly Observation[];
}

/** Runs a scenario as it is and without limits, and sets up the search for its layout. */
export async function prepare(
  { scenario, name, spots, from, replications, zone, level, onStage, onStep }: Asked,
  replicator: Replicator,
): Promise<Prepared> {
  const model: Model = compile(scenario),
    present: Layout = spots.map((spot) => spot.present),
    least: Layout = spots.map((spot) => spot.least);
  const base = await replicator.row({ key: keyIn(name, 'base'), model, read: whole }, 1, replications),
    measure = rateMeasure(scenario, model, base, level),
    bound = boundOf(scenario, model, measure),
    prices = pricesOf(scenario, model, spots),
    read = readTrial(measure, spots, prices),
    setting = { scenario, model, name, spots, read };
  const trials = new Trials(replicator, setting, replications),
    fresh = new Trials(replicator, setting, replications, replications),
    unlimited = unlimitedOf(spots),
    loads = loadsAt(scenario, spots);
  trials.add(present, base.map(read(model)));
  await trials.run([unlimited]);
  const hunt = {
    search: new Search(trials, spots, zone / (areMany(spots) ? WORTH_OF_MANY : WORTH), loads, onStep),
    choice: new Choice({ trials, fresh, present, zone, level, replications, onStage }),
    ...{ trials, fresh, spots, present, least, unlimited, zone, replications, onStage },
    ceiling: bound === null ? Infinity : bound.rate * (1 + ROUNDING),
    start: from === 'present' ? present : from === 'least' || !areMany(spots) ? least : null,
  };
  return { hunt, setting, measure, bound, prices, loads, base };
}

/** Looks for the layout that is asked for. */
export const sought = (hunt: Hunt, goal: BufferGoal): Promise<Found> =>
  goal.kind === 'budget' ? forBudget(hunt, goal.places) : forTarget(hunt, barOf(hunt, goal));

/** What a target asks of a layout. */
export const barOf = (
  { trials, fresh, unlimited, present }: Hunt,
  goal: Exclude<BufferGoal, { kind: 'budget' }>,
): Bar =>
  goal.kind === 'target'
    ? new Bar(trials, fresh, goal.rate, null)
    : new Bar(trials, fresh, goal.share, goal.of === 'unlimited' ? unlimited : present);
