import type { Run } from '../flow/run.js';
import { IS_ACTIVE, OFF_SHIFT, STATE_COUNT } from '../flow/states.js';

/**
 * What can be a bottleneck, in this order: stations, crews, lanes. The bottleneck is the one with the highest
 * utilisation over the time observed (Hopp & Spearman, Factory Physics, 3rd ed. 2008, ch. 7; quoted from memory).
 */

/** Active time over time on shift: places, people, trucks. Arrival banks have no equipment and count 0. */
export function utilisations(run: Run): Float64Array {
  const { model, plan, places } = run, { resources, lanes } = model, stations = plan.stationCount;
  const result = new Float64Array(stations + resources.crews + lanes.count);
  for (let s = 0; s < stations; s++) {
    if (model.stations.isBank[s]) continue;
    let active = 0, onShift = 0;
    for (let state = 0; state < STATE_COUNT; state++) {
      const time = places.account[state * stations + s];
      if (state !== OFF_SHIFT) onShift += time;
      if (IS_ACTIVE[state]) active += time;
    }
    result[s] = onShift > 0 ? active / onShift : 0;
  }
  const minutes = run.now - run.observedFrom;
  for (let c = 0; c < resources.crews; c++) {
    const present = run.worked(resources.calendar[c], run.observedFrom, run.now) * resources.amount[c];
    result[stations + c] = present > 0 ? run.engaged[c] / present : 0;
  }
  for (let l = 0; l < lanes.count; l++) {
    if (minutes > 0) result[stations + resources.crews + l] = run.truckBusy[l] / (minutes * lanes.trucks[l]);
  }
  return result;
}

/** Mean active period, minutes of the resource's calendar; 0 if there was none (Roser, Nakano & Tanaka 2001). */
export function activePeriods(run: Run): Float64Array {
  const parts = [run.places.active, run.crewActive, run.laneActive];
  return Float64Array.from(parts.flatMap(({ minutes, periods }) => Array.from(minutes, (sum, id) => (periods[id] > 0 ? sum / periods[id] : 0))));
}
