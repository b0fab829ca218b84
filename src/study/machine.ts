import { createHash } from 'node:crypto';
import { standardRun } from './standard-run.js';

let known: string | undefined;

/**
 * SHA-256 of all bits of the standard run, in hex, as this machine comes to them: replications of machines
 * with the same digest may be put together. Takes a tenth of a second, once.
 */
export function machineDigest(): string {
  known ??= createHash('sha256').update(standardRun()).digest('hex');
  return known;
}

/** Its beginning, which journals, shards and greetings of workers hold. */
export const machineMark = (): string => machineDigest().slice(0, 16);
