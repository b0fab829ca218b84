import type { Model } from '../flow/model.js';
import { meanOf } from '../random/moments.js';

/**
 * Expected changeover minutes of a unit that takes a place, from the shares p of the values: the sum of p_i p_j t_ij over
 * pairs that differ, in order of arrival; with batches the mean time of these changeovers, as often as `inBatches` says.
 */
export function changeoverMinutes({ stations, draws }: Model, station: number, shares: Float64Array): number {
  let minutes = 0,
    differ = 0;
  for (let i = 0; i < shares.length; i++) {
    for (let j = 0; j < shares.length; j++) {
      const draw = stations.changeoverDraw[stations.changeoverStart[station] + i * shares.length + j],
        chance = shares[i] * shares[j];
      if (draw >= 0) minutes += chance * meanOf(draws[draw].distribution);
      if (i !== j) differ += chance;
    }
  }
  const most = stations.batchMost[station];
  return most === 0 || differ === 0 ? minutes : (minutes / differ) * inBatches(most, Math.max(...shares));
}

/**
 * Changeovers a unit, at least, with batches of at most k, where p is the share of the commonest value and many units wait
 * (own arithmetic). Batches of k of it come 1 to k / p units; after each there is a changeover and one back, unless none of
 * the other units that came meanwhile waits, a chance of p^k at most. And no value has longer batches than k while the
 * commonest waits: 1 / k in all where p is below a half, else twice the batches of the others.
 */
function inBatches(k: number, p: number): number {
  return Math.max(2 * p * (1 - p ** k), Math.min(1, 2 * (1 - p))) / k;
}
