import type { Look } from './gridlock/moment.js';
import { UNLIMITED } from './model/model.js';
import type { Run } from './run.js';

/** Is told the share of a replication that is done, 0 to 1, every now and then. */
export type Tell = (share: number) => void;

/** Events between two looks, about: a tenth of a second. */
const BETWEEN = 100_000;
/** Minutes to the second look; later ones follow from the events between. */
const FIRST = 1;

/**
 * A look that tells how far the run is. It pauses at times of the plant, which cost the events nothing, and
 * sets them by the number of events between: no clock is asked.
 */
export function telling(tell: Tell): Look {
  let minutes = FIRST,
    before = 0;
  return (run, next) => {
    tell(shareDone(run));
    const events = run.queue.scheduled - before;
    before = run.queue.scheduled;
    if (events < BETWEEN / 2) minutes *= 2;
    else if (events > 2 * BETWEEN) minutes /= 2;
    return next + minutes;
  };
}

/**
 * By time where the end is known, or by units where their number is: a unit counts half when it enters and
 * half when it is out.
 */
function shareDone({ model: { programme, horizon }, now, shop, gone }: Run): number {
  const byUnits =
    programme.quantity < UNLIMITED ? (shop.routes[0].begun + gone) / (2 * programme.quantity) : 0;
  return Math.min(1, Math.max(now / Math.min(programme.end, horizon), byUnits));
}
