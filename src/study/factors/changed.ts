import { isDeepStrictEqual } from 'node:util';
import type { Combination } from '../../scenario/changes/factors.js';
import { type Changed, changedThings } from '../route/changed.js';

/**
 * What each factor changes, for the map. Combinations of a fraction never differ in one factor alone, so it
 * is what differs between a combination at the first level and every one of those that stand for all
 * others: in each of these another factor is as it was.
 * @param count of factors
 */
export function changedByEach(count: number, combinations: readonly Combination[]): Changed[] {
  return Array.from({ length: count }, (_, f) => {
    const low = combinations.find(({ levels }) => levels[f] === 0),
      highs = combinations.filter(({ levels }) => levels[f] !== 0),
      none: Changed = { things: [], isMore: false };
    if (low === undefined) return none;
    const seen = Array.from({ length: count }, (__, g) => g).flatMap((g) => {
      const other = highs.find(({ levels }) => g === f || levels[g] === low.levels[g]);
      return other === undefined ? [] : [changedThings(low.scenario, other.scenario)];
    });
    const [first = none, ...others] = seen;
    return {
      things: first.things.filter((thing) =>
        others.every(({ things }) => things.some((each) => isDeepStrictEqual(each, thing))),
      ),
      isMore: seen.every(({ isMore }) => isMore),
    };
  });
}
