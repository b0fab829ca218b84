import type { FitResults, StepResult } from '../../../study/fit/results.js';
import { isSame } from '../../../study/statistics/estimate.js';
import { columns, type PageTable } from '../../columns.js';
import { type Cell, counted, estimated, rounded } from '../../sheets/cells.js';
import { pCell } from './fit-factors.js';

/** A mean with its interval, where more than one time was seen and they differ. */
const meanCell = ({ mean }: StepResult): Cell =>
  mean.low === null || isSame(mean) ? rounded(mean.mean) : estimated(mean);

/** A row a step. */
export function stepsTable({ steps, level }: FitResults): PageTable {
  return {
    id: 'steps',
    title: 'Steps',
    note:
      `Mean: min, in brackets its ${100 * level} % interval. cv: standard deviation over mean. ` +
      'p: chance of times that fit as badly, were the distribution the true one (Anderson-Darling, by ' +
      'simulation and fitting again). Scenario: mean of the work as written there, where it can be ' +
      'compared; differs: surely, all comparisons together 95 %.',
    ...columns(steps, [
      ['Step', 'step'],
      ['Times', ({ n }) => counted(n)],
      ['Mean', meanCell],
      ['cv', ({ cv }) => (cv === null ? '' : rounded(cv))],
      ['Distribution', 'distribution'],
      ['As written', ({ written }) => shortened(written)],
      ['p', ({ andersonDarling: test }) => (test === null ? '' : pCell(test.p))],
      ['Scenario', ({ againstScenario: now }) => (now === null ? '' : rounded(now.now))],
      ['Differs', ({ againstScenario: now }) => now?.differs ?? ''],
      ['In the file', 'path'],
      ['Why', 'why'],
    ]),
  };
}

/** Observed times are a long list, which fitted.yaml and results.json have. */
const LONGEST = 60;
const shortened = (text: string): string =>
  text.length <= LONGEST ? text : `${text.slice(0, LONGEST)} .., see fitted.yaml`;

/** A row a distribution tried. */
export function candidatesTable({ steps }: FitResults): PageTable {
  const all = steps.flatMap(({ step, candidates }) => candidates.map((each) => ({ ...each, step })));
  return {
    id: 'tried',
    title: 'Distributions tried',
    note:
      'AIC: the lower the better (Akaike 1974). p: of the Anderson-Darling and the Kolmogorov-Smirnov ' +
      'test; below 0.05 a distribution is rejected.',
    ...columns(all, [
      ['Step', 'step'],
      ['Distribution', 'name'],
      ['As written', 'written'],
      ['AIC', ({ aic }) => rounded(aic)],
      ['p, Anderson-Darling', ({ andersonDarling: { p } }) => pCell(p)],
      ['p, Kolmogorov-Smirnov', ({ kolmogorovSmirnov: { p } }) => pCell(p)],
    ]),
  };
}

/** What is to be known of the steps, a row a sentence. */
export function warningsTable(
  { steps }: FitResults,
  told: (step: StepResult) => readonly string[],
): PageTable {
  const all = steps.flatMap((result) => [
    ...result.warnings.map((warning) => ({ step: result.step, ...warning })),
    ...told(result).map((text) => ({ step: result.step, kind: 'in the scenario', told: text })),
  ]);
  return {
    id: 'warnings',
    title: 'What to know of the steps',
    note: 'Each test of one step warns where p is below 0.01, options where it is below 0.05.',
    ...columns(all, [
      ['Step', 'step'],
      ['What', 'kind'],
      ['In words', 'told'],
    ]),
  };
}
