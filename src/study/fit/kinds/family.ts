import type { Distribution } from '../../../random/distribution.js';
import type { Sample } from './sample.js';

/** A distribution as functions, of minutes. */
export interface Curve {
  /** -Infinity where no value falls. */
  readonly logDensity: (minutes: number) => number;
  /** Chance of a value at or below. */
  readonly cdf: (minutes: number) => number;
  /** For p from 0 to 1. */
  readonly quantile: (p: number) => number;
}

/** A family of distributions that can be fitted to times by maximum likelihood. */
export interface Family<D extends Distribution = Distribution> {
  /** As a planner reads it. */
  readonly name: string;
  /** How many are estimated. */
  readonly parameters: number;
  /** Whether it has a longest time, found from the sample: no later time can be longer. */
  readonly isBounded: boolean;
  /**
   * The distribution of greatest likelihood; undefined where there is none (a time of 0, no spread, or a
   * likelihood that rises without end).
   */
  fit(sample: Sample): D | undefined;
  curve(distribution: D): Curve;
}
