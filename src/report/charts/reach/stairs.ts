import { defined } from '../../../study/lists.js';
import type { BuildResult } from '../../../study/reach/results.js';
import { PALETTE } from '../../style.js';
import { type Dataset, intervalWords } from '../chart.js';
import { line } from '../datasets.js';
import type { Told, Upright } from './upright.js';

/** Builds as they are drawn: a staircase, and where each stands on it. */
export interface Stairs {
  readonly points: readonly { readonly x: number; readonly told: Told | null }[];
  readonly datasets: Dataset[];
}

/**
 * Level from one build to the next, then up or down; a build that nothing is known of is left out. The ends
 * of the intervals are lines that are not seen: the spots show them.
 * @param at where each build stands across
 */
export function stairs(
  { name, of }: Upright,
  builds: readonly BuildResult[],
  at: readonly number[],
  level: number,
): Stairs {
  const points = builds.map((build, i) => ({ x: defined(at[i]), told: of(build) })),
    data = (value: keyof Told) => points.map(({ x, told }) => ({ x, y: told?.[value] ?? NaN })),
    end = (which: 'low' | 'high'): Dataset =>
      line(`${name}, ${intervalWords(level)} ${which}`, data(which), 'transparent', 0, { pointHitRadius: 0 });
  return {
    points,
    datasets: [
      line(name, data('mean'), PALETTE.blue, 2.5, { stepped: 'before', spanGaps: true }),
      end('low'),
      end('high'),
    ],
  };
}
