import { compile } from '../../scenario/compile.js';
import { LEVEL, type StudyOptions, wholeNumber } from '../asked.js';
import { defined } from '../lists.js';
import { Replicator, whole } from '../run/replicator.js';
import { sumOf } from '../statistics/sums.js';
import { BuffersForecast } from './forecast.js';
import type { BufferResults } from './results.js';
import { Search } from './search.js';
import { type Selected, selectBest } from './select.js';
import { type Layout, placesOf, type Spot, spotsOf } from './spots.js';
import { bufferResults } from './summary.js';
import { rateMeasure, readTrial } from './trial.js';
import { Trials } from './trials.js';

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
}

/** So many layouts come into the final selection. */
const CANDIDATES = 5;
/** Places in every spot, at least, that stand for as many as one likes. */
const AMPLE = 64;
/** A place is moved only for a gain of at least a tenth of the zone. */
const WORTH = 10;
/** Where fresh replications fall short of the target, places are added so often. */
const MOST_MORE = 3;

/** Whether a goal can be asked of these spots; a RangeError says what can be. */
export function checkGoal(goal: BufferGoal, spots: readonly Spot[]): void {
  const least = sumOf(spots, (spot) => spot.least);
  if (goal.kind === 'budget' && goal.places < least)
    throw new RangeError(
      `budget: expected at least ${least} places, without which the scenario cannot run, got ${goal.places}`,
    );
}

/**
 * Shares waiting places out over the buffers and banks of a route: most throughput for a budget of places,
 * or, by the dual of it, the fewest places for a rate (Gershwin & Schor 2000). Places cost the same
 * everywhere, so the fewest are the cheapest. Same scenario, seed and options: same results, to the last bit.
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
      read = readTrial(measure, spots),
      setting = { scenario, model, spots, read };
    const trials = new Trials(replicator, setting, replications),
      fresh = new Trials(replicator, setting, replications, true);
    trials.add(present, base.map(read(model)));
    forecast.begin();
    const search = new Search(trials, spots, zone / WORTH, (left) => {
        forecast.step(left);
      }),
      start = options.from === 'present' ? present : least;
    const select = async (places: number): Promise<Selected> => {
      const found = trials
          .ranked()
          .filter((layout) => placesOf(layout) === places)
          .slice(0, CANDIDATES),
        isPresent = (layout: Layout): boolean => layout.join() === present.join();
      // What is there already is not given up for something worse, and of equal ones the first is taken.
      const candidates =
        goal.kind === 'budget' && placesOf(present) <= places
          ? [present, ...found.filter((layout) => !isPresent(layout))]
          : found;
      onStage?.(`selecting among ${candidates.length} layouts with ${places} places`);
      return selectBest(fresh, candidates, zone * trials.mean(defined(found[0])), level);
    };
    const finish = async (selected: Selected, ample: Layout | null): Promise<BufferResults> => {
      const freshReplications = Math.max(replications, selected.rounds);
      await fresh.run([...selected.others, selected.layout, present], freshReplications);
      const study = { ...options, level, zone, spots, measure, trials, fresh, freshReplications };
      return bufferResults(study, selected, ample);
    };

    if (goal.kind === 'budget') {
      onStage?.(`sharing out ${goal.places} places over ${spots.length} spots`);
      await search.exchange(await search.walk(start, goal.places));
      return await finish(await select(goal.places), null);
    }

    const reaches = (layout: Layout): boolean => trials.mean(layout) >= goal.rate,
      ample = present.map((places) => Math.max(AMPLE, places));
    await trials.run([ample]);
    if (!reaches(ample)) return await finish({ layout: ample, others: [], settled: true, rounds: 0 }, ample);
    onStage?.(`looking for the fewest places over ${spots.length} spots`);
    let layout = await search.walk(
      start,
      Infinity,
      (each) => reaches(each) || placesOf(each) >= placesOf(ample),
    );
    while (placesOf(layout) > placesOf(least)) {
      const fewer = await search.exchange(await search.walk(layout, placesOf(layout) - 1), reaches);
      if (!reaches(fewer)) break;
      layout = fewer;
    }
    await search.exchange(layout);
    for (let more = 0; ; more++) {
      const selected = await select(placesOf(layout));
      await fresh.run([selected.layout]);
      if (fresh.mean(selected.layout) >= goal.rate || more === MOST_MORE)
        return await finish(selected, ample);
      layout = await search.exchange(await search.walk(selected.layout, placesOf(layout) + 1));
    }
  } finally {
    await replicator.close();
  }
}
