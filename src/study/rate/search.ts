import type { RateVerdict } from './results.js';

/** Coarse points, with both ends. */
const COARSE = 6;

/** Up to `highest` all points looked at hold; `above` is the next one. null where there is none. */
export interface Bracket {
  readonly highest: number | null;
  readonly above: number | null /** Points above `above` that hold. */;
  readonly contradictions: readonly number[];
}

/**
 * Highest of the points 0 .. last that holds, taken to be monotone: evenly spaced points, then bisection
 * between the lowest that does not hold (or is not settled) and the one before it. What was looked at is kept
 * by `look`, so that nothing is run twice.
 */
export async function highestThatHolds(
  last: number,
  look: (point: number) => Promise<RateVerdict>,
): Promise<Bracket> {
  const seen = new Map<number, boolean>();
  const holds = async (point: number): Promise<boolean> => {
    const known = seen.get(point);
    if (known !== undefined) return known;
    const found = (await look(point)) === 'holds';
    seen.set(point, found);
    return found;
  };
  // From above: what is run of a rate tells of those below it.
  for (let i = COARSE - 1; i >= 0; i--) await holds(Math.round((i * last) / (COARSE - 1)));
  for (;;) {
    const { highest, above, contradictions } = bracket(seen);
    if (highest === null || above === null || above - highest <= 1) return { highest, above, contradictions };
    await holds(Math.floor((highest + above) / 2));
  }
}

function bracket(seen: ReadonlyMap<number, boolean>): Bracket {
  const points = [...seen].sort(([a], [b]) => a - b);
  const above = points.find(([, holds]) => !holds)?.[0] ?? null;
  const holding = points.filter(([, holds]) => holds).map(([point]) => point);
  return {
    highest: holding.filter((point) => above === null || point < above).at(-1) ?? null,
    above,
    contradictions: above === null ? [] : holding.filter((point) => point > above),
  };
}

/**
 * Least of the points 0 .. last that holds, taken to be monotone, by bisection; null if not even the last
 * does.
 */
export async function leastThatHolds(
  last: number,
  look: (point: number) => Promise<RateVerdict>,
): Promise<number | null> {
  if ((await look(0)) === 'holds') return 0;
  if ((await look(last)) !== 'holds') return null;
  let below = 0,
    found = last;
  while (found - below > 1) {
    const middle = Math.floor((below + found) / 2);
    if ((await look(middle)) === 'holds') found = middle;
    else below = middle;
  }
  return found;
}
