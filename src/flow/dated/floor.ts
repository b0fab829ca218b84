import { DOWN, STARVED } from '../floor/states.js';
import { awaitFailure } from '../interruptions/failures.js';
import type { Model } from '../model/model.js';
import type { Run } from '../run.js';

/** What stands, on its date: places, spaces, and how work is done there. */

/** Only the places of a stage are there. */
export function withholdPlaces({ shop }: Run, { stations }: Model): void {
  for (const station of shop.stations)
    if (stations.places[station.id] < station.places.length) station.withhold(stations.places[station.id]);
}

/** Places come, free and with equipment that has not run; they are down where an outage holds them. */
export function bringPlaces(run: Run, { stations }: Model): void {
  for (const station of run.shop.stations) {
    const brought = station.bring(stations.places[station.id]);
    if (brought.length === 0) continue;
    for (const place of brought.reverse()) {
      const { equipment } = place;
      if (equipment?.isDown) {
        place.stateIfUp = STARVED;
        place.idle(DOWN);
      } else {
        station.putFree(place);
        place.idle(STARVED);
      }
      // A station with lots has one piece, which is there already.
      if (station.lotMost === 0) for (const mode of equipment?.modes ?? []) awaitFailure(run, mode);
    }
    run.listFill(station.buffer);
  }
}

/** Spaces come, or go when they are left. */
export function resizeBuffers(run: Run, before: Model, next: Model): void {
  const { stations, lanes } = next,
    { count } = stations;
  for (let s = 0; s < count; s++) {
    const spaces = stations.buffer[s],
      rework = stations.reworkBuffer[s];
    if (spaces !== before.stations.buffer[s] || rework !== before.stations.reworkBuffer[s])
      resize(run, s, spaces, rework);
  }
  for (let l = 0; l < lanes.count; l++)
    if (lanes.bank[l] !== before.lanes.bank[l]) resize(run, count + l, lanes.bank[l], -1);
}

function resize(run: Run, buffer: number, spaces: number, rework: number): void {
  run.buffers[buffer].resize(spaces, rework);
  if (run.stage > 0) run.listFill(run.buffers[buffer]);
}

/** Lots, batches, passes, the takt of pulse lines, targets of feeders. */
export function reviseWork(run: Run, before: Model, next: Model): void {
  const { stations, steps, pulseLines, routes } = run.shop;
  for (const station of stations) {
    const { id, lotMost } = station;
    station.lotMost = next.stations.lotMost[id];
    if (run.stage > 0 && lotMost > 0 && next.stations !== before.stations) {
      run.listLot(station);
      run.listFill(station.buffer);
    }
  }
  for (const step of steps) step.passes = next.steps.passes[step.id];
  for (const line of pulseLines) line.takt = next.pulseLines.takt[line.id];
  for (const route of routes) {
    route.target = next.routes.target[route.id];
    if (run.stage > 0 && next.routes !== before.routes) run.listFeed(route);
  }
}
