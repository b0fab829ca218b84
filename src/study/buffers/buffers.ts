import { compile } from '../../scenario/compile.js';
import { LEVEL, type StudyOptions, wholeNumber } from '../asked.js';
import { Replicator, whole } from '../run/replicator.js';
import { sumOf } from '../statistics/sums.js';
import { lookAround, NOTHING_AROUND } from './around/around.js';
import { pricesOf } from './around/prices.js';
import { Choice } from './choice.js';
import { BuffersForecast } from './forecast.js';
import type { BufferResults } from './results.js';
import { forBudget } from './search/budget.js';
import { Search } from './search/search.js';
import { forTarget } from './search/target.js';
import { rateMeasure, readTrial } from './search/trial.js';
import { Trials } from './search/trials.js';
import { isSameLayout, placesOf, type Spot, spotsOf } from './spots.js';
import { bufferResults } from './summary.js';

export type BufferGoal = BufferResults['goal'];

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
/** Whether a goal can be asked of these spots; a RangeError says what can be. */
export function checkGoal(goal: BufferGoal, spots: readonly Spot[]): void {
  const least = sumOf(spots, (spot) => spot.least);
  if (goal.kind === 'budget' && goal.places < least)
    throw new RangeError(
      `budget: expected at least ${least} places, without which the scenario cannot run, got ${goal.places}`,
    );
}

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
      prices = pricesOf(scenario, model, spots),
      read = readTrial(measure, spots, prices),
      setting = { scenario, model, spots, read };
    const trials = new Trials(replicator, setting, replications),
      fresh = new Trials(replicator, setting, replications, replications);
    trials.add(present, base.map(read(model)));
    forecast.begin();
    const hunt = {
      search: new Search(trials, spots, zone / WORTH, (left) => {
        forecast.step(left);
      }),
      choice: new Choice({ trials, fresh, present, zone, level, replications, onStage }),
      ...{ trials, fresh, present, least, zone, replications, onStage },
      start: options.from === 'present' ? present : least,
    };
    const found =
        goal.kind === 'budget' ? await forBudget(hunt, goal.places) : await forTarget(hunt, goal.rate),
      { chosen, best } = found,
      freshReplications = Math.max(replications, found.rounds);
    await fresh.run([...chosen.others, chosen.layout, best ?? present, present], freshReplications);
    const isChosen = found.ample === null || !isSameLayout(chosen.layout, found.ample);
    const around =
      options.looksAround !== false && isChosen
        ? await lookAround({
            ...{ scenario, spots, prices, trials, fresh, present, zone, level, onStage },
            around: new Trials(replicator, setting, Math.max(AROUND, replications), replications, true),
            chosen: chosen.layout,
            best,
            allows: (layout, by) =>
              goal.kind === 'budget' ? placesOf(layout) <= goal.places : by.mean(layout) >= goal.rate,
          })
        : NOTHING_AROUND;
    return bufferResults(
      { ...options, level, zone, spots, prices, measure, trials, fresh, freshReplications, around },
      found,
    );
  } finally {
    await replicator.close();
  }
}
