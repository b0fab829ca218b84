import { stationary } from './exact-line.js';

/**
 * A station with exponential work that fails, while it works, after exponential times: rates an hour of work,
 * failure, repair.
 */
export interface Unreliable {
  readonly rate: number;
  readonly fails: number;
  readonly repaired: number;
}

/**
 * Throughput of two such stations, the first saturated, with a buffer between and blocking after service, by
 * its Markov chain: the model of Gershwin & Berman (1981), AIIE Transactions 13(1), 2-11, with our rule of
 * blocking. A state is the number of units that the first has finished and the second has not, and which of
 * the two are up.
 */
export function exactUnreliable(first: Unreliable, second: Unreliable, spaces: number): number {
  const most = spaces + 2,
    id = (n: number, up1: number, up2: number): number => 4 * n + 2 * up1 + up2;
  const moves: { from: number; to: number; rate: number }[] = [];
  for (let n = 0; n <= most; n++) {
    for (const up1 of [0, 1]) {
      for (const up2 of [0, 1]) {
        const from = id(n, up1, up2),
          go = (to: number, rate: number): void => {
            moves.push({ from, to, rate });
          };
        if (up1 === 0) go(id(n, 1, up2), first.repaired);
        else if (n < most) {
          go(id(n + 1, 1, up2), first.rate);
          go(id(n, 0, up2), first.fails);
        }
        if (up2 === 0) go(id(n, up1, 1), second.repaired);
        else if (n > 0) {
          go(id(n - 1, up1, 1), second.rate);
          go(id(n, up1, 0), second.fails);
        }
      }
    }
  }
  const share = stationary(4 * (most + 1), moves);
  let rate = 0;
  for (let n = 1; n <= most; n++) for (const up1 of [0, 1]) rate += second.rate * share[id(n, up1, 1)];
  return rate;
}
