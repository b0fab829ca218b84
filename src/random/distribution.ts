/**
 * What a random quantity is, as plain data. Units are the caller's (the engine uses minutes).
 * A sampler is made from it in `sampler.ts`.
 */
export type Distribution =
  | { readonly kind: 'constant'; readonly value: number }
  | { readonly kind: 'uniform'; readonly low: number; readonly high: number }
  | { readonly kind: 'triangular'; readonly low: number; readonly likely: number; readonly high: number }
  | { readonly kind: 'pert'; readonly low: number; readonly likely: number; readonly high: number }
  | { readonly kind: 'exponential'; readonly mean: number }
  | { readonly kind: 'gamma'; readonly shape: number; readonly scale: number }
  | { readonly kind: 'lognormal'; readonly mu: number; readonly sigma: number }
  | { readonly kind: 'weibull'; readonly shape: number; readonly scale: number }
  /** A normal cut to [low, high]; `mean` and `sd` are those before the cut. */
  | {
      readonly kind: 'normal';
      readonly mean: number;
      readonly sd: number;
      readonly low: number;
      readonly high: number;
    }
  | { readonly kind: 'discrete'; readonly values: readonly number[]; readonly weights: readonly number[] }
  /** Observed values, each as likely as the next. */
  | { readonly kind: 'empirical'; readonly values: readonly number[] };
