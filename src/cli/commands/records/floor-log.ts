import system from 'node:path';
import { knownOf } from '../../../records/log/known.js';
import type { Mapping } from '../../../records/names.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import type { LogSource } from '../../../study/validate/types.js';
import { inFront } from '../../front/in-front.js';
import { plannedRun } from '../../load.js';
import { readLogFile } from '../../records/log.js';
import { UsageError } from '../../usage-error.js';

/** A floor log in a file, read against a scenario; it is read more than once. */
export const logSource = (path: string, scenario: Scenario, names: Mapping | undefined): LogSource => ({
  file: system.basename(path),
  read: (take) => {
    inFront().tell({ kind: 'busy', args: [`reading ${path}`] });
    return readLogFile(path, knownOf(scenario, names), take);
  },
});

/**
 * Reads a log and runs what is asked of it: what is wrong with the log, or with the moment, is told of the
 * file and the option, not of a line of the scenario.
 */
export async function withLog<T>(scenario: string, log: string, run: () => Promise<T>): Promise<T> {
  return plannedRun(scenario, async () => {
    try {
      return await run();
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      const [, whose, rest] = /^(at|log): (.*)$/s.exec(error.message) ?? [];
      throw whose === undefined ? error : new UsageError(`${whose === 'at' ? '--at' : log}: ${rest}`);
    }
  });
}
