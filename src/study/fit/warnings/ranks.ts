/** Ranks from 1; equal values share the mean of theirs. */
export function ranksOf(values: readonly number[]): Float64Array {
  const order = values.map((_, i) => i).sort((a, b) => values[a] - values[b]),
    ranks = new Float64Array(values.length);
  for (const [from, to] of ties(values, order))
    for (let k = from; k < to; k++) ranks[order[k]] = (from + to + 1) / 2;
  return ranks;
}

/** Sum of t^3 - t over the groups of t equal values. */
export function tieSum(values: readonly number[]): number {
  const order = values.map((_, i) => i).sort((a, b) => values[a] - values[b]);
  return ties(values, order).reduce((sum, [from, to]) => {
    const t = to - from;
    return sum + t * t * t - t;
  }, 0);
}

function ties(values: readonly number[], order: readonly number[]): [from: number, to: number][] {
  const groups: [number, number][] = [];
  for (let from = 0, to = 0; from < order.length; from = to) {
    while (to < order.length && values[order[to]] === values[order[from]]) to++;
    groups.push([from, to]);
  }
  return groups;
}

/** Pearson's correlation; 0 where one of the two does not vary. */
export function correlation(a: ArrayLike<number>, b: ArrayLike<number>): number {
  const n = a.length;
  let meanA = 0,
    meanB = 0;
  for (let i = 0; i < n; i++) {
    meanA += a[i] / n;
    meanB += b[i] / n;
  }
  let both = 0,
    squaresA = 0,
    squaresB = 0;
  for (let i = 0; i < n; i++) {
    both += (a[i] - meanA) * (b[i] - meanB);
    squaresA += (a[i] - meanA) * (a[i] - meanA);
    squaresB += (b[i] - meanB) * (b[i] - meanB);
  }
  return squaresA > 0 && squaresB > 0 ? both / Math.sqrt(squaresA * squaresB) : 0;
}
