import type { Oddity } from '../../records/oddity.js';
import type { TimesRead } from '../../records/table/clocked.js';
import type { LeftOut } from '../../records/table/table.js';
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
  readonly of: 'times';
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
  /** Of the records as a whole, in sentences. */
  readonly notes: readonly string[];
}

export const fitResults = (
  { rows, head, leftOut, oddities, used = rows - leftOut.length }: TimesRead,
  steps: readonly StepResult[],
  of: Pick<FitResults, 'table' | 'scenarioFile' | 'seed'>,
  notes: readonly string[] = [],
): FitResults => ({
  format: 'rateproof results',
  version: RESULTS_VERSION,
  program: PROGRAM_VERSION,
  study: 'fit',
  of: 'times',
  ...of,
  rows,
  used,
  head,
  leftOut,
  oddities,
  steps,
  notes,
});
