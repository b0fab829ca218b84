import { give } from './claims.js';
import type { Run } from '../run.js';
import { CARRIER_BACK } from '../floor/states.js';
import type { Unit } from '../floor/unit.js';

/** Rule 7: what stayed with a unit leaves it. People are free at once, a carrier when it is back. */

/**
 * The unit has come to step `beyond`: what was to stay only up to an earlier one is given back; `Infinity`:
 * it leaves its route.
 */
export function letGo(run: Run, unit: Unit, beyond: number): void {
  for (const stay of run.shop.stays) {
    if ((unit.stays & stay.bit) === 0 || stay.to >= beyond) continue;
    unit.stays &= ~stay.bit;
    if (stay.returnDraw < 0) {
      stay.change(-1, 0, run.now);
      give(run, stay.resource, stay.amount);
    } else {
      stay.change(-1, 1, run.now);
      run.queue.push(
        run.memory.after(stay.returnCalendar, run.sampler.next(stay.returnDraw)),
        CARRIER_BACK,
        stay.sources.pop()!,
      );
    }
  }
}

/** A carrier is back. */
export function carrierBack(run: Run, source: number): void {
  const stay = run.shop.carriers[source];
  stay.sources.push(source);
  stay.change(0, -1, run.now);
  give(run, stay.resource, stay.amount);
}
