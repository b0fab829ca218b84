import { keyOfThing, type Thing } from '../../../scenario/reliefs/thing.js';
import type { Basis, Scenario } from '../../../scenario/types/scenario.js';
import type { ToVary } from '../../../scenario/vary.js';
import type { ConstraintResult } from '../../constraint/results.js';
import { gainsOf, type MayMatter } from '../../constraint/trial.js';
import type { Watched } from '../../constraint/watch.js';
import { defined } from '../../lists.js';
import type { Replicator } from '../../run/replicator.js';
import type { Estimate } from '../../statistics/estimate.js';
import { boundsOf } from '../../statistics/estimate.js';
import { bearings, type Weights } from './bearing.js';
import { aboutShop, valuesVaried } from './values.js';

/** So many of the guesses and estimates are tried at most: `reliefs` tries them all. */
const MOST_TRIED = 4;
/** Replications of each end at most. */
const REPLICATIONS = 10;

/**
 * Which guess or estimate an answer hangs on most, by trial: those that may bear most are set to either end
 * of their range, under the same chance.
 */
export interface WeakestResult {
  /** Guesses and estimates of the shop that the scenario states. */
  readonly stated: number;
  /** Replications of each end, and a change that does not matter, units a working day. */
  readonly replications: number;
  readonly zone: number;
  /** Whether the first of `tried` surely moves what is shipped, and by more than the zone. */
  readonly isFound: boolean;
  /** The one that moves it most first. */
  readonly tried: readonly GuessTried[];
}

export interface GuessTried {
  /** As in messages: `route[3].work`; and in a planner's words. */
  readonly path: string;
  readonly words: string;
  readonly basis: Basis;
  /** As written. */
  readonly now: string;
  /** The end that moves it more first; one may be missing. */
  readonly ends: readonly GuessEnd[];
}

export interface GuessEnd {
  readonly value: string;
  /** Units a working day more, paired; at the level at which all ends hold together. */
  readonly gain: Estimate;
}

/** What is known of what stops the build. */
type Evidence = Pick<ConstraintResult, 'tried' | 'waiting'>;

/**
 * @param found by it those that may bear most are chosen
 * @param atRate of a scenario with an end the one that is run
 * @returns null where the scenario states no guess and no estimate of the shop that can be varied
 */
export async function weakest(
  { asked, zone, until, most, upTo }: Watched,
  found: Evidence,
  toVary: ToVary,
  replicator: Replicator,
  atRate: (scenario: Scenario) => Scenario = (scenario) => scenario,
): Promise<WeakestResult | null> {
  const { base, shippedPerDay, level } = asked,
    ofBase = { most: Math.min(most, REPLICATIONS), upTo },
    { changes } = await valuesVaried(toVary, {
      most: MOST_TRIED,
      base,
      bearing: () => bearings(base.scenario, base.model, weightsBy(found)),
      atRate,
    });
  if (changes.length === 0) return null;
  const trials = { shippedPerDay, base: ofBase, until, level },
    gains = await gainsOf(changes, trials, mayMoveMost(zone), replicator),
    ends = changes.map(({ of: { varied, side } }, i) => ({
      ...{ varied, value: defined(varied[side]).value, gain: defined(gains[i]) },
      moves: movedBy(defined(gains[i]), zone),
    }));
  const tried = [...new Set(ends.map(({ varied }) => varied))]
    .map((varied) => {
      const { path, words, basis, value: now } = varied.assumption,
        own = ends.filter((end) => end.varied === varied).sort((a, b) => size(b.gain) - size(a.gain));
      return {
        guess: { path, words, basis, now, ends: own.map(({ value, gain }) => ({ value, gain })) },
        // What surely moves it is before what by chance seems to move it more.
        ...{ moves: own.some(({ moves }) => moves), most: size(defined(own[0]).gain) },
      };
    })
    .sort((a, b) => Number(b.moves) - Number(a.moves) || b.most - a.most);
  return {
    stated: aboutShop(toVary.assumptions).length,
    replications: ofBase.most,
    zone,
    isFound: defined(tried[0]).moves,
    tried: tried.map(({ guess }) => guess),
  };
}

/** By what one more of a thing gained, or by what waits for it: of either a share of the most. */
function weightsBy({ tried, waiting }: Evidence): Weights {
  const weights = new Map<string, number>();
  const note = (all: readonly { readonly thing: Thing; readonly by: number }[]): void => {
    const most = Math.max(...all.map(({ by }) => by));
    if (most > 0)
      for (const { thing, by } of all) {
        const key = keyOfThing(thing);
        weights.set(key, Math.max(weights.get(key) ?? 0, by / most));
      }
  };
  note(tried.map(({ thing, gain }) => ({ thing, by: gain.mean })));
  note(waiting.map(({ thing, units }) => ({ thing, by: units })));
  return (kind, name, site = '') => weights.get(keyOfThing({ kind, name, site })) ?? 0;
}

/** Whether it may move it by enough to matter, and as much as the one that surely moves it most. */
const mayMoveMost =
  (zone: number): MayMatter =>
  (all) => {
    const ranges = all.map((gain) => {
        const { low, high } = boundsOf(gain);
        return { least: Math.max(low, -high), most: Math.max(-low, high) };
      }),
      surely = Math.max(zone, ...ranges.map(({ least }) => least));
    return ranges.map(({ most }) => most > zone && most >= surely);
  };

const size = ({ mean }: Estimate): number => Math.abs(mean);

/** Surely one way, and by more than the zone on average. */
function movedBy(gain: Estimate, zone: number): boolean {
  const { low, high } = boundsOf(gain);
  return size(gain) > zone && (low > 0 || high < 0);
}
