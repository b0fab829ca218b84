import type { TryIt } from '../../report/page/try-it.js';
import type { ComparedMeasure } from '../../study/compare/results.js';
import type { Results } from '../../study/simulate/results.js';

/** What the report of the page says, as far as the engine needs it. */
export type Reported = Pick<Results, 'seed' | 'replications' | 'level' | 'scenario' | 'runs'>;

/** To the engine. A new try ends the one before it. */
export type Asked =
  | { readonly kind: 'begin'; readonly tryIt: TryIt; readonly report: Reported }
  | {
      readonly kind: 'try';
      readonly id: number;
      /** Numbers of the levers, in their order. */
      readonly numbers: readonly number[];
    }
  /** Ends the try that is under way. */
  | { readonly kind: 'rest' };

/** From the engine; `id` is that of the try. */
export type Told =
  /** Cannot be: why, a line each. */
  | { readonly kind: 'refused'; readonly id: number; readonly why: readonly string[] }
  | {
      readonly kind: 'seen';
      readonly id: number;
      readonly done: number;
      readonly rows: readonly ComparedMeasure[];
    }
  /** All that the report would tell of the changed build, but for what takes more replications. */
  | { readonly kind: 'results'; readonly id: number; readonly results: Results }
  /** Replications of the report's own build that were run here, and those whose digits are the report's. */
  | { readonly kind: 'agrees'; readonly done: number; readonly same: number }
  | { readonly kind: 'fault'; readonly message: string };
