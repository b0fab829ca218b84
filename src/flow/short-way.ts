import { freePlace } from './move.js';
import type { Run } from './run.js';
import { IN_WORK, TASK, WORKING } from './states.js';
import type { Place } from './station.js';
import type { Step } from './step.js';
import type { Unit } from './unit.js';

/**
 * The commonest event, in one piece: the work of a plain step ends, its unit goes on to a plain step with room for it,
 * and the next unit in the buffer takes the place. It does what `complete`, `goOn`, `fill` and `beginStep` would do in
 * the same order, so the bits are the same; whatever is not plain goes their way. Half of the time of a plain line.
 */

/** Whether a unit that ends this step may take the short way: nothing but work here and next, in one site, by other rules than rule 1. */
export function isShort({ flags, station, next, buffer }: Step): boolean {
  return flags === 0 && next !== null && next.flags === 0 && next.station !== null && next.station !== station && next.buffer.isShared && next.buffer.location === buffer.location;
}

/** The phase at `place` is over. False: nothing was done, the long way is to be gone. */
export function goShortWay(run: Run, place: Place): boolean {
  const unit = place.unit!, { step } = unit;
  if (!step.short || unit.rework !== null) return false;
  const next = step.next!, ahead = next.buffer;
  if (ahead.shutOut > 0) return false;
  const free = next.station!.freePlace;
  if (free !== null && ahead.waiting === 0) {
    next.station!.freePlace = free.nextFree;
    unit.step = next;
    begin(run, free, unit, next);
  } else if (ahead.waiting < ahead.spaces) {
    unit.step = next;
    unit.place = null;
    ahead.join(unit, run.now);
  } else return false;

  const { buffer } = step, following = buffer.shutOut === 0 ? buffer.first() : null;
  if (following === null || following.step.flags !== 0) { freePlace(run, place); return true; }
  buffer.take(run.now);
  begin(run, place, following, following.step);
  return true;
}

function begin(run: Run, place: Place, unit: Unit, step: Step): void {
  const calendar = step.workCalendar, minutes = run.sampler.next(step.workDraw);
  place.unit = unit;
  unit.place = place;
  unit.first = 0;
  step.visits++;
  place.phase = IN_WORK;
  place.enter(WORKING, calendar, run.now);
  run.queue.push(calendar === null ? run.now + minutes : calendar.advance(run.now, minutes), TASK, place.id);
}
