import { CARRIER_BACK } from '../floor/states.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import { give } from './resource.js';

/** Rule 7: what stayed with a unit leaves it. People are free at once, a carrier when it is back. */

/**
 * The unit has come to step `beyond`: what was to stay only up to an earlier one is given back; `Infinity`:
 * it leaves its route.
 */
export function letGo(run: Run, unit: Unit, beyond: number): void {
  for (const companion of run.shop.companions) {
    if ((unit.companionBits & companion.bit) === 0 || companion.to >= beyond) continue;
    unit.companionBits &= ~companion.bit;
    if (companion.returnDraw < 0) {
      companion.change(-1, 0, run.now);
      give(run, companion.resource, companion.amount);
    } else {
      companion.change(-1, 1, run.now);
      run.queue.push(
        run.memory.after(companion.returnCalendar, run.sampler.next(companion.returnDraw)),
        CARRIER_BACK,
        companion.sources.pop()!,
      );
    }
  }
}

/** A carrier is back. */
export function carrierBack(run: Run, source: number): void {
  const companion = run.shop.carriers[source];
  companion.sources.push(source);
  companion.change(0, -1, run.now);
  give(run, companion.resource, companion.amount);
}
