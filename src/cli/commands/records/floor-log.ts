import system from 'node:path';
import { knownOf } from '../../../records/log/known.js';
import type { Mapping } from '../../../records/names.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { exact } from '../../../study/format.js';
import type { LogSource } from '../../../study/validate/types.js';
import { inFront } from '../../front/in-front.js';
import { plannedRun } from '../../load.js';
import { readLogFile } from '../../records/log.js';
import { UsageError } from '../../usage-error.js';

/** A floor log in a file, read against a scenario; it is read more than once. */
export function logSource(path: string, scenario: Scenario, names: Mapping | undefined): LogSource {
  let doing = `reading ${path}`;
  return {
    file: system.basename(path),
    read: async (take) => {
      const { tell } = inFront(),
        text = doing;
      let told = -1;
      tell({ kind: 'busy', args: [text] });
      const read = await readLogFile(path, knownOf(scenario, names), take, (share, rows) => {
        const percent = Math.floor(share * 100);
        if (percent === told) return;
        told = percent;
        tell({ kind: 'busy', args: [text, `: ${percent} %, ${exact(rows)} rows`] });
      });
      doing = `reading ${path} again`;
      return read;
    },
  };
}

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
