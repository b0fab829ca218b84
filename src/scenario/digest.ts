// Apart from reading: `check` needs no digest, and Node's crypto takes longer to load than its arithmetic.
import { createHash } from 'node:crypto';
import { canonicalJson } from './canonical.js';
import type { Scenario } from './types/scenario.js';

/** SHA-256, in hex, of a scenario's canonical JSON: files with the same digest give the same results. */
export const digest = (scenario: Scenario): string =>
  createHash('sha256').update(canonicalJson(scenario)).digest('hex');
