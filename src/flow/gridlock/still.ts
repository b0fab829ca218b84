import { mayArrive } from '../claims/supplies.js';
import { mayComeUp } from '../interruptions/failures.js';
import type { Run } from '../run.js';
import { mayGoOn } from './shifts.js';

/**
 * Whether nothing moves any more: only lots of supplies, changes of shift, looks at overtime rules, failures
 * and repairs are ahead, and nobody waits for one of them.
 */
export function isStill(run: Run): boolean {
  return (
    run.queue.size === run.supplyEvents + run.idleEvents + run.disruptions.scheduled &&
    !mayArrive(run) &&
    !mayGoOn(run) &&
    !mayComeUp(run)
  );
}
