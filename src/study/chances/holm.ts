/**
 * P-values adjusted for being several, so that all claims together are wrong at most at the level (Holm 1979,
 * Scand. J. Statist. 6(2), 65-70): the i-th smallest of k is multiplied by k - i + 1, and none is smaller
 * than the one before.
 * @returns in the order given, none above 1
 */
export function holm(ps: readonly number[]): number[] {
  const adjusted = new Array<number>(ps.length).fill(1);
  let most = 0;
  ps.map((p, i) => ({ p, i }))
    .sort((a, b) => a.p - b.p)
    .forEach(({ p, i }, rank) => {
      most = Math.max(most, Math.min(1, p * (ps.length - rank)));
      adjusted[i] = most;
    });
  return adjusted;
}
