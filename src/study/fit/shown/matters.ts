interface Known {
  readonly n: number;
  /** By how much the scenario is surely off, as a share; 0 where that is not known. */
  readonly off: number;
  /** Whether distributions were tried and none fits. */
  readonly isUnfitted: boolean;
  readonly warnings: number;
}

/**
 * Of each step its rank among those that somebody should look at, 1 the first: those that surely take other
 * times than the scenario says, by how much; those that nothing fits; then by the number of warnings, and of
 * times.
 */
export function ranksToLook(steps: readonly Known[]): number[] {
  const order = steps
      .map((step, i) => ({ ...step, i }))
      .sort(
        (a, b) =>
          b.off - a.off || +b.isUnfitted - +a.isUnfitted || b.warnings - a.warnings || b.n - a.n || a.i - b.i,
      ),
    ranks = steps.map(() => 0);
  order.forEach(({ i }, at) => {
    ranks[i] = at + 1;
  });
  return ranks;
}
