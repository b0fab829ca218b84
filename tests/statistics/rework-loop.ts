import { stationary } from './exact-line.js';

/**
 * A saturated line of two stations whose units have a carrier, and a test behind it that sends some back to
 * the last of them, where they go first and without a carrier. One exponential server each, hours.
 */
export interface ReworkLoop {
  readonly first: number;
  readonly last: number;
  readonly test: number;
  /** Chance to be sent back. */
  readonly back: number;
  readonly carriers: number;
}

/** Units at the last station without a carrier, and at the test: more are as good as impossible. */
const MOST = 30;

/**
 * Units an hour and carriers with a unit, by the Markov chain: k units with a carrier at the last station, r
 * without, whether one of these is in work, and m at the test. No chance in it; cut off at `MOST`.
 */
export function reworkLoop({ first, last, test, back, carriers }: ReworkLoop): {
  readonly throughput: number;
  readonly held: number;
} {
  const index = new Map<string, number>(),
    states: (readonly [k: number, r: number, isRework: number, m: number])[] = [],
    moves: { from: number; to: number; rate: number }[] = [];
  const stateOf = (k: number, r: number, isRework: number, m: number): number => {
    // Whoever is in work goes on; a server that comes free takes one without a carrier first.
    const now = k + r === 0 ? 0 : isRework,
      key = [k, r, now, m].join();
    const known = index.get(key);
    if (known !== undefined) return known;
    index.set(key, states.length);
    return states.push([k, r, now, m]) - 1;
  };
  stateOf(0, 0, 0, 0);
  for (let s = 0; s < states.length; s++) {
    const [k, r, isRework, m] = states[s],
      isIdle = k + r === 0;
    const go = (to: number, rate: number): void => {
      moves.push({ from: s, to, rate });
    };
    if (k < carriers) go(stateOf(k + 1, r, isIdle ? 0 : isRework, m), 1 / first);
    if (!isIdle && m < MOST) {
      const left = [k - (1 - isRework), r - isRework] as const;
      go(stateOf(...left, left[1] > 0 ? 1 : 0, m + 1), 1 / last);
    }
    if (m > 0) {
      go(stateOf(k, r, isRework, m - 1), (1 - back) / test);
      if (r < MOST) go(stateOf(k, r + 1, isIdle ? 1 : isRework, m - 1), back / test);
    }
  }
  const share = stationary(states.length, moves);
  const meanOf = (value: (k: number) => number): number =>
    states.reduce((sum, [k], s) => sum + share[s] * value(k), 0);
  return {
    throughput: meanOf((k) => (k < carriers ? 1 / first : 0)),
    held: meanOf((k) => k + (k < carriers ? 1 : 0)),
  };
}
