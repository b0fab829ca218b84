import type { Model } from '../flow/model.js';
import { meanOf } from '../random/moments.js';

/**
 * Expected changeover minutes of a unit that takes a place, from the shares of the values: the sum of p_i p_j t_ij over
 * pairs that differ.
 */
export function changeoverMinutes({ stations, draws }: Model, station: number, shares: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < shares.length; i++) {
    for (let j = 0; j < shares.length; j++) {
      const draw = stations.changeoverDraw[stations.changeoverStart[station] + i * shares.length + j];
      if (draw >= 0) sum += shares[i] * shares[j] * meanOf(draws[draw].distribution);
    }
  }
  return sum * batching(stations.batchMost[station], shares);
}

/**
 * What batches of at most k leave of the changeovers: (1 - p^k) / (k (1 - p)), p the largest share. Own arithmetic for two
 * values and many waiting: of k units of the commoner value, with those of the other that came meanwhile, at p + q = 1, comes a
 * cycle of k / p units, with two changeovers unless none of the other came (p^k). For more values it is an approximation
 * that is right where all are as common (1 / k of a unit), and it leaves the longest wait out of account.
 */
function batching(most: number, shares: Float64Array): number {
  const p = Math.max(...shares);
  return most === 0 || p >= 1 ? 1 : (1 - p ** most) / (most * (1 - p));
}
