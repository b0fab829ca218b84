/**
 * Cuts a list into stretches no longer than `room` (an item that is longer stands alone), as few as can be
 * and at the cheapest places. `costs[i]`: of a cut ahead of item i; Infinity: none there. Tells where each
 * stretch begins.
 */
export function cuts(lengths: readonly number[], costs: readonly number[], room: number): number[] {
  const best: { readonly cost: number; readonly from: number }[] = [{ cost: 0, from: 0 }];
  for (let end = 1; end <= lengths.length; end++) {
    let found = { cost: Infinity, from: end - 1 },
      used = 0;
    for (let from = end - 1; from >= 0; from--) {
      used += lengths[from] ?? 0;
      if (used > room && from < end - 1) break;
      const cost =
        (best[from]?.cost ?? Infinity) +
        STRETCH +
        (from === 0 ? 0 : (costs[from] ?? 0)) +
        ((room - used) / room) ** 2;
      if (cost < found.cost) found = { cost, from };
    }
    // Where no cut is allowed the stretch is longer than there is room.
    best.push(
      found.cost < Infinity ? found : { cost: best[end - 1]?.cost ?? 0, from: best[end - 1]?.from ?? 0 },
    );
  }
  const starts: number[] = [];
  for (let end = lengths.length; end > 0; end = best[end]?.from ?? 0) starts.unshift(best[end]?.from ?? 0);
  return starts;
}

/** What one more stretch costs. */
const STRETCH = 10;

/** Cuts a list into at most `count` stretches, the longest as short as can be. */
export function balanced(lengths: readonly number[], costs: readonly number[], count: number): number[] {
  const whole = lengths.reduce((sum, each) => sum + each, 0);
  for (let room = Math.max(whole / count, 1); ; room *= 1.02) {
    const starts = cuts(lengths, costs, room);
    if (starts.length <= count || room > 2 * whole) return starts;
  }
}
