import { appendFileSync } from 'node:fs';
import { basename } from 'node:path';
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { expect } from 'vitest';
import type { Observation } from '../../src/measure/observe.js';
import { replicateBuilt } from './built.js';

/** Replications of a check, at least: enough for a normal mean. Checks of what varies much ask for more. */
const REPLICATIONS = 20;
/**
 * A right engine is further off than this many standard errors in 1 of 400 checks (t at 19 degrees of
 * freedom; rarer with more); the seeds are fixed, so a check that has passed goes on to pass until the engine
 * changes.
 */
const STANDARD_ERRORS = 3.5;

/** Time allowed to a check: several times what it takes, for a machine that does other things besides. */
export const SLOW = { timeout: 600_000 };

/** All replications of one scenario. */
export function observations(
  yaml: string,
  { seed = 'statistics', replications = REPLICATIONS } = {},
): readonly Observation[] {
  return replicateBuilt(yaml, replications, seed, (observation) => observation);
}

/**
 * The mean of `values` (one a replication) agrees with the value of the source, and the 95 % interval is
 * narrow enough for that to say something: its half-width is at most `halfWidth` of the expected value.
 */
export function expectAgreement(values: readonly number[], expected: number, halfWidth = 0.005): void {
  const n = values.length,
    mean = values.reduce((a, b) => a + b, 0) / n;
  const standardError = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (n - 1) / n);
  const half = tQuantile(0.975, n - 1) * standardError;
  // For a record of what was measured: AGREEMENT=file npx vitest run tests/statistics
  const record = process.env['AGREEMENT'],
    { currentTestName, testPath } = expect.getState();
  if (record !== undefined)
    appendFileSync(
      record,
      `${[basename(testPath ?? ''), currentTestName, expected, mean, half / Math.abs(expected), halfWidth, (mean - expected) / standardError].join('\t')}\n`,
    );
  expect(n, 'replications').toBeGreaterThanOrEqual(REPLICATIONS);
  expect(half / Math.abs(expected), `half-width ${half} over ${expected}`).toBeLessThanOrEqual(halfWidth);
  expect(
    Math.abs(mean - expected),
    `mean ${mean}, expected ${expected}, standard error ${standardError}`,
  ).toBeLessThanOrEqual(STANDARD_ERRORS * standardError);
}

/**
 * The values without what goes along with a control, whose mean is known: a replication in which the server
 * was busier by chance had more units wait. The slope is fitted by least squares; the mean stays that of the
 * values, the variance falls to about half for waits (Lavenberg & Welch 1981, A perspective on the use of
 * control variables, Management Science 27(3), 322-335; from memory). The control has to agree with its own
 * mean too.
 */
export function controlled(
  values: readonly number[],
  control: readonly number[],
  expected: number,
): number[] {
  expectAgreement(control, expected, 0.01);
  const average = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0) / of.length,
    value = average(values),
    level = average(control);
  let along = 0,
    spread = 0;
  for (const [i, each] of control.entries()) {
    along += (each - level) * (values[i] - value);
    spread += (each - level) ** 2;
  }
  return values.map((each, i) => each - (along / spread) * (control[i] - expected));
}

/** Units shipped an hour. */
export const perHour = ({ shipped, minutes }: Observation): number => (shipped / minutes) * 60;
