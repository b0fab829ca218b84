import { compile } from '../../scenario/compile.js';
import { LEVEL, type StudyOptions, wholeNumber } from '../asked.js';
import { Replicator, whole } from '../run/replicator.js';
import { lookAround, NOTHING_AROUND } from './around/around.js';
import { pricesOf } from './around/prices.js';
import { boundOf } from './bound.js';
import { Choice } from './choice.js';
import { BuffersForecast } from './forecast.js';
import { type BufferGoal, checkGoal } from './goal.js';
import { outlook } from './outlook.js';
import type { BufferResults } from './results.js';
import { unlimitedOf } from './search/ample.js';
import { Bar } from './search/bar.js';
import { forBudget } from './search/budget.js';
import type { Hunt } from './search/hunt.js';
import { loadsAt } from './search/loads.js';
import { Search } from './search/search.js';
import { forTarget } from './search/target.js';
import { rateMeasure, readTrial } from './search/trial.js';
import { Trials } from './search/trials.js';
import { type Layout, spotsOf } from './spots.js';
import { bufferResults } from './summary.js';

export interface BufferOptions extends StudyOptions {
  readonly goal: BufferGoal;
  /** Stations and lanes whose places are shared out; none: all limited ones on the route of the units. */
  readonly at?: readonly string[] | undefined;
  /** Where the search begins: with the least places that can be, or with the layout as it is. */
  readonly from?: 'least' | 'present' | undefined;
  /** Of each layout in the search, at least 3. */
  readonly replications: number;
  /** Relative difference that does not matter, default 0.01. */
  readonly zone?: number | undefined;
  /** Whether to look at what each place buys, and for the cheapest layout; default true. */
  readonly looksAround?: boolean | undefined;
}

/** Fresh replications of what lies around the chosen layout, at least: fewer tell nothing at its level. */
const AROUND = 10;
/** A place is moved only for a gain of at least a tenth of the zone. */
const WORTH = 10;
/** To nine digits a rate is what arithmetic allows. */
const ROUNDING = 1e-9;

/**
 * Shares waiting places out over the buffers and banks of a route: the fewest places that come within the
 * zone of the most throughput for a budget, or the fewest for a rate (Gershwin & Schor 2000: the primal by
 * the dual). Then what each place of that layout buys, and which layout is cheapest. Same scenario, seed and
 * options: same results, to the last bit.
 */
export async function buffersStudy(options: BufferOptions): Promise<BufferResults> {
  const { scenario, goal, replications, zone = 0.01, level = LEVEL, onStage } = options;
  wholeNumber('replications', replications, 3);
  if (!(zone > 0 && zone < 1))
    throw new RangeError(`zone: expected a share above 0 and below 1, got ${zone}; give for example 0.01`);
  const spots = spotsOf(scenario, options.at),
    present = spots.map((spot) => spot.present),
    least = spots.map((spot) => spot.least);
  checkGoal(goal, spots);

  const model = compile(scenario),
    forecast = new BuffersForecast(replications, options.onForecast),
    replicator = new Replicator({
      ...options,
      onReplication: (done, of) => {
        forecast.done = done;
        options.onReplication?.(done, of);
      },
    });
  try {
    const base = await replicator.row({ key: 'base', model, read: whole }, 1, replications),
      measure = rateMeasure(scenario, model, base, level),
      bound = boundOf(scenario, model, measure),
      prices = pricesOf(scenario, model, spots),
      read = readTrial(measure, spots, prices),
      setting = { scenario, model, spots, read };
    const trials = new Trials(replicator, setting, replications),
      fresh = new Trials(replicator, setting, replications, replications),
      unlimited = unlimitedOf(spots),
      loads = loadsAt(scenario, spots);
    trials.add(present, base.map(read(model)));
    await trials.run([unlimited]);
    forecast.begin();
    const hunt: Hunt = {
      search: new Search(trials, spots, zone / WORTH, loads, (left) => {
        forecast.step(left);
      }),
      choice: new Choice({ trials, fresh, present, zone, level, replications, onStage }),
      ...{ trials, fresh, spots, present, least, unlimited, zone, replications, onStage },
      ceiling: bound === null ? Infinity : bound.rate * (1 + ROUNDING),
      start: options.from === 'present' ? present : least,
    };
    const found =
        goal.kind === 'budget'
          ? await forBudget(hunt, goal.places)
          : await forTarget(hunt, barOf(hunt, goal)),
      { chosen, best } = found,
      most = mostOf(hunt),
      freshReplications = Math.max(replications, found.rounds);
    await fresh.run(
      [...chosen.others, chosen.layout, best ?? present, present, unlimited, most],
      freshReplications,
    );
    const around =
      options.looksAround !== false && found.isReached
        ? await lookAround({
            ...{ spots, loads, prices, trials, fresh, present, best, zone, level, onStage },
            around: new Trials(replicator, setting, Math.max(AROUND, replications), replications, true),
            chosen: chosen.layout,
            most: goal.kind === 'budget' ? goal.places : Infinity,
            bar: found.bar,
          })
        : NOTHING_AROUND;
    const study = { ...options, level, zone, spots, prices, measure, trials, fresh, freshReplications };
    const results = bufferResults({ ...study, unlimited, most, bound, around }, found);
    if (options.looksAround === false) return results;
    onStage?.('looking at what stops the build with the layout chosen');
    return {
      ...results,
      ...(await outlook(
        { scenario, data: options.data, spots, chosen: chosen.layout, base, level },
        replicator,
      )),
    };
  } finally {
    await replicator.close();
  }
}

/** What a target asks of a layout. */
const barOf = (
  { trials, fresh, unlimited, present }: Hunt,
  goal: Exclude<BufferGoal, { kind: 'budget' }>,
): Bar =>
  goal.kind === 'target'
    ? new Bar(trials, fresh, goal.rate, null)
    : new Bar(trials, fresh, goal.share, goal.of === 'unlimited' ? unlimited : present);

/** The layout that shipped most in the search: no limit, unless one with limits is ahead of that. */
function mostOf({ search, trials, unlimited }: Hunt): Layout {
  const most = trials.mean(unlimited) * (1 + search.worth);
  return trials.ranked().find((layout) => trials.mean(layout) > most) ?? unlimited;
}
