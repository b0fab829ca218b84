import { nextUniform, STATE_WORDS, seedStream, streamName } from '../../random/streams.js';
import { sumOf } from '../statistics/sums.js';

/** Units of a level, and in how many of them something was found. */
interface Counts {
  readonly units: number;
  readonly found: number;
}

/** Pearson's chi-square of equal chances: sum of (found - expected)^2 / (units p (1 - p)). */
export function pearson(levels: readonly Counts[]): number {
  const share = sumOf(levels, ({ found }) => found) / sumOf(levels, ({ units }) => units);
  return sumOf(levels, ({ units, found }) => {
    const off = found - units * share;
    return (off * off) / (units * share * (1 - share));
  });
}

/**
 * Whether chi-square tells the p of Pearson's statistic: no more than a fifth of the counts expected below 5,
 * none below 1 (Cochran 1954, Biometrics 10(4), 417-451).
 */
export function isDense(levels: readonly Counts[]): boolean {
  const share = sumOf(levels, ({ found }) => found) / sumOf(levels, ({ units }) => units),
    expected = levels.flatMap(({ units }) => [units * share, units * (1 - share)]);
  return expected.every((e) => e >= 1) && expected.filter((e) => e < 5).length <= expected.length / 5;
}

/** Tables drawn: of 9,999 a p of 5 % is known to a fifth of a point. Fewer where each takes many steps. */
const MOST_DRAWN = 9999,
  LEAST_DRAWN = 999,
  STEPS = 2e7;

/** Statistics as large as the one seen count, whatever the last bits. */
const AS_LARGE = 1 - 1e-9;

/**
 * The p of Pearson's statistic by lot: what was found falls on the units at random, (1 + tables as unlike as
 * the one seen) / (1 + tables) (Hope 1968, J. Roy. Stat. Soc. B 30, 582-598). From a stream of its own, so that
 * the same counts have the same p.
 */
export function drawnP(levels: readonly Counts[]): number {
  const of = levels.flatMap(({ units }, level) => new Array<number>(units).fill(level)),
    found = sumOf(levels, (level) => level.found),
    // Those found or the others, whichever are fewer.
    fewer = Math.min(found, of.length - found),
    seen = pearson(levels) * AS_LARGE,
    counts = new Array<number>(levels.length),
    tables = Math.max(LEAST_DRAWN, Math.min(MOST_DRAWN, Math.floor(STEPS / fewer))),
    state = new Int32Array(STATE_WORDS);
  seedStream(state, 0, streamName('chances', 1, 'equal'));
  let unlike = 0;
  for (let drawn = 0; drawn < tables; drawn++) {
    counts.fill(0);
    for (let i = 0; i < fewer; i++) {
      const j = i + Math.floor(nextUniform(state, 0) * (of.length - i)),
        level = of[j] ?? 0;
      of[j] = of[i] ?? 0;
      of[i] = level;
      counts[level] = (counts[level] ?? 0) + 1;
    }
    // The statistic is the same of what was not found.
    if (pearson(levels.map(({ units }, i) => ({ units, found: counts[i] ?? 0 }))) >= seen) unlike++;
  }
  return (1 + unlike) / (1 + tables);
}
