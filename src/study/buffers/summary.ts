import { headOf, type Origin } from '../head.js';
import { defined } from '../lists.js';
import { difference, familyLevel } from '../statistics/difference.js';
import { boundsOf, type Estimate, mapped } from '../statistics/estimate.js';
import { amount } from '../statistics/skewed-interval.js';
import { mean } from '../statistics/sums.js';
import { type Standing, standingOf } from '../statistics/zone.js';
import type { Prices } from './around/prices.js';
import type { Around } from './around/results.js';
import type { BufferGoal } from './goal.js';
import { buffersNotes } from './notes.js';
import type { BestMore, BufferResults, ComparedLayout, LayoutResult } from './results.js';
import type { Bar } from './search/bar.js';
import type { Found } from './search/hunt.js';
import type { RateMeasure } from './search/trial.js';
import type { Trials } from './search/trials.js';
import { buffersSentence } from './sentence.js';
import { distinct, isSameLayout, type Layout, placesOf, type Spot } from './spots.js';
import { toSettle, verdictOf } from './verdict.js';

/** The study when its search is over. */
export interface BufferFindings
  extends Origin,
    Pick<BufferResults, 'replications' | 'freshReplications' | 'zone' | 'bound'> {
  readonly goal: BufferGoal;
  readonly spots: readonly Spot[];
  readonly measure: RateMeasure;
  readonly trials: Trials;
  readonly fresh: Trials;
  readonly prices: Prices | null;
  readonly around: Around;
  readonly unlimited: Layout;
  /** What shipped most in the search. */
  readonly most: Layout;
}

/** What was found, as results. */
export function bufferResults(study: BufferFindings, found: Found): BufferResults {
  const { scenario, replications, freshReplications, level, zone, spots, measure, trials, fresh } = study;
  const { chosen: selected, best, bar, within, fewer } = found,
    present = spots.map((spot) => spot.present);
  const valuesOf = (layout: Layout): readonly number[] => fresh.values(layout).slice(0, freshReplications);
  const result = (layout: Layout, rate: Estimate): LayoutResult => ({
    places: layout,
    total: placesOf(layout),
    rate,
    costPerDay: study.prices?.floorOf(layout) ?? null,
  });
  const compared = distinct([present, best ?? present, ...selected.others]).filter(
      (layout) => !isSameLayout(layout, selected.layout),
    ),
    isRelative = bar !== null && bar.of !== null,
    hasMore = study.most !== study.unlimited,
    // The rate of the chosen layout, what each of the others and no limit ship more or less, what a relative
    // target asks, and a layout that ships more than no limit does.
    eachLevel = familyLevel(level, 2 + compared.length + Number(isRelative) + Number(hasMore));
  const told = (layout: Layout): LayoutResult => result(layout, amount(valuesOf(layout), eachLevel));
  const searched = (layout: Layout): Estimate => amount(trials.values(layout), level);
  const matters = zone * fresh.mean(selected.layout, freshReplications);
  const chosen = told(selected.layout);
  const against = (layout: Layout): ComparedLayout => {
    const behind = difference(valuesOf(layout), valuesOf(selected.layout), eachLevel);
    return {
      ...told(layout),
      behind,
      standing: isSameLayout(layout, selected.layout)
        ? 'chosen'
        : STANDINGS[standingOf(behind.difference, matters)],
    };
  };
  const goal = goalOf(study, bar),
    beyond = difference(valuesOf(study.unlimited), valuesOf(study.most), eachLevel),
    aboveAsked = isRelative
      ? difference(bar.by(fresh, freshReplications), valuesOf(selected.layout), eachLevel)
      : null;
  const curve = curveOf(trials, goal.kind === 'budget' ? goal.places : placesOf(selected.layout)).map(
    (layout) => result(layout, searched(layout)),
  );
  const results: Omit<BufferResults, 'answer'> = {
    ...headOf('buffers', study),
    replications,
    freshReplications,
    eachLevel,
    zone,
    currency: scenario.costs?.currency ?? null,
    unit: measure.unit,
    over: measure.over,
    goal,
    aboveAsked,
    search: { within, fewer },
    bound: study.bound,
    unlimited: {
      rate: told(study.unlimited).rate,
      behind: difference(valuesOf(study.unlimited), valuesOf(selected.layout), eachLevel),
      exceeded: boundsOf(beyond.difference).low > 0 ? { ...told(study.most), more: beyond } : null,
    },
    spots: spots.map(({ name, kind, least, present: places }, s) => ({
      name,
      kind,
      least,
      present: places,
      chosen: defined(selected.layout[s]),
      best: best === null ? null : defined(best[s]),
    })),
    chosen,
    present: against(present),
    gain: difference(valuesOf(present), valuesOf(selected.layout), eachLevel),
    best: best === null ? null : against(best),
    more: best === null || isSameLayout(best, selected.layout) ? null : moreOf(best),
    selection: {
      settled: selected.settled,
      rounds: selected.rounds,
      others: selected.others.map(against).sort((a, b) => b.rate.mean - a.rate.mean),
    },
    curve: curve.map((point) => ({ ...point, behind: behind(point, curve) })),
    layoutsTried: trials.tried,
    ...study.around,
    plannedEnd: null,
    constraint: null,
    weakest: null,
    lastUnit: { chosen: [], present: [] },
  };
  function moreOf(best: Layout): BestMore {
    const more = difference(valuesOf(selected.layout), valuesOf(best), eachLevel);
    return {
      ...more,
      places: placesOf(best) - placesOf(selected.layout),
      isSettled: boundsOf(more.difference).high <= zone * fresh.mean(best, freshReplications),
    };
  }
  const margin =
      goal.kind === 'budget'
        ? null
        : (aboveAsked?.difference ?? mapped(chosen.rate, (rate) => rate - goal.rate)),
    verdict = margin === null ? 'found' : verdictOf(goal, margin, found.isReached, study.bound),
    settle = settling(results, margin);
  return {
    ...results,
    answer: {
      verdict,
      sentence: buffersSentence(results, verdict, settle),
      notes: buffersNotes(results, verdict),
      toSettle: settle,
    },
  };
}

/** The rate of a relative target is known when all is run. */
function goalOf({ goal, fresh, freshReplications }: BufferFindings, bar: Bar | null): BufferResults['goal'] {
  if (goal.kind === 'budget' || bar === null)
    return goal.kind === 'budget' ? goal : { kind: 'budget', places: 0 };
  return goal.kind === 'target'
    ? { ...goal, relative: null }
    : {
        kind: 'target',
        rate: mean(bar.by(fresh, freshReplications)),
        relative: { share: goal.share, of: goal.of },
      };
}

/** Of a target that the interval lies across; of a budget, where that lies across the edge of the zone. */
const settling = (
  { more, best, zone }: Omit<BufferResults, 'answer'>,
  margin: Estimate | null,
): number | null =>
  margin !== null
    ? toSettle(margin)
    : more === null || best === null || more.isSettled
      ? null
      : toSettle(more.difference, zone * best.rate.mean);

/** By how much a point is below the highest of the curve, as a share of that. */
function behind({ rate }: LayoutResult, curve: readonly LayoutResult[]): number {
  const highest = Math.max(...curve.map((each) => each.rate.mean));
  return highest > 0 ? 1 - rate.mean / highest : 0;
}

const STANDINGS: Readonly<Record<Standing, ComparedLayout['standing']>> = {
  more: 'behind',
  'at least a little more': 'behind',
  within: 'equal',
  open: 'not told apart',
  'at least a little less': 'ahead',
  less: 'ahead',
};

/** The best layout tried for each number of places up to `most`, in the search. */
function curveOf(trials: Trials, most: number): Layout[] {
  const best = new Map<number, Layout>();
  for (const layout of trials.ranked())
    if (placesOf(layout) <= most && !best.has(placesOf(layout))) best.set(placesOf(layout), layout);
  return [...best.values()].sort((a, b) => placesOf(a) - placesOf(b));
}
