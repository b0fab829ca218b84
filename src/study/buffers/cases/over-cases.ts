import { defined } from '../../lists.js';
import type { Replicator } from '../../run/replicator.js';
import { Choice } from '../choice.js';
import type { BufferGoal } from '../goal.js';
import { type Asked, type Prepared, prepare, sought } from '../prepare.js';
import { everyLayout } from '../search/every.js';
import type { Found, Hunt } from '../search/hunt.js';
import { Search } from '../search/search.js';
import { Trials } from '../search/trials.js';
import { MOST_ROUNDS } from '../select.js';
import { distinct, type Layout, placesOf } from '../spots.js';
import { CaseTrials, largest, type Yardstick } from './case-trials.js';
import { casesResult } from './compared.js';
import type { CasesResult } from './results.js';
import type { Cases } from './spots-of-all.js';

/**
 * Fresh replications of each layout in every case: so many times as many as in the search, and so many at
 * least. There are many intervals, and what is told is which layout is better.
 */
const TIMES = 2,
  LEAST = 20;
/** Of few spots the search begins from so many of the layouts that single cases take. */
const STARTS = 3;

export interface OverCases {
  readonly cases: Cases;
  readonly goal: BufferGoal;
  /** How each case is searched: the scenario as it is. */
  readonly asked: Asked;
  /** The same, prepared. */
  readonly base: Prepared;
}

export interface FoundOver {
  readonly result: CasesResult;
  /** The layout to be built, and that for the whole budget. */
  readonly found: Found;
  /** Fresh replications of the scenario as it is. */
  readonly told: Trials;
  readonly prepared: readonly Prepared[];
}

/**
 * One layout for several cases: by what it keeps, in the case where that is least, of what the best layout
 * for that case alone ships; for a target the fewest places that reach it in every case. Each case is
 * searched alone first; then all of them at once, from what these found. Compared on replications that no
 * search has seen.
 */
export async function overCases(study: OverCases, replicator: Replicator): Promise<FoundOver> {
  const { cases, goal, asked, base } = study,
    { replications, zone, level, onStage } = asked;
  const prepared = [base];
  for (const { name, scenario } of cases.whatIfs) {
    onStage?.(`running “${name}” as it is`);
    prepared.push(await prepare({ ...asked, scenario, name, onStage: named(onStage, name) }, replicator));
  }
  const alone: Found[] = [];
  for (const { hunt } of prepared) alone.push(await sought(hunt, goal));
  const yardstick = yardstickOf(goal, prepared, alone),
    worst = huntOver(study, prepared, yardstick, 'worst'),
    all = largest(alone.map(({ chosen }) => chosen.layout)),
    pool = distinct([
      base.hunt.present,
      ...alone.flatMap(({ chosen, best }) => [chosen.layout, best ?? chosen.layout]),
    ]);
  onStage?.(`looking for one layout for ${prepared.length} cases`);
  const found = await forAll(worst, goal, pool, all),
    forMean =
      goal.kind === 'budget'
        ? await forAll(
            huntOver(study, prepared, yardstick, 'mean'),
            goal,
            [...pool, found.chosen.layout],
            all,
          )
        : null;

  const n = Math.max(LEAST, TIMES * replications),
    before = replications + Math.max(replications, MOST_ROUNDS),
    told = prepared.map(({ setting }) => new Trials(replicator, setting, n, before)),
    layouts = distinct([
      found.chosen.layout,
      ...[found.best, forMean?.chosen.layout ?? null, base.hunt.present].filter((each) => each !== null),
      ...alone.map(({ chosen }) => chosen.layout),
    ]);
  onStage?.(`comparing ${layouts.length} layouts in ${prepared.length} cases`);
  for (const [c, each] of told.entries())
    await each.run([...layouts, base.hunt.unlimited, yardstick.of?.[c] ?? base.hunt.unlimited]);
  return {
    result: casesResult({
      ...{ cases, prepared, told, layouts, zone, level },
      best: found.best,
      forMean: forMean?.chosen.layout ?? null,
      alone: alone.map(({ chosen }) => chosen.layout),
      yardstick,
      isTarget: goal.kind !== 'budget',
      most: goal.kind === 'budget' ? goal.places : Infinity,
      within: goal.kind === 'budget' ? found.within : found.fewer,
    }),
    found: { ...found, chosen: { ...found.chosen, others: [] }, rounds: n },
    told: defined(told[0]),
    prepared,
  };
}

/**
 * A budget is measured by the best that it was found to do in each case alone: a case that no layout helps
 * does not decide then. A target is what has to be reached.
 */
function yardstickOf(goal: BufferGoal, prepared: readonly Prepared[], alone: readonly Found[]): Yardstick {
  if (goal.kind === 'budget') return { of: alone.map(({ best, chosen }) => best ?? chosen.layout), times: 1 };
  return goal.kind === 'target'
    ? { of: null, times: goal.rate }
    : {
        of: prepared.map(({ hunt }) => (goal.of === 'unlimited' ? hunt.unlimited : hunt.present)),
        times: goal.share,
      };
}

function huntOver(
  { asked, base, goal }: OverCases,
  prepared: readonly Prepared[],
  yardstick: Yardstick,
  by: 'worst' | 'mean',
): Hunt {
  const { spots, zone, level, replications, onStage } = asked,
    trials = new CaseTrials(
      prepared.map(({ hunt }) => hunt.trials),
      yardstick,
      by,
    ),
    fresh = new CaseTrials(
      prepared.map(({ hunt }) => hunt.fresh),
      yardstick,
      by,
    );
  return {
    ...base.hunt,
    ...{ trials, fresh },
    search: new Search(trials, spots, base.hunt.search.worth, base.loads),
    choice: new Choice({
      ...{ trials, fresh, zone, level, replications, onStage },
      present: base.hunt.present,
    }),
    ceiling:
      goal.kind === 'target' ? Math.min(...prepared.map(({ hunt }) => hunt.ceiling)) / goal.rate : Infinity,
  };
}

/**
 * From what single cases took: for a budget the best of it, for a target what has the most of each spot.
 * @param all the most of each spot
 */
async function forAll(hunt: Hunt, goal: BufferGoal, pool: readonly Layout[], all: Layout): Promise<Found> {
  const { search, trials, least } = hunt;
  if (goal.kind !== 'budget') {
    await trials.run([...pool, all]);
    return sought({ ...hunt, start: all }, { kind: 'target', rate: 1 });
  }
  if (everyLayout(least, goal.places) !== null) return sought(hunt, goal);
  await trials.run([all]);
  const cut = await search.walk(all, goal.places),
    starts = await trials.best(
      [...pool, cut].filter((layout) => placesOf(layout) <= goal.places),
      search.hasMany ? 1 : STARTS,
    );
  for (const start of starts.slice(1)) await search.climb(await search.walk(start, goal.places), goal.places);
  return sought({ ...hunt, start: defined(starts[0]) }, goal);
}

const named = (onStage: Asked['onStage'], name: string): Asked['onStage'] =>
  onStage &&
  ((text) => {
    onStage(`“${name}”: ${text}`);
  });
