import { stationary } from './exact-line.js';

export interface ExactLine {
  /** Units an hour of each place. */
  readonly rates: readonly number[];
  readonly places: readonly number[];
  /** Spaces ahead of the second station, the third .. */
  readonly between: readonly number[];
}

/**
 * Throughput of a saturated line of exponential stations with several places each, blocking after service, by
 * its Markov chain. A state is, by station, the units in work and those finished that have no room ahead, and
 * those in the spaces ahead of it.
 */
export function exactThroughput({ rates, places, between }: ExactLine): number {
  const stations = rates.length,
    last = stations - 1;
  const settle = (works: number[], blocked: number[], waits: number[]): void => {
    for (let moved = true; moved; ) {
      moved = false;
      for (let i = last; i >= 0; i--) {
        // The first station always has another unit.
        while (works[i] + blocked[i] < places[i] && (i === 0 || waits[i] > 0 || blocked[i - 1] > 0)) {
          if (i > 0) {
            if (waits[i] > 0) waits[i]--;
            else blocked[i - 1]--;
          }
          works[i]++;
          moved = true;
        }
        while (i > 0 && blocked[i - 1] > 0 && waits[i] < between[i - 1]) {
          blocked[i - 1]--;
          waits[i]++;
          moved = true;
        }
      }
    }
  };
  const index = new Map<string, number>(),
    states: number[][][] = [];
  const stateOf = (state: number[][]): number => {
    const key = JSON.stringify(state),
      known = index.get(key);
    if (known !== undefined) return known;
    index.set(key, states.length);
    return states.push(state) - 1;
  };
  const none = (): number[] => new Array<number>(stations).fill(0);
  const start = [none(), none(), none()];
  settle(start[0], start[1], start[2]);
  stateOf(start);
  const moves: { from: number; to: number; rate: number }[] = [];
  for (let s = 0; s < states.length; s++)
    for (let i = 0; i < stations; i++) {
      if (states[s][0][i] === 0) continue;
      const [works, blocked, waits] = states[s].map((each) => each.slice());
      works[i]--;
      if (i < last) blocked[i]++;
      settle(works, blocked, waits);
      moves.push({ from: s, to: stateOf([works, blocked, waits]), rate: states[s][0][i] * rates[i] });
    }
  const share = stationary(states.length, moves);
  return states.reduce((sum, [works], s) => sum + share[s] * works[last] * rates[last], 0);
}
