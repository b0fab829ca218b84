import type { Oddity } from '../../records/oddity.js';
import type { LeftOut, TimesRead } from '../../records/table/clocked.js';
import { RESULTS_VERSION } from '../head.js';
import { PROGRAM_VERSION } from '../version.js';
import type { FittedStep } from './steps.js';

/** A step with what stands for it in a scenario. */
export interface StepResult extends FittedStep {
  /** Of its work in the scenario; null where that has none, and why. */
  readonly path: string | null;
  readonly notWritten: string | null;
}

/** What `fit` found of a table of times. */
export interface FitResults {
  readonly format: 'rateproof results';
  readonly version: number;
  readonly program: string;
  readonly study: 'fit';
  /** Names of the files, without folders. */
  readonly table: string;
  readonly scenarioFile: string | null;
  readonly seed: string;
  readonly rows: number;
  readonly used: number;
  readonly head: readonly string[];
  readonly leftOut: readonly LeftOut[];
  readonly oddities: readonly Oddity[];
  readonly steps: readonly StepResult[];
}

export const fitResults = (
  { rows, head, leftOut, oddities }: TimesRead,
  steps: readonly StepResult[],
  of: Pick<FitResults, 'table' | 'scenarioFile' | 'seed'>,
): FitResults => ({
  format: 'rateproof results',
  version: RESULTS_VERSION,
  program: PROGRAM_VERSION,
  study: 'fit',
  ...of,
  rows,
  used: rows - leftOut.length,
  head,
  leftOut,
  oddities,
  steps,
});
