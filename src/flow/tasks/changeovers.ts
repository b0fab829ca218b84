import type { Buffer } from '../floor/buffer.js';
import { HEAD, LENGTH, SENT_BACK, U_NEXT, USUAL } from '../floor/memory.js';
import type { Place } from '../floor/place.js';
import type { Station } from '../floor/station.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';

/**
 * Rule 4, stations whose places are set up for the value of an option: who comes next and to which place,
 * what setting up takes, and what is counted of it.
 */

/**
 * Batches by value: the next unit for a place, out of the spaces of a buffer in which at least one
 * waits. The first in order if it has waited the longest wait; otherwise the first of the value that the
 * place is set up for, and after `most` of that value in a row the first of another one; the first in order
 * if nobody of the wanted kind waits.
 */
export function nextByValue(run: Run, buffer: Buffer, place: Place): Unit {
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

/** The first free place that was last set up for the unit's value; null if there is none. */
export function placeFor(unit: Unit, station: Station): Place | null {
  let place = station.freePlace;
  while (place !== null && place.lastValue !== unit.options[station.changeoverOption]) place = place.nextFree;
  return place;
}

/**
 * A unit has taken a place of a station with changeovers: it goes on with the run of its value, or begins
 * one.
 */
export function beginVisit(run: Run, place: Place, unit: Unit): void {
  const { station } = place,
    value = unit.options[station.changeoverOption];
  place.inRow =
    value !== place.lastValue || place.inRow >= run.model.stations.batchMost[station.id]
      ? 1
      : place.inRow + 1;
  run.tally.taken[station.id]++;
  run.changeoverLog?.begin(place, value, run.now);
}

/**
 * The place is now set up for its unit; minutes that this takes, drawn by the pair of values, or -1 if there
 * is no changeover: on a place not used yet, between equals, and where the pair takes no time.
 */
export function setUp(run: Run, place: Place): number {
  const { station } = place,
    { changeoverStart, changeoverDraw } = run.model.stations,
    option = station.changeoverOption;
  const value = place.unit!.options[option],
    last = place.lastValue;
  place.lastValue = value;
  // A lot is taken by its first unit: the whole station is set up for it.
  if (station.lotMost > 0) for (const other of station.places) other.lastValue = value;
  if (last < 0 || last === value) return -1;
  const pair = changeoverStart[station.id] + last * run.model.options[option].values.length + value;
  if (changeoverDraw[pair] < 0) return -1;
  const minutes = run.sampler.next(changeoverDraw[pair]);
  run.tally.changeovers[pair]++;
  run.tally.changeoverMinutes[pair] += minutes;
  run.changeoverLog?.change(place, last, run.now);
  return minutes;
}
