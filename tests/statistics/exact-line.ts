/**
 * Throughput of a saturated line of single exponential stations, blocking after service, by its Markov chain:
 * a second way to the number, without chance. n[i] counts the units that station i has finished and station i
 * + 1 has not.
 * @param rates units an hour of each station
 * @param between spaces between the stations
 */
export const exactThroughput = (rates: readonly number[], between: readonly number[]): number =>
  exactLine(rates, between).throughput;

/** The same with the mean number of units inside, blocked ones too; one is always at the first station. */
export function exactLine(
  rates: readonly number[],
  between: readonly number[],
): { readonly throughput: number; readonly wip: number } {
  const last = rates.length - 1,
    index = new Map<string, number>(),
    states: number[][] = [];
  const stateOf = (n: number[]): number => {
    const key = n.join();
    const known = index.get(key);
    if (known !== undefined) return known;
    index.set(key, states.length);
    return states.push(n) - 1;
  };
  stateOf(new Array<number>(last).fill(0));
  const moves: { from: number; to: number; rate: number }[] = [];
  for (let s = 0; s < states.length; s++) {
    const n = states[s],
      works = working(n, between);
    for (const [i, isWorking] of works.entries()) {
      if (!isWorking) continue;
      const next = n.slice();
      if (i > 0) next[i - 1]--;
      if (i < last) next[i]++;
      moves.push({ from: s, to: stateOf(next), rate: rates[i] });
    }
  }
  const share = stationary(states.length, moves);
  const meanOf = (value: (n: number[]) => number): number =>
    states.reduce((sum, n, s) => sum + share[s] * value(n), 0);
  return {
    throughput: meanOf((n) => (working(n, between)[last] ? rates[last] : 0)),
    // A unit that the first station has finished is among those ahead of the second.
    wip: meanOf((n) => n.reduce((sum, each) => sum + each, Number(working(n, between)[0]))),
  };
}

/** Which stations work in a state: those with a unit that is not finished, and not blocked. */
function working(n: readonly number[], between: readonly number[]): boolean[] {
  const blocked = new Array<boolean>(n.length + 1).fill(false);
  for (let i = n.length - 1; i >= 0; i--) blocked[i] = n[i] === between[i] + 2 - Number(blocked[i + 1]);
  return blocked.map((isBlocked, i) => !isBlocked && (i === 0 || n[i - 1] > 0));
}

/** Shares of time by state: sweeps in which each takes what flows in, over what flows out (Gauss-Seidel). */
export function stationary(
  count: number,
  moves: readonly { from: number; to: number; rate: number }[],
): Float64Array {
  const share = new Float64Array(count).fill(1 / count),
    outflow = new Float64Array(count);
  const into: { from: number; rate: number }[][] = Array.from({ length: count }, () => []);
  for (const { from, to, rate } of moves) {
    outflow[from] = outflow[from] + rate;
    into[to].push({ from, rate });
  }
  for (let sweep = 0, change = 1; change > 1e-14 && sweep < 100_000; sweep++) {
    change = 0;
    for (let s = 0; s < count; s++) {
      const value = into[s].reduce((sum, { from, rate }) => sum + share[from] * rate, 0) / outflow[s];
      change = Math.max(change, Math.abs(value - share[s]));
      share[s] = value;
    }
    const total = share.reduce((a, b) => a + b, 0);
    for (let s = 0; s < count; s++) share[s] = share[s] / total;
  }
  return share;
}
