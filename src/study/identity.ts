import { digest } from '../scenario/read-digest.js';
import type { Scenario } from '../scenario/scenario.js';
import type { Identity } from './journal.js';
import { PROGRAM_VERSION } from './version.js';

/** What replications of a study hang on. Not the number of replications and workers: with more of either the others stay as they are. */
export interface IdentityParts { readonly study: string; readonly scenario: Scenario; readonly seed: string; readonly level: number; /** Whatever else of the study may change a number. */ readonly more?: Identity }

/** The identity of a study's replications, for its journal and its shards. */
export function identityOf({ study, scenario, seed, level, more }: IdentityParts): Identity {
  return { study, scenario: `sha256:${digest(scenario)}`, seed, level: String(level), program: PROGRAM_VERSION, ...more };
}
