import type { Oddity } from '../../records/oddity.js';
import type { TimesRead } from '../../records/table/clocked.js';
import type { LeftOut } from '../../records/table/table.js';
import { RESULTS_VERSION } from '../head.js';
import type { Estimate } from '../statistics/estimate.js';
import { mean } from '../statistics/sums.js';
import { PROGRAM_VERSION } from '../version.js';
import type { WorkFactor } from './factors.js';
import type { GoodnessOfFit } from './fitted.js';
import type { FactorWritten } from './places.js';
import { type AgainstScenario, againstScenario, LEVEL } from './shown/against.js';
import { type Histogram, quantileOf } from './shown/histogram.js';
import { ranksToLook } from './shown/matters.js';
import type { QuantilePlot } from './shown/quantiles.js';
import { type FittedStep, isFitted } from './steps.js';
import type { OptionLevel } from './warnings/options.js';
import type { Warning } from './warnings/warning.js';
import { written } from './written.js';

/** A distribution that was fitted, whether it stands or not. */
export interface CandidateResult {
  readonly name: string;
  readonly aic: number;
  /** As a scenario has it. */
  readonly written: string;
  readonly andersonDarling: GoodnessOfFit;
  readonly kolmogorovSmirnov: GoodnessOfFit;
}

/** What the times of a step say, and what stands for them in a scenario. */
export interface StepResult {
  readonly step: string;
  /** Times used; `fitted` of them stand behind the distribution, where options were taken out. */
  readonly n: number;
  readonly fitted: number;
  /** Minutes, of all times as clocked; without an interval where too few of them differ. */
  readonly mean: Estimate;
  /** Standard deviation over mean; null of a single time. */
  readonly cv: number | null;
  /** Minutes that one and nine of ten times do not reach. */
  readonly p10: number;
  readonly p90: number;
  /** In words: `lognormal`, `three points`. */
  readonly distribution: string;
  /** As a scenario has it, of a unit with the usual values of options. */
  readonly written: string;
  readonly why: string;
  /** Of the one that was chosen; null where none of the families was. */
  readonly andersonDarling: GoodnessOfFit | null;
  readonly candidates: readonly CandidateResult[];
  readonly warnings: readonly { readonly kind: Warning['kind']; readonly told: string }[];
  readonly options: readonly {
    readonly option: string;
    /** Allowing for all options looked at; null where fewer than two values were seen often enough. */
    readonly p: number | null;
    readonly isFelt: boolean;
    readonly levels: readonly OptionLevel[];
  }[];
  /** Options that were taken out of the times, and stand in the scenario as factors at these paths. */
  readonly factors: readonly WorkFactor[];
  /** Options whose factors of the scenario were taken out, and stay as they are. */
  readonly factorsKept: readonly string[];
  readonly factorsWritten: readonly FactorWritten[];
  readonly factorsNotWritten: FittedStep['unwritten'];
  /** Of its work in the scenario; null where that has none, and why. */
  readonly path: string | null;
  readonly notWritten: string | null;
  /** What has to be known of it in the scenario, a sentence each. */
  readonly notes: readonly string[];
  readonly againstScenario: AgainstScenario | null;
  readonly from: string | null;
  readonly to: string | null;
  /** Rank among those to look at, 1 the first. */
  readonly rank: number;
  readonly histogram: Histogram;
  readonly quantiles: QuantilePlot | null;
}

/** What `fit` found of a table of times: plain data, but for the cells of rows that are left out. */
export interface FitResults {
  readonly format: 'rateproof results';
  readonly version: number;
  readonly program: string;
  readonly study: 'fit';
  readonly of: 'times';
  /** Names of the files, without folders. */
  readonly table: string;
  readonly scenarioFile: string | null;
  /** `sha256:..` of the rows of the table, and of the scenario as read. */
  readonly tableDigest: string;
  readonly scenarioDigest: string | null;
  readonly seed: string;
  readonly level: number;
  readonly rows: number;
  readonly used: number;
  readonly head: readonly string[];
  readonly leftOut: readonly LeftOut[];
  readonly oddities: readonly Oddity[];
  readonly steps: readonly StepResult[];
  /** Of the records as a whole, in sentences. */
  readonly notes: readonly string[];
}

export function fitResults(
  { rows, head, leftOut, oddities, used = rows - leftOut.length }: TimesRead,
  steps: readonly FittedStep[],
  of: Pick<FitResults, 'table' | 'scenarioFile' | 'scenarioDigest' | 'tableDigest' | 'seed'>,
  notes: readonly string[] = [],
): FitResults {
  const against = againstScenario(
      steps.map(({ times, fit: { taken }, place: { now, factorsNow } }) => {
        const isAlike =
          taken.factors.length === 0 &&
          Object.keys(factorsNow).every((option) => taken.kept.includes(option));
        return { times: taken.times, now: isAlike ? now : null, mix: mean(times) / mean(taken.times) };
      }),
    ),
    ranks = ranksToLook(
      steps.map(({ fit: { chosen, candidates, warnings }, times }, i) => ({
        n: times.length,
        off: offBy(against[i]),
        isUnfitted:
          chosen === 'observed values' && candidates.every(({ andersonDarling: { p } }) => p < 0.05),
        warnings: warnings.length,
      })),
    );
  return {
    format: 'rateproof results',
    version: RESULTS_VERSION,
    program: PROGRAM_VERSION,
    study: 'fit',
    of: 'times',
    ...of,
    level: LEVEL,
    rows,
    used,
    head,
    leftOut,
    oddities,
    steps: steps.map((step, i) => stepResult(step, against[i], ranks[i])),
    notes,
  };
}

/** By how much the clocked mean surely is another than that in the scenario, as a share. */
function offBy(against: AgainstScenario | null): number {
  if (against?.differs == null) return 0;
  const { interval, now } = against;
  return Math.abs(interval.mean / now - 1);
}

function stepResult(
  { fit, place, times, unwritten, ...step }: FittedStep,
  against: AgainstScenario | null,
  rank: number,
): StepResult {
  const { chosen, candidates, taken } = fit,
    sorted = times.toSorted((a, b) => a - b);
  return {
    ...step,
    n: times.length,
    fitted: fit.n,
    p10: quantileOf(sorted, 0.1),
    p90: quantileOf(sorted, 0.9),
    distribution: isFitted(chosen) ? chosen.name : chosen,
    written: written(fit.distribution),
    why: fit.why,
    andersonDarling: isFitted(chosen)
      ? (candidates.find(({ name }) => name === chosen.name)?.andersonDarling ?? null)
      : null,
    candidates: candidates.map(({ name, aic, distribution, andersonDarling, kolmogorovSmirnov }) => ({
      ...{ name, aic, written: written(distribution), andersonDarling, kolmogorovSmirnov },
    })),
    warnings: fit.warnings.map(({ kind, told }) => ({ kind, told })),
    options: fit.options.map(({ option, adjusted, isFelt, levels }) => ({
      ...{ option, p: Number.isNaN(adjusted) ? null : adjusted, isFelt, levels },
    })),
    factors: taken.factors,
    factorsKept: taken.kept,
    factorsWritten: place.written(taken.factors),
    factorsNotWritten: unwritten,
    path: place.path,
    notWritten: place.notWritten,
    notes: place.notes([...taken.kept, ...taken.factors.map(({ option }) => option)], mean(taken.times)),
    againstScenario: against,
    rank,
  };
}
