import { createHash } from 'node:crypto';
import { digest } from '../../scenario/digest.js';
import { LEVEL } from '../asked.js';
import type { Origin } from '../head.js';
import { machineMark } from '../machine.js';
import { PROGRAM_VERSION } from '../version.js';
import { type Identity, STANDARD_RUN } from './journal.js';

/** What replications of a study hang on. */
export interface IdentityParts extends Omit<Origin, 'file' | 'level'> {
  readonly study: string;
  /** Confidence of the intervals, default `LEVEL`. */
  readonly level?: number;
  /**
   * Whatever else may change a number, or which replications are run; `rampTo` is told as `ramp to`,
   * undefined not at all.
   */
  readonly more?: Readonly<Record<string, unknown>>;
}

/**
 * The identity of a study's replications, for its journal and its shards. Never the number of workers; nor,
 * where all replications are known before the study begins, their number: with more of them the others stay
 * as they are.
 */
export function identityOf({ study, scenario, seed, level = LEVEL, more = {} }: IdentityParts): Identity {
  const asked = Object.entries(more)
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => [
      name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`),
      typeof value === 'string' ? value : JSON.stringify(value),
    ]);
  return {
    study,
    scenario: `sha256:${digest(scenario)}`,
    seed,
    level: String(level),
    program: PROGRAM_VERSION,
    // Run when it is asked for: a study that keeps nothing does not need it.
    get [STANDARD_RUN]() {
      return machineMark();
    },
    ...(Object.fromEntries(asked) as Identity),
  };
}

/** SHA-256 of a value by its JSON. */
export const fingerprint = (value: unknown): string =>
  `sha256:${createHash('sha256').update(JSON.stringify(value)).digest('hex')}`;
