/**
 * Lots of n units of one kind, of units of all kinds in a row of independent draws, as an exact Markov chain:
 * units of each kind since the last lot of the kind began, modulo n, and the kind of the last lot; a unit is one
 * step. Chances that a lot of one kind follows one of another, by before * kinds + after; they add to 1.
 */
export function lotChain(shares: readonly number[], n: number): number[] {
  const kinds = shares.length,
    states = n ** kinds * kinds;
  let chance = new Float64Array(states).fill(1 / states),
    pairs = new Float64Array(kinds * kinds);
  for (let round = 0; round < 3000; round++) {
    const next = new Float64Array(states);
    pairs = new Float64Array(kinds * kinds);
    for (let state = 0; state < states; state++)
      shares.forEach((share, kind) => {
        const last = state % kinds,
          place = kinds * n ** kind,
          flow = chance[state] * share,
          // The n-th since the one that began a lot begins the next.
          begins = Math.floor(state / place) % n === n - 1;
        next[state + place * (begins ? 1 - n : 1) + (begins ? kind - last : 0)] += flow;
        if (begins) pairs[last * kinds + kind] += flow;
      });
    chance = next;
  }
  return Array.from(pairs, (flow) => flow * n);
}
