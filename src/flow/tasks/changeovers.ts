import type { Buffer } from '../floor/buffer.js';
import { HEAD, LENGTH, SENT_BACK, U_NEXT, USUAL } from '../floor/memory.js';
import type { Place } from '../floor/place.js';
import { IN_CHANGE_ALONE, IN_CHANGEOVER } from '../floor/states.js';
import type { Station } from '../floor/station.js';
import type { Step } from '../floor/step.js';
import { CHANGES_ALONE } from '../floor/step-flags.js';
import type { Unit } from '../floor/unit.js';
import type { Model } from '../model/model.js';
import type { Run } from '../run.js';
import { enterPhase } from './timing.js';

/**
 * Rule 4, stations whose places are set up for the value of an option or for a setting: who comes next and
 * to which place, what setting up takes, and what is counted of it.
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
  { memory: { ints }, model, units }: Run,
  buffer: Buffer,
  place: Place,
  wantsOther: boolean,
  line: number,
): Unit | null {
  let at = ints[buffer.at + line + HEAD];
  for (let left = ints[buffer.at + line + LENGTH]; left > 0; left--, at = ints[at + U_NEXT]) {
    const unit = units.at(at);
    if ((valueOf(model, unit) !== place.lastValue) === wantsOther) return buffer.takeOut(unit, line);
  }
  return null;
}

/** What a unit that is to be at its step has the place set up for. */
export function valueOf({ steps: { settingOption, settingStart, settingTable } }: Model, unit: Unit): number {
  const { id } = unit.step,
    option = settingOption[id];
  return settingTable[settingStart[id] + (option < 0 ? 0 : unit.options[option])];
}

/** The first free place that was last set up for the unit's value; null if there is none. */
export function placeFor({ model }: Run, unit: Unit, station: Station): Place | null {
  const value = valueOf(model, unit);
  let place = station.freePlace;
  while (place !== null && place.lastValue !== value) place = place.nextFree;
  return place;
}

/**
 * A unit has taken a place of a station with changeovers: it goes on with the run of its value, or begins
 * one. Of a lot the first counts, for all places.
 */
export function beginVisit(run: Run, place: Place, unit: Unit): void {
  const { station } = place,
    value = valueOf(run.model, unit);
  if (station.lotGathered === 0) {
    place.inRow =
      value !== place.lastValue || place.inRow >= run.model.stations.batchMost[station.id]
        ? 1
        : place.inRow + 1;
    if (station.lotMost > 0) for (const other of station.places) other.inRow = place.inRow;
  }
  run.tally.taken[station.id]++;
  run.changeoverLog?.begin(place, value, run.now);
}

/** The unit at a place goes on to a step there that may have another setting: another visit in the log. */
export function goOnThere(run: Run, place: Place, unit: Unit): void {
  const value = valueOf(run.model, unit);
  if (value === place.lastValue) return;
  place.inRow = 1;
  run.changeoverLog?.end(place, run.now);
  run.changeoverLog?.begin(place, value, run.now);
}

/** The place is set up for its unit; false if there is nothing to do, as where that is already done. */
export function startChangeover(run: Run, place: Place, step: Step): boolean {
  const minutes = setUp(run, place);
  if (minutes < 0) return false;
  place.minutes = minutes;
  const phase = (step.flags & CHANGES_ALONE) === 0 ? IN_CHANGEOVER : IN_CHANGE_ALONE;
  enterPhase(run, place, step, phase, minutes);
  return true;
}

/**
 * The place is now set up for its unit; minutes that this takes, drawn by the pair of values, or -1 if there
 * is no changeover: on a place not used yet, between equals, and where the pair takes no time.
 */
function setUp(run: Run, place: Place): number {
  const { station } = place,
    { changeoverStart, changeoverDraw, changeoverValues } = run.model.stations;
  const value = valueOf(run.model, place.unit!),
    last = place.lastValue;
  place.lastValue = value;
  // A lot is taken by its first unit: the whole station is set up for it.
  if (station.lotMost > 0) for (const other of station.places) other.lastValue = value;
  if (last < 0 || last === value) return -1;
  const pair = changeoverStart[station.id] + last * changeoverValues[station.id].length + value;
  if (changeoverDraw[pair] < 0) return -1;
  const minutes = run.sampler.next(changeoverDraw[pair]);
  run.tally.changeovers[pair]++;
  run.tally.changeoverMinutes[pair] += minutes;
  run.changeoverLog?.change(place, last, run.now);
  return minutes;
}
