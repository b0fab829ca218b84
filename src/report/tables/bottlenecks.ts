import type { BottleneckResult, Results } from '../../study/simulate/results.js';

/**
 * Share of the time observed in which something was the bottleneck of the moment, alone or while that moved
 * on.
 */
export const momentaryTime = ({ sole, shifting }: BottleneckResult): number => sole.mean + shifting.mean;

/** Only the first replications are watched so closely. */
export const isFollowed = ({ sole }: BottleneckResult): boolean => sole.n > 0;

/** What was followed, the largest of the moment first. */
export const byMoment = ({ bottlenecks }: Pick<Results, 'bottlenecks'>): BottleneckResult[] =>
  bottlenecks.filter(isFollowed).sort((a, b) => momentaryTime(b) - momentaryTime(a));
