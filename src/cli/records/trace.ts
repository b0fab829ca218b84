import { closeSync, openSync, unlinkSync, writeSync } from 'node:fs';
import { floorLog } from '../../flow/floor-log.js';
import type { Model } from '../../flow/model/model.js';
import { prepare } from '../../flow/plan.js';
import { eventsOfRun } from '../../records/log/of-run.js';
import { logLines } from '../../records/log/write.js';
import { ocelOf, ocelText } from '../../records/ocel/write.js';
import { runSpan } from '../../scenario/programme/span.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { systemReason, UsageError } from '../usage-error.js';

/** Characters that are written at once. */
const AT_ONCE = 1 << 20;

/** What `--trace` is asked for. */
export interface TraceAsked {
  readonly file: string;
  readonly seed: string;
  readonly replication: number;
}

/**
 * Runs one replication and writes its floor log: OCEL 2.0 where the file ends in `.json`, else CSV, in the
 * zone of the programme.
 */
export function writeTrace({ file, seed, replication }: TraceAsked, scenario: Scenario, model: Model): void {
  const handle = created(file);
  try {
    const { clock, origin } = runSpan(scenario),
      { happenings } = floorLog(prepare(model), seed, replication),
      events = eventsOfRun(happenings, model, origin),
      lines = file.endsWith('.json')
        ? ocelText(ocelOf(events))
        : logLines(events, (instant) => clock.local(instant) - instant);
    let text = '';
    for (const line of lines) {
      text += `${line}\n`;
      if (text.length < AT_ONCE) continue;
      writeSync(handle, text);
      text = '';
    }
    writeSync(handle, text);
  } catch (error) {
    unlinkSync(file);
    throw error;
  } finally {
    closeSync(handle);
  }
}

/** A file that was not there. */
function created(file: string): number {
  try {
    return openSync(file, 'wx');
  } catch (error) {
    const isThere = error instanceof Error && 'code' in error && error.code === 'EEXIST',
      reason = isThere ? 'one that is there' : systemReason(error);
    if (reason === undefined) throw error;
    throw new UsageError(
      `--trace: expected a file that can be written and is not there yet, got ${reason}: ${file}`,
      'give another name, or move the file away',
    );
  }
}
