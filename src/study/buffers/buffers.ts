import { LEVEL, type StudyOptions, wholeNumber } from '../asked.js';
import { Replicator } from '../run/replicator.js';
import { lookAround, NOTHING_AROUND } from './around/around.js';
import { overCases } from './cases/over-cases.js';
import { type Cases, spotsOfAll } from './cases/spots-of-all.js';
import { casesAnswer } from './cases/words.js';
import { BuffersForecast } from './forecast.js';
import { type BufferGoal, checkGoal } from './goal.js';
import { outlook } from './outlook.js';
import { type Asked, barOf, type Prepared, prepare, sought } from './prepare.js';
import type { BufferResults } from './results.js';
import type { Hunt } from './search/hunt.js';
import { areMany } from './search/moves.js';
import { Trials } from './search/trials.js';
import type { Layout } from './spots.js';
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
  /** Changes of the scenario under which the layout has to do as well; left out: only as it is. */
  readonly cases?: Cases | undefined;
}

/** What all ways to a layout begin with. */
interface Begun {
  readonly options: BufferOptions;
  readonly asked: Asked;
  /** The scenario as it is. */
  readonly base: Prepared;
  readonly replicator: Replicator;
}

/** Fresh replications of what lies around the chosen layout, at least: fewer tell nothing at its level. */
const AROUND = 10;

/** As many as the search has; of many spots, where much lies around it, half of them. */
const aroundOf = ({ spots, replications }: Asked): number =>
  Math.max(AROUND, areMany(spots) ? Math.ceil(replications / 2) : replications);

/**
 * Shares waiting places out over the buffers and banks of a route: the fewest places that come within the
 * zone of the most throughput for a budget, or the fewest for a rate (Gershwin & Schor 2000: the primal by
 * the dual). Then what each place of that layout buys, and which layout is cheapest. With cases one layout
 * for all of them, by the one in which it loses most. Same scenario, seed and options: same results, to the
 * last bit.
 */
export async function buffersStudy(options: BufferOptions): Promise<BufferResults> {
  const { scenario, data, goal, from, replications, zone = 0.01, level = LEVEL, onStage, cases } = options;
  wholeNumber('replications', replications, 3);
  if (!(zone > 0 && zone < 1))
    throw new RangeError(`zone: expected a share above 0 and below 1, got ${zone}; give for example 0.01`);
  const spots = spotsOfAll(scenario, options.at, cases);
  checkGoal(goal, spots);

  const forecast = new BuffersForecast(replications, options.onForecast),
    onStep = (left: number): void => {
      forecast.step(left);
    },
    asked = { scenario, spots, from, replications, zone, level, onStage, onStep },
    replicator = new Replicator({
      ...options,
      onReplication: (done, of) => {
        forecast.done = done;
        options.onReplication?.(done, of);
      },
    });
  try {
    const base = await prepare(asked, replicator);
    forecast.begin();
    const begun = { options, asked, base, replicator },
      results = cases === undefined ? await inOne(begun) : await inAll(begun, cases);
    if (options.looksAround === false) return results;
    onStage?.('looking at what stops the build with the layout chosen');
    const chosen = { spots, chosen: results.chosen.places };
    return {
      ...results,
      ...(await outlook({ scenario, data, ...chosen, base: base.base, level }, replicator)),
    };
  } finally {
    await replicator.close();
  }
}

/** A layout for the scenario as it is, and what lies around it. */
async function inOne({ options, asked, base, replicator }: Begun): Promise<BufferResults> {
  const { goal, looksAround, onStage } = options,
    { spots, replications, zone, level } = asked,
    { hunt, setting, measure, bound, prices, loads } = base,
    { trials, fresh, present, unlimited } = hunt;
  const found = await sought(hunt, goal),
    { chosen, best } = found,
    most = mostOf(hunt),
    freshReplications = Math.max(replications, found.rounds);
  await fresh.run(
    [...chosen.others, chosen.layout, best ?? present, present, unlimited, most],
    freshReplications,
  );
  const around =
    looksAround !== false && found.isReached
      ? await lookAround({
          ...{ spots, loads, prices, trials, fresh, present, best, zone, level, onStage },
          around: new Trials(replicator, setting, aroundOf(asked), replications, true),
          chosen: chosen.layout,
          most: goal.kind === 'budget' ? goal.places : Infinity,
          bar: found.bar,
        })
      : NOTHING_AROUND;
  const study = { ...options, level, zone, spots, prices, measure, trials, fresh, freshReplications };
  return bufferResults({ ...study, unlimited, most, bound, around }, found);
}

/** One layout for all cases; its rates and differences are those in the scenario as it is. */
async function inAll({ options, asked, base, replicator }: Begun, cases: Cases): Promise<BufferResults> {
  const { goal } = options,
    { measure, bound, prices, hunt } = base,
    { result, found, told: fresh } = await overCases({ cases, goal, asked, base }, replicator),
    study = { ...options, ...asked, prices, measure, trials: hunt.trials, fresh, around: NOTHING_AROUND },
    { unlimited } = hunt,
    its = { ...study, bound, unlimited, most: unlimited, freshReplications: found.rounds },
    bar = goal.kind === 'budget' ? null : barOf({ ...hunt, fresh }, goal),
    results = { ...bufferResults(its, { ...found, bar }), cases: result };
  return { ...results, answer: casesAnswer(results, result, found.isReached) };
}

/** The layout that shipped most in the search: no limit, unless one with limits is ahead of that. */
function mostOf({ search, trials, unlimited }: Hunt): Layout {
  const most = trials.mean(unlimited) * (1 + search.worth);
  return trials.ranked().find((layout) => trials.mean(layout) > most) ?? unlimited;
}
