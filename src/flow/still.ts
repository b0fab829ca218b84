import { mayGoOn } from './hand-over.js';
import type { Run } from './run.js';
import { mayArrive } from './supplies.js';

/** Whether nothing moves any more: only lots of supplies, changes of shift and looks at overtime rules are ahead, and nobody waits for one of them. */
export function isStill(run: Run): boolean {
  return run.queue.size === run.lotsAhead + run.idleEvents && !mayArrive(run) && !mayGoOn(run);
}
