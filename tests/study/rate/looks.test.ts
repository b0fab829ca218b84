import { describe, expect, it } from 'vitest';
import { Looks } from '../../../src/study/rate/looks.js';
import { proportion } from '../../../src/study/statistics/proportion.js';

const looks = new Looks(30, 0.95);

/** Replications after which is looked: from the first on to the most that there may be. */
function all(at: Looks): number[] {
  const found: number[] = [];
  for (let n = at.first; n <= at.most; n = at.next(n)) found.push(n);
  return found;
}

/** Chance that of builds of which half keep up surely more, or surely fewer, are said to, exactly. */
function wrong(at: readonly number[], shareOf: Looks['share']): number {
  let still = [1],
    found = 0;
  for (let n = 1; n <= Math.max(...at); n++) {
    still = Array.from({ length: n + 1 }, (_, k) => ((still[k] ?? 0) + (still[k - 1] ?? 0)) / 2).map(
      (chance, k) => {
        if (!at.includes(n)) return chance;
        const { low, high } = shareOf(k, n);
        if (low < 0.5 && high > 0.5) return chance;
        found += chance;
        return 0;
      },
    );
  }
  return found;
}

describe('looks at a rate', () => {
  it('begin with five replications, and go on to those asked for and up to four times as many', () => {
    expect(all(looks)).toEqual([5, 9, 16, 30, 60, 120]);
    const few = new Looks(4, 0.95);
    expect([few.first, few.next(4), few.most]).toEqual([4, 8, 16]);
  });

  it('settle nine of nine, and not five of five, of which half would keep up in one of 32', () => {
    expect(looks.share(5, 5).low).toBeLessThan(0.5);
    expect(looks.share(9, 9).low).toBeGreaterThan(0.5);
    expect(looks.share(0, 9).high).toBeLessThan(0.5);
  });

  it('that come early add next to nothing to what is told wrongly by the later ones', () => {
    const every = [5, 9, 16, 30, 60, 120],
      late = wrong([30, 60, 120], looks.share);
    expect(wrong(every, looks.share) - late).toBeLessThan(0.005);
    // Judged as the later ones are they would nearly double it.
    expect(wrong(every, (count, n) => proportion(count, n, 0.95)) - late).toBeGreaterThan(0.09);
  });
});
