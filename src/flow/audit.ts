import type { Run } from './run.js';
import { STATE_COUNT } from './states.js';

/** Relative room for rounding in sums of many floats. */
const ROUNDING = 1e-9;

/**
 * Always run at the end of a replication: units in = units out + units inside; each station's accounts add to its
 * place-time; and the time integral of work in process equals the sum of the times of the units (Little 1961, as an
 * identity over the observed window). A failure is a fault of the engine.
 * @throws Error naming the account and both sums
 */
export function audit(run: Run): void {
  const { model, places, plan, locations, units, tally } = run, elapsed = run.now - run.observedFrom;
  for (let s = 0; s < plan.stationCount; s++) {
    let sum = 0;
    for (let state = 0; state < STATE_COUNT; state++) sum += places.account[state * plan.stationCount + s];
    expectEqual(`place-time of station ${model.stations.names[s]}`, sum, elapsed * model.stations.places[s]);
  }
  let inside = 0, entered = run.gone;
  for (let unit = 0; unit < units.end; unit++) {
    if (units.step[unit] < 0 || model.steps.route[units.step[unit]] !== 0) continue;
    if (units.location[unit] >= 0) { inside++; entered++; }
  }
  expectEqual('units inside', inside, locations.total);
  expectEqual('units entered', run.built[0] - outside(run), entered);
  expectEqual("unit-minutes by Little's law", locations.totalArea, tally.unitMinutes);
  for (let place = 0; place < places.count; place++) {
    const unit = places.unit[place];
    if (unit >= 0 && units.place[unit] !== place) throw new Error(`audit: place ${place} holds unit ${unit}, which stands at ${units.place[unit]}`);
  }
  for (let r = 0; r < model.resources.count; r++) {
    if (run.free[r] < 0 || (r < model.resources.crews && run.free[r] > model.resources.amount[r])) throw new Error(`audit: ${model.resources.names[r]} has ${run.free[r]} free of ${model.resources.amount[r]}`);
  }
}

function outside(run: Run): number {
  const { units, model } = run;
  let count = 0;
  for (let unit = 0; unit < units.end; unit++) if (units.step[unit] >= 0 && model.steps.route[units.step[unit]] === 0 && units.location[unit] < 0) count++;
  return count;
}

function expectEqual(what: string, seen: number, wanted: number): void {
  if (Math.abs(seen - wanted) > ROUNDING * Math.max(1, Math.abs(wanted))) throw new Error(`audit: ${what} must be ${wanted}; got ${seen}`);
}
