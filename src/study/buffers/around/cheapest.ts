import { defined } from '../../lists.js';
import { familyLevel } from '../../statistics/difference.js';
import { boundsOf, type Estimate, negated } from '../../statistics/estimate.js';
import { amount } from '../../statistics/skewed-interval.js';
import { mean } from '../../statistics/sums.js';
import { standingOf } from '../../statistics/zone.js';
import { type Bar, mayReach } from '../search/bar.js';
import { everyLayout, tryEvery } from '../search/every.js';
import type { Trials } from '../search/trials.js';
import { distinct, isSameLayout, type Layout, placesOf, type Spot } from '../spots.js';
import { Descent } from './descent.js';
import { Paired } from './paired.js';
import type { Prices } from './prices.js';
import type { Cheapest, PricedLayout } from './results.js';

/** So many of the cheapest of the search are run on fresh replications. */
const CANDIDATES = 5;

export interface CheapestAsked {
  readonly prices: Prices;
  /** The search. */
  readonly trials: Trials;
  /** Fresh replications. */
  readonly fresh: Paired;
  readonly spots: readonly Spot[];
  /** Units that come or go at once, by spot. */
  readonly loads: readonly number[];
  readonly chosen: Layout;
  /** The best for a budget; null for a target. */
  readonly best: Layout | null;
  readonly present: Layout;
  readonly zone: number;
  readonly level: number;
  /** The most places in all; Infinity for a target. */
  readonly most: number;
  /** What a target asks; null for a budget. */
  readonly bar: Bar | null;
}

/**
 * The layout of least cost a unit. Where there are few layouts within the budget, all are tried; otherwise
 * the way goes down from the cheapest that the search tried and that does what is asked. Of the cheapest few
 * it is the one that costs least on fresh replications.
 */
export async function cheapest(asked: CheapestAsked): Promise<Cheapest> {
  const { prices, trials, fresh, spots, chosen, best, present, zone, level, most, bar } = asked;
  const allows = (layout: Layout, by: Trials): boolean =>
    placesOf(layout) <= most && (bar === null || bar.isReached(layout, by));
  const search = new Paired(trials, prices),
    known = (layout: Layout): boolean => allows(layout, trials),
    every = everyLayout(
      spots.map(({ least }) => least),
      most,
    );
  const ranked = (): Layout[] =>
    trials
      .ranked()
      .filter(known)
      .map((layout) => ({ layout, cost: search.cost(layout) }))
      .sort((a, b) => a.cost - b.cost)
      .map(({ layout }) => layout);
  if (every === null) await new Descent({ ...asked, search, allows: known }).from(ranked()[0] ?? chosen);
  else await tryEvery(trials, every, nearTheCheapest(search));
  const candidates = distinct([chosen, ...ranked().slice(0, CANDIDATES)]),
    all = distinct([...candidates, ...(best === null ? [] : [best]), present]);
  await fresh.trials.run(bar === null || bar.of === null ? all : [...all, bar.of]);
  // The chosen layout stays where nothing is cheaper, and where all stand still.
  const least = candidates
    .filter((layout) => allows(layout, fresh.trials))
    .reduce((lowest, each) => (fresh.cost(each) < fresh.cost(lowest) ? each : lowest), chosen);
  // The cost of each, and what all others cost and ship more than the chosen one.
  const eachLevel = familyLevel(level, 3 * all.length - 2);
  const role = (layout: Layout): PricedLayout['role'] => {
    if (isSameLayout(layout, least)) return 'cheapest';
    if (isSameLayout(layout, chosen)) return 'chosen';
    if (best !== null && isSameLayout(layout, best)) return 'best';
    return isSameLayout(layout, present) ? 'as it is' : 'other';
  };
  const priced = (layout: Layout): PricedLayout => {
    const its = isSameLayout(layout, chosen);
    return {
      role: role(layout),
      places: layout,
      total: placesOf(layout),
      floorPerDay: prices.floorOf(layout),
      cost: fresh.cost(layout) === Infinity ? null : amount(fresh.costs(layout), eachLevel),
      parts: meanParts(prices, fresh.trials, layout),
      dearer: its ? null : fresh.dearer(chosen, layout, eachLevel),
      more: its ? null : fresh.more(chosen, layout, eachLevel),
    };
  };
  const told = all.map(priced).sort((a, b) => fresh.cost(a.places) - fresh.cost(b.places) || 0),
    lowest = defined(told.find(({ places }) => isSameLayout(places, least)));
  return {
    currency: prices.currency,
    replications: fresh.trials.most,
    eachLevel,
    parts: prices.parts,
    verdict: isSameLayout(least, chosen) ? 'chosen' : verdictOf(lowest.dearer, zone * fresh.cost(chosen)),
    cheapest: lowest,
    layouts: told,
    within: every?.length ?? null,
  };
}

/** Which layouts may be the cheapest, by the replications that they have so far. */
const nearTheCheapest =
  (search: Paired) =>
  (left: readonly Layout[], n: number): Layout[] => {
    const cost = (layout: Layout): number => search.cost(layout, n),
      costs = (layout: Layout): number[] => search.costs(layout).slice(0, n),
      possible = left.filter((each) => cost(each) < Infinity),
      [first] = possible;
    if (first === undefined) return [];
    const least = costs(
      possible.reduce((lowest, each) => (cost(each) < cost(lowest) ? each : lowest), first),
    );
    return possible.filter((each) => mayReach(least, costs(each)));
  };

/** @param dearer than the chosen one; null where that has no cost */
function verdictOf(dearer: Estimate | null, matters: number): Cheapest['verdict'] {
  if (dearer === null) return 'not told apart';
  if (standingOf(dearer, matters) === 'within') return 'as cheap';
  return boundsOf(negated(dearer)).low > 0 ? 'cheaper' : 'not told apart';
}

/** Mean over the replications that have a cost. */
function meanParts(prices: Prices, trials: Trials, layout: Layout): number[] {
  const rows = trials
    .of(layout)
    .map(({ spent }) => prices.partsOf(layout, defined(spent)))
    .filter((parts) => parts.every(Number.isFinite));
  return prices.parts.map((_, part) => mean(rows.map((row) => defined(row[part]))) || 0);
}
