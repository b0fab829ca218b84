import { enterState } from '../floor/ledger.js';
import {
  B_CALENDAR,
  B_FREE_PLACE,
  B_LOCATION,
  B_LONG_WAY,
  B_SHUT_OUT,
  B_WAITING,
  BUFFER_SHIFT,
  NOWHERE,
  P_BUFFER,
  P_NEXT_FREE,
  P_UNIT,
  PLACE_SHIFT,
  S_BUFFER,
  S_FLAGS,
  S_NEXT,
  U_LOCATION,
  U_PLACE,
  U_REWORK,
  U_STEP,
} from '../floor/memory.js';
import { BLOCKED } from '../floor/states.js';
import { BEGINS_PLAIN, COMES_PLAINLY, ENDS_PLAIN, LETS_GO } from '../floor/step-flags.js';
import {
  firstInSpaces,
  firstShut,
  firstShutThatFits,
  joinShut,
  joinSpaces,
  takeFromSpaces,
  takeShut,
  takesIn,
} from '../floor/waiting-lines.js';
import type { Run } from '../run.js';
import { arrive } from './entry-and-exit.js';
import { freePlace } from './room.js';
import { begin, comeTo, starve } from './take-place.js';

/**
 * The commonest events in one piece and on bare records: the work of a plain step ends, its unit goes on or
 * blocks its place, the next in the buffer takes the place, and who stood without room moves up. It does what
 * `complete`, `goOn`, `fill` and `beginStep` would do, in the same order, so the bits are the same; whatever
 * is not plain goes their way.
 */

/** The phase at a place is over. False: nothing was done, the long way is to be gone. */
export function goShortWay(run: Run, place: number): boolean {
  const { ints } = run.memory,
    unit = ints[place + P_UNIT],
    step = ints[unit + U_STEP],
    next = ints[step + S_NEXT];
  if ((ints[step + S_FLAGS] & ENDS_PLAIN) === 0 || ints[unit + U_REWORK] === next) return false;
  return advance(run, place, unit, next);
}

/**
 * The unit at a place, done there, goes on to the step `next`, which must come plainly or be the next of a
 * step that ends plainly. False: nothing was done, the long way is to be gone.
 */
export function advance(run: Run, place: number, unit: number, next: number): boolean {
  const { memory } = run,
    { ints } = memory,
    from = ints[place + P_BUFFER],
    ahead = ints[next + S_BUFFER],
    free = ints[ahead + B_FREE_PLACE],
    flags = ints[next + S_FLAGS];
  if (from === ahead || ints[from + B_LOCATION] !== ints[ahead + B_LOCATION] || ints[from + B_LONG_WAY] !== 0)
    return false;
  if (free !== NOWHERE) {
    // A place free while others wait for it is about to be filled.
    if (
      ints[ahead + B_WAITING] + ints[ahead + B_SHUT_OUT] > 0 ||
      (flags & (BEGINS_PLAIN | COMES_PLAINLY)) === 0
    )
      return false;
    ints[ahead + B_FREE_PLACE] = ints[free + P_NEXT_FREE];
    ints[unit + U_STEP] = next;
    begin(run, free, unit, next);
  } else {
    ints[unit + U_STEP] = next;
    if (!takesIn(memory, ahead, unit)) {
      joinShut(memory, ahead, unit);
      enterState(memory, place, BLOCKED, ints[from + B_CALENDAR]);
      return true;
    }
    if ((flags & LETS_GO) !== 0) comeTo(run, unit, next);
    ints[unit + U_PLACE] = NOWHERE;
    joinSpaces(memory, ahead, unit);
  }
  refill(run, place);
  return true;
}

/**
 * A place (not of a lot) is empty: the next in the buffer takes it, or else the first without room; whoever
 * fits into the space moves up, and so on upstream.
 */
export function refill(run: Run, empty: number): void {
  const { memory } = run,
    { ints } = memory;
  for (let place = empty; ; ) {
    const buffer = ints[place + P_BUFFER],
      isQueued = ints[buffer + B_WAITING] > 0;
    if (!isQueued && ints[buffer + B_SHUT_OUT] === 0) {
      starve(run, place, buffer);
      return;
    }
    const unit = isQueued ? firstInSpaces(memory, buffer) : firstShut(memory, buffer);
    if (!beginsShort(run, unit) || (!isQueued && !movesUpPlainly(run, buffer, unit))) {
      freePlace(run, run.places[(place - memory.places) >> PLACE_SHIFT]);
      return;
    }
    let freed: number;
    if (isQueued) {
      takeFromSpaces(memory, buffer);
      begin(run, place, unit, ints[unit + U_STEP]);
      const next = firstShutThatFits(memory, buffer);
      if (next === NOWHERE) return;
      if (!movesUpPlainly(run, buffer, next)) {
        run.listFill(run.buffers[(buffer - memory.buffers) >> BUFFER_SHIFT]);
        return;
      }
      freed = comeUp(run, buffer, next);
      if ((ints[ints[next + U_STEP] + S_FLAGS] & LETS_GO) !== 0) comeTo(run, next, ints[next + U_STEP]);
      ints[next + U_PLACE] = NOWHERE;
      joinSpaces(memory, buffer, next);
    } else {
      freed = comeUp(run, buffer, unit);
      begin(run, place, unit, ints[unit + U_STEP]);
    }
    if (freed === NOWHERE) return;
    place = freed;
  }
}

/** Other room that is listed goes first to those who wait for it, unless the step needs nothing. */
function beginsShort({ memory: { ints }, toFill }: Run, unit: number): boolean {
  const flags = ints[ints[unit + U_STEP] + S_FLAGS];
  return (flags & BEGINS_PLAIN) !== 0 || ((flags & COMES_PLAINLY) !== 0 && toFill.length === 0);
}

/** A unit without room comes from a place in the same site that gives nothing else back, or from outside. */
function movesUpPlainly({ memory: { ints }, units }: Run, buffer: number, unit: number): boolean {
  const from = ints[unit + U_PLACE];
  if (from !== NOWHERE)
    return (
      ints[unit + U_LOCATION] === ints[buffer + B_LOCATION] && ints[ints[from + P_BUFFER] + B_LONG_WAY] === 0
    );
  return ints[unit + U_LOCATION] < 0 && units.at(unit).isOutside;
}

/** It leaves its line for the room that is there now; the place that it leaves, NOWHERE: it was outside. */
function comeUp(run: Run, buffer: number, unit: number): number {
  const { memory } = run,
    freed = memory.ints[unit + U_PLACE];
  takeShut(memory, buffer, unit);
  if (freed === NOWHERE)
    arrive(run, run.units.at(unit), run.buffers[(buffer - memory.buffers) >> BUFFER_SHIFT]);
  return freed;
}
