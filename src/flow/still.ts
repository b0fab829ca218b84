import { mayComeUp } from './failures.js';
import { mayGoOn } from './hand-over.js';
import type { Run } from './run.js';
import { mayArrive } from './supplies.js';

/** Whether nothing moves any more: only lots of supplies, changes of shift, looks at overtime rules, failures and repairs are ahead, and nobody waits for one of them. */
export function isStill(run: Run): boolean {
  return (
    run.queue.size === run.lotsAhead + run.idleEvents + run.disruptions.scheduled &&
    !mayArrive(run) &&
    !mayGoOn(run) &&
    !mayComeUp(run)
  );
}
