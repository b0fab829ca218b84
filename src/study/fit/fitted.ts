import type { Distribution } from '../../random/distribution.js';

/** One candidate distribution, fitted to times by maximum likelihood. */
export interface Fitted {
  /** Minutes. */
  readonly distribution: Distribution;
  /** `lognormal`, `normal cut at 0`. */
  readonly name: string;
  /** How many parameters were estimated. */
  readonly parameters: number;
  readonly logLikelihood: number;
  /** 2 x parameters - 2 x log-likelihood (Akaike 1974, IEEE Transactions on Automatic Control 19). */
  readonly aic: number;
  /** Per minute. */
  readonly density: (minutes: number) => number;
  readonly cdf: (minutes: number) => number;
  readonly quantile: (p: number) => number;
}

/** A test of fit whose p-value is right for parameters that were estimated: by simulation and fitting again. */
export interface GoodnessOfFit {
  readonly statistic: number;
  readonly p: number;
  /** Samples simulated for it. */
  readonly simulated: number;
}

/** What a sample of times says, and what a scenario should have for it. */
export interface FitOfTimes {
  readonly n: number;
  /** By AIC, the best first; none where the sample is too small. */
  readonly candidates: readonly (Fitted & {
    readonly andersonDarling: GoodnessOfFit;
    readonly kolmogorovSmirnov: GoodnessOfFit;
  })[];
  readonly chosen: Fitted | 'observed values' | 'three points' | 'constant';
  /** Why, in a sentence. */
  readonly why: string;
}
