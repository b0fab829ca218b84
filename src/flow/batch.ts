import type { Buffer } from './buffer.js';
import { HEAD, LENGTH, SENT_BACK, U_NEXT, USUAL } from './memory.js';
import type { Run } from './run.js';
import type { Place } from './place.js';
import type { Unit } from './unit.js';

/**
 * Rule 4, batches by value: the next unit for a place, out of the spaces of a buffer in which at least one waits. The first
 * in order if it has waited the longest wait; otherwise the first of the value that the place is set up for, and after
 * `most` of that value in a row the first of another one; the first in order if nobody of the wanted kind waits.
 */
export function nextOfBatch(run: Run, buffer: Buffer, place: Place): Unit {
  const { stations } = run.model,
    { id } = place.station;
  if (place.lastValue < 0 || run.now >= buffer.first().queuedAt + stations.batchWait[id])
    return buffer.take();
  const wantsOther = place.inRow >= stations.batchMost[id];
  return (
    takeWanted(run, buffer, place, wantsOther, SENT_BACK) ??
    takeWanted(run, buffer, place, wantsOther, USUAL) ??
    buffer.take()
  );
}

/** The first of a line that has the value of the place, or another one. */
function takeWanted(
  { memory: { ints }, units }: Run,
  buffer: Buffer,
  place: Place,
  wantsOther: boolean,
  line: number,
): Unit | null {
  const option = place.station.changeoverOption;
  let at = ints[buffer.at + line + HEAD];
  for (let left = ints[buffer.at + line + LENGTH]; left > 0; left--, at = ints[at + U_NEXT]) {
    const unit = units.at(at);
    if ((unit.options[option] !== place.lastValue) === wantsOther) return buffer.takeOut(unit, line);
  }
  return null;
}
