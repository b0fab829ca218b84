import { UsageError } from '../usage-error.js';
import { optional, type Values } from './option.js';
import { MOST_REPLICATIONS } from './options.js';
import { path, wholeNumber } from './readers.js';

/** The floor log of a replication. */
export const TRACE = {
  trace: optional(
    'file for the floor log of one replication, new: CSV, or OCEL 2.0 if it ends in .json',
    path,
  ),
  traceReplication: optional(
    'number of the replication whose floor log is written; default: 1',
    wholeNumber(1, MOST_REPLICATIONS),
  ),
};

/** A replication is asked for only with a file. */
export function checkTrace({ trace, traceReplication }: Values<typeof TRACE>): void {
  if (traceReplication !== undefined && trace === undefined)
    throw new UsageError(
      `--trace-replication: expected --trace with a file, got ${traceReplication} alone`,
      'for example --trace log.csv',
    );
}
