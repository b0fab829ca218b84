import { match } from './claims.js';
import { complete } from './complete.js';
import { audit } from './audit.js';
import { cross, finishObservation, nextBoundary, openObservation } from './observation.js';
import { feed } from './feeders.js';
import { laneTimer, leaveIncomplete, serveLane, truckEvent } from './lanes.js';
import { startIncompleteLot, startLot } from './lots.js';
import { fill } from './move.js';
import type { Plan } from './plan.js';
import { idOf, kindOf } from './queue.js';
import { beginRelease, refillSource, release } from './release.js';
import { Run } from './run.js';
import { LANE_TIMER, LOT_TIMER, RELEASE, TASK, TRUCK } from './states.js';
import { nextPhase, startTask } from './tasks.js';

/** How a run ended: all units are out; its end came; or nothing could move any more (rule 16). */
export const FINISHED = 0, ENDED = 1, GRIDLOCK = 2;

/** Runs one replication of a model to its end and audits it. Same plan, seed and replication: same result bits. */
export function simulate(plan: Plan, seed: string, replication: number): Run {
  const run = new Run(plan, seed, replication);
  for (let route = 1; route < run.model.routes.count; route++) run.toFeed.add(route);
  openObservation(run);
  beginRelease(run);
  drain(run);
  run.outcome = loop(run);
  finishObservation(run);
  audit(run);
  return run;
}

function loop(run: Run): number {
  const { programme, horizon } = run.model, end = Math.min(programme.end, horizon), queue = run.queue;
  let boundary = nextBoundary(run, end);
  for (;;) {
    const time = queue.ready() ? queue.times[0] : Infinity;
    if (time <= boundary && time < Infinity) {
      const code = queue.pop();
      run.clock.now = time;
      dispatch(run, kindOf(code), idOf(code));
      drain(run);
      if (run.gone >= programme.quantity) return FINISHED;
    } else if (queue.size === 0) {
      if (leaveIncompletes(run)) continue;
      return run.locations.total === 0 && run.units.alive === 0 ? FINISHED : GRIDLOCK;
    } else {
      run.clock.now = boundary;
      if (boundary >= end) return ENDED;
      cross(run);
      boundary = nextBoundary(run, end);
    }
  }
}

function dispatch(run: Run, kind: number, id: number): void {
  switch (kind) {
    case TASK: {
      const phase = run.places.phase[id];
      if (nextPhase(run, id)) complete(run, id, phase);
      return;
    }
    case TRUCK: truckEvent(run, id); return;
    case RELEASE: release(run); return;
    case LANE_TIMER: laneTimer(run, id); return;
    case LOT_TIMER: startLot(run, id); return;
    default: throw new Error(`event kinds are 0 to 4; got ${kind}`);
  }
}

/** Follows every consequence of an event that happens at the same time, room first, then lots and trucks, then needs. */
function drain(run: Run): void {
  const { attention } = run;
  for (;;) {
    let id = run.toFill.take();
    if (id >= 0) { fill(run, id); continue; }
    if (run.grantedCount > 0) { startTask(run, run.granted[--run.grantedCount]); continue; }
    if (attention.waiting > 0) {
      if ((id = run.toStartLot.take()) >= 0) startLot(run, id);
      else if ((id = run.toServeLane.take()) >= 0) serveLane(run, id);
      else if ((id = run.toMatch.take()) >= 0) match(run, id);
      else if ((id = run.toFeed.take()) >= 0) feed(run, id);
      continue;
    }
    if (run.sourceEntered === 0) return;
    refillSource(run);
  }
}

/** When nothing can happen any more, lots and trucks that wait for more go with what they have. True if one did. */
function leaveIncompletes(run: Run): boolean {
  let left = false;
  for (let lane = 0; lane < run.model.lanes.count; lane++) left = leaveIncomplete(run, lane) || left;
  for (let station = 0; station < run.model.stations.count; station++) left = startIncompleteLot(run, station) || left;
  if (left) drain(run);
  return left;
}
