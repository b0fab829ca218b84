import { basename } from 'node:path';
import { digest } from '../scenario/digest.js';
import type { Scenario } from '../scenario/types/scenario.js';
import { type PlannersUnit } from './planners-unit.js';
import { plannersUnit } from './unit-of.js';
import { PROGRAM_VERSION } from './version.js';

/** Version of the shape of every `results.json` (1: trucks waiting for room counted as busy). */
export const RESULTS_VERSION = 5;

/** What the results of every study say of where they come from. */
export interface ResultsHead<Study extends string> {
  readonly format: 'rateproof results';
  readonly version: number;
  readonly program: string;
  readonly study: Study;
  readonly scenario: {
    readonly name: string;
    readonly note: string | null;
    /** Without folders. */
    readonly file: string;
    readonly digest: string;
  };
  readonly seed: string;
  /** Confidence of the intervals. */
  readonly level: number;
  /** How the planner gives the rate, and answers speak of it; a field says so where it is per day. */
  readonly rateUnit: PlannersUnit;
}

/** What a study was asked, as far as the head says it. */
export interface Origin {
  readonly scenario: Scenario;
  readonly file: string;
  readonly seed: string;
  readonly level: number;
}

export const headOf = <Study extends string>(
  study: Study,
  { scenario, file, seed, level }: Origin,
): ResultsHead<Study> => ({
  format: 'rateproof results',
  version: RESULTS_VERSION,
  program: PROGRAM_VERSION,
  study,
  scenario: {
    name: scenario.name,
    note: scenario.note ?? null,
    file: basename(file),
    digest: `sha256:${digest(scenario)}`,
  },
  seed,
  level,
  rateUnit: plannersUnit(scenario),
});
