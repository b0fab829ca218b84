import type { Run } from './run.js';
import type { Place } from './place.js';
import type { Unit } from './unit.js';

/** Rule 4: what it takes to set a place up for the value of its unit, and what is counted of it. */

/** A unit has taken a place of a station with changeovers: it goes on with the run of its value, or begins one. */
export function take(run: Run, place: Place, unit: Unit): void {
  const { station } = place,
    value = unit.options[station.changeoverOption];
  place.inRow =
    value !== place.lastValue || place.inRow >= run.model.stations.batchMost[station.id]
      ? 1
      : place.inRow + 1;
  run.tally.taken[station.id]++;
  if (run.boothLog !== null) run.boothLog.begin(place, value, run.now);
}

/**
 * The place is now set up for its unit; minutes that this takes, drawn by the pair of values, or -1 if there is no
 * changeover: on a place not used yet, between equals, and where the pair takes no time.
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
  if (run.boothLog !== null) run.boothLog.change(place, last, run.now);
  return minutes;
}
