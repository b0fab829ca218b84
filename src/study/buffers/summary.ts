import { bounds, count, intervalName, mean, number } from '../format.js';
import { headOf, type Origin } from '../head.js';
import { defined } from '../lists.js';
import { difference, familyLevel } from '../statistics/difference.js';
import { boundsOf, type Estimate } from '../statistics/estimate.js';
import { amount } from '../statistics/interval.js';
import type { BufferResults, LayoutResult } from './results.js';
import type { Selected } from './select.js';
import { type Layout, placesOf, type Spot } from './spots.js';
import type { RateMeasure } from './trial.js';
import type { Trials } from './trials.js';

type Goal = BufferResults['goal'];
type BufferVerdict = BufferResults['answer']['verdict'];

/** The study when its search is over. */
export interface BufferFindings
  extends Origin,
    Pick<BufferResults, 'replications' | 'freshReplications' | 'zone' | 'goal'> {
  readonly spots: readonly Spot[];
  readonly measure: RateMeasure;
  readonly trials: Trials;
  readonly fresh: Trials;
}

/** What was found, as results; `ample` places of a target reach it in the search, or nothing does. */
export function bufferResults(
  study: BufferFindings,
  selected: Selected,
  ample: Layout | null,
): BufferResults {
  const { scenario, replications, freshReplications, level, zone, goal, spots, measure, trials, fresh } =
    study;
  const spaceDay = scenario.costs?.spaceDay,
    present = spots.map((spot) => spot.present);
  const valuesOf = (layout: Layout): readonly number[] => fresh.values(layout).slice(0, freshReplications);
  const result = (layout: Layout, rate: Estimate): LayoutResult => ({
    places: layout,
    total: placesOf(layout),
    rate,
    costPerDay: spaceDay === undefined ? null : spaceDay * placesOf(layout),
  });
  const told = (layout: Layout): LayoutResult => result(layout, amount(valuesOf(layout), level));
  const searched = (layout: Layout): Estimate => amount(trials.values(layout), level);
  const together = familyLevel(level, selected.others.length),
    matters = zone * fresh.mean(selected.layout, freshReplications);
  const chosen = told(selected.layout);
  const curve = curveOf(trials, placesOf(selected.layout)).map((layout) => result(layout, searched(layout)));
  const last = curve.at(-1),
    near =
      last === undefined ? undefined : curve.find(({ rate }) => rate.mean >= (1 - zone) * last.rate.mean);
  const results: Omit<BufferResults, 'answer'> = {
    ...headOf('buffers', study),
    replications,
    freshReplications,
    zone,
    currency: scenario.costs?.currency ?? null,
    unit: measure.unit,
    over: measure.over,
    goal,
    spots: spots.map(({ name, kind, least, present: places }, s) => ({
      name,
      kind,
      least,
      present: places,
      chosen: defined(selected.layout[s]),
    })),
    chosen,
    present: told(present),
    gain: difference(valuesOf(present), valuesOf(selected.layout), level),
    selection: {
      settled: selected.settled,
      rounds: selected.rounds,
      others: selected.others
        .map((layout) => {
          const behind = difference(valuesOf(layout), valuesOf(selected.layout), together);
          return { ...told(layout), behind, standing: standing(behind.difference, matters) };
        })
        .sort((a, b) => b.rate.mean - a.rate.mean),
    },
    curve,
    enough: near === undefined || near === last ? null : near.total,
    ample: ample === null ? null : { placesEach: Math.min(...ample), rate: searched(ample) },
    layoutsTried: trials.tried,
  };
  const verdict = verdictOf(goal, chosen.rate, ample === null ? Infinity : trials.mean(ample));
  return { ...results, answer: { verdict, sentence: sentence(results, verdict) } };
}

function standing(
  behind: Estimate,
  matters: number,
): BufferResults['selection']['others'][number]['standing'] {
  const { low, high } = boundsOf(behind);
  if (low > -matters && high < matters) return 'equal';
  return low > 0 ? 'behind' : high < 0 ? 'ahead' : 'not told apart';
}

/** The best layout tried for each number of places up to `most`, in the search. */
function curveOf(trials: Trials, most: number): Layout[] {
  const best = new Map<number, Layout>();
  for (const layout of trials.ranked())
    if (placesOf(layout) <= most && !best.has(placesOf(layout))) best.set(placesOf(layout), layout);
  return [...best.values()].sort((a, b) => placesOf(a) - placesOf(b));
}

/** @param most mean with ample places, in the search */
function verdictOf(goal: Goal, rate: Estimate, most: number): BufferVerdict {
  if (goal.kind === 'budget') return 'found';
  if (most < goal.rate) return 'out of reach';
  const { low, high } = boundsOf(rate);
  return low >= goal.rate ? 'reached' : high < goal.rate ? 'not reached' : 'not settled';
}

/** The answer, in one sentence that begins with it. */
function sentence(results: Omit<BufferResults, 'answer'>, verdict: BufferVerdict): string {
  const { goal, chosen, present, gain, unit, zone, enough, ample, level, spots } = results;
  const rate =
    `${mean(chosen.rate)} ${unit} (${intervalName(level)} ${bounds(chosen.rate)}, ` +
    `${count(chosen.rate.n, 'replication')})`;
  const against =
    chosen.places.join() === present.places.join()
      ? 'which is the layout as it is'
      : `${gain.difference.mean > 0 ? '+' : ''}${mean(gain.difference)} (${bounds(gain.difference)}) ` +
        `against the ${present.total} of the layout as it is`;
  if (goal.kind === 'budget') {
    const slack =
      enough === null
        ? ''
        : `; ${enough === 0 ? 'none at all comes' : `${enough} already come`} within ` +
          `${number(100 * zone)} % of it`;
    return `${count(chosen.total, 'place')}, well shared out, give ${rate}, ${against}${slack}.`;
  }
  const asked = `${number(goal.rate)} ${unit}`,
    places = count(chosen.total, 'place'),
    given = `they give ${rate}, ${against}`;
  switch (verdict) {
    case 'out of reach':
      return (
        `${asked} are out of reach of waiting places: ${defined(ample?.placesEach)} or more in each of ` +
        `${count(spots.length, 'spot')} give ${rate}.`
      );
    case 'reached':
      return `${asked} take ${places}: ${given}.`;
    case 'not reached':
      return `${asked} are not reached with the ${places} found: ${given}.`;
    default:
      return (
        `Whether ${places} are enough for ${asked} is not settled: ${given}; ` +
        'more replications are needed.'
      );
  }
}
