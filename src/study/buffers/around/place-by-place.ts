import { defined } from '../../lists.js';
import { familyLevel } from '../../statistics/difference.js';
import { boundsOf, type Estimate } from '../../statistics/estimate.js';
import { type Standing, standingOf } from '../../statistics/zone.js';
import { changed } from '../search/moves.js';
import type { Trials } from '../search/trials.js';
import type { Layout, Spot } from '../spots.js';
import type { Paired } from './paired.js';
import type { LeftOut, PlaceByPlace, PlaceStanding } from './results.js';

/** Places more and fewer that are looked at. */
const REACH = [-3, -2, -1, 1, 2, 3];
/** Spots that are looked at, at most. */
const MOST_SPOTS = 12;
/** A place that loses so many times what does not matter stands at a cliff. */
const CLIFF = 3;

interface Asked {
  /** The search. */
  readonly trials: Trials;
  /** Fresh replications. */
  readonly fresh: Paired;
  readonly spots: readonly Spot[];
  readonly chosen: Layout;
  /** Relative difference that does not matter. */
  readonly zone: number;
  readonly level: number;
  readonly isPriced: boolean;
}

/** The chosen layout with up to three places more or fewer at one spot, paired with it. */
export async function placeByPlace(asked: Asked): Promise<PlaceByPlace> {
  const { trials, fresh, spots, chosen, zone, level, isPriced } = asked;
  const { numbers, leftOut } = await foremost(trials, spots, chosen);
  const around = numbers.map((s) => ({
    s,
    points: reachable(defined(spots[s]), defined(chosen[s])).map((by) => ({
      by,
      layout: changed(chosen, s, by),
    })),
  }));
  const points = around.flatMap((each) => each.points);
  await fresh.trials.run([chosen, ...points.map(({ layout }) => layout)]);
  const eachLevel = familyLevel(level, points.length * (isPriced ? 2 : 1)),
    matters = zone * fresh.trials.mean(chosen);
  return {
    replications: fresh.trials.most,
    eachLevel,
    rate: fresh.trials.mean(chosen),
    spots: around.map(({ s, points: its }) => {
      const { name, kind, least } = defined(spots[s]);
      return {
        ...{ name, kind, least, chosen: defined(chosen[s]) },
        points: its.map(({ by, layout }) => {
          const more = fresh.more(chosen, layout, eachLevel),
            nothingIn = fresh.nothingIn(chosen, layout);
          return {
            ...{ places: defined(layout[s]), by, rate: fresh.trials.mean(layout), more },
            standing: nothingIn > 0 ? ('cliff' as const) : placeStanding(more, matters),
            nothingIn,
            cost: fresh.dearer(chosen, layout, eachLevel),
          };
        }),
      };
    }),
    leftOut,
  };
}

const reachable = ({ least }: Spot, places: number): number[] => REACH.filter((by) => places + by >= least);

/** @param matters what does not matter at most, in the unit of the difference */
export function placeStanding(more: Estimate, matters: number): PlaceStanding {
  return boundsOf(more).high <= -CLIFF * matters && matters > 0
    ? 'cliff'
    : STANDINGS[standingOf(more, matters)];
}

const STANDINGS: Readonly<Record<Standing, PlaceStanding>> = {
  more: 'gains',
  'at least a little more': 'gains',
  within: 'equal',
  open: 'not told apart',
  'at least a little less': 'loses',
  less: 'loses',
};

/**
 * The spots where a place more or fewer changes most, of more than are looked at, by few replications of the
 * search: mostly such as it has run.
 */
async function foremost(
  trials: Trials,
  spots: readonly Spot[],
  chosen: Layout,
): Promise<{ readonly numbers: readonly number[]; readonly leftOut: LeftOut | null }> {
  const all = [...spots.keys()];
  if (all.length <= MOST_SPOTS) return { numbers: all, leftOut: null };
  const beside = all.map((s) =>
    reachable(defined(spots[s]), defined(chosen[s]))
      .filter((by) => Math.abs(by) === 1)
      .map((by) => changed(chosen, s, by)),
  );
  await trials.run([chosen, ...beside.flat()], trials.few);
  const changes = beside.map((layouts) =>
    Math.max(
      ...layouts.map((each) => Math.abs(trials.mean(each, trials.few) - trials.mean(chosen, trials.few))),
    ),
  );
  const ranked = all.sort((a, b) => defined(changes[b]) - defined(changes[a]) || a - b),
    rest = ranked.slice(MOST_SPOTS).sort((a, b) => a - b);
  return {
    numbers: ranked.slice(0, MOST_SPOTS).sort((a, b) => a - b),
    leftOut: {
      names: rest.map((s) => defined(spots[s]).name),
      replications: trials.few,
      most: Math.max(...rest.map((s) => defined(changes[s]))),
    },
  };
}
