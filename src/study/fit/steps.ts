import type { StepTimes } from '../../records/table/clocked.js';
import { dayText } from '../../records/table/table.js';
import { mean } from '../statistics/sums.js';
import type { Fitted, GoodnessOfFit } from './fitted.js';
import { type FittedTimes, fitTimes } from './times.js';

/** What the times of one step say. */
export interface FittedStep {
  readonly step: string;
  /** Minutes, in the order of the table. */
  readonly times: readonly number[];
  readonly fit: FittedTimes;
  /** Minutes. */
  readonly mean: number;
  /** Standard deviation over mean; null of a single time. */
  readonly cv: number | null;
  /** In words: `lognormal`, `three points`. */
  readonly distribution: string;
  /** Of the one that was chosen; null where none of the families was. */
  readonly andersonDarling: GoodnessOfFit | null;
  /** First and last day; null where a row of the step has none. */
  readonly from: string | null;
  readonly to: string | null;
}

/** Fits the times of each step; each has random numbers of its own, so that no step depends on the others. */
export function fitStep({ step, minutes, at, by }: StepTimes, seed: string): FittedStep {
  const isDated = at.every((each) => !Number.isNaN(each)),
    fit = fitTimes(minutes, { ...(isDated && { at }), by, seed: `${seed}/${step}` }),
    n = minutes.length,
    middle = mean(minutes),
    squares = minutes.reduce((sum, each) => sum + (each - middle) * (each - middle), 0),
    { chosen } = fit;
  return {
    step,
    times: minutes,
    fit,
    mean: middle,
    cv: n < 2 ? null : Math.sqrt(squares / (n - 1)) / middle,
    distribution: typeof chosen === 'string' ? chosen : chosen.name,
    andersonDarling: isFitted(chosen)
      ? (fit.candidates.find(({ name }) => name === chosen.name)?.andersonDarling ?? null)
      : null,
    from: isDated ? dayText(at.reduce((a, b) => Math.min(a, b))) : null,
    to: isDated ? dayText(at.reduce((a, b) => Math.max(a, b))) : null,
  };
}

const isFitted = (chosen: FittedTimes['chosen']): chosen is Fitted => typeof chosen !== 'string';
