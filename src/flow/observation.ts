import type { Run } from './run.js';
import { settleResources } from './claims.js';
import { settleLane } from './lanes.js';
import { Tally } from './tally.js';

/** The time observed: it begins at the end of warm-up, is cut into buckets for the series, and ends with the run. */

export function openObservation(run: Run): void {
  run.observedFrom = 0;
  enterBuckets(run);
}

/** The next time at which the engine has to stop for observation: a bucket's edge, the end of warm-up, the end of the run. */
export function nextBoundary(run: Run, end: number): number {
  const { bucketEdges, warmUp } = run.model.programme;
  let next = end;
  if (run.bucket + 1 < bucketEdges.length) next = Math.min(next, bucketEdges[run.bucket + 1]);
  if (warmUp > run.now) next = Math.min(next, warmUp);
  return next;
}

/** The clock stands at a boundary. */
export function cross(run: Run): void {
  const { warmUp } = run.model.programme;
  if (run.now === warmUp && run.observedFrom < warmUp) startAfresh(run);
  enterBuckets(run);
}

export function finishObservation(run: Run): void {
  settleAll(run);
  closeBucket(run);
  run.places.active.close();
  run.crewActive.close();
  run.laneActive.close();
  const { units } = run;
  for (let unit = 0; unit < units.end; unit++) {
    if (units.step[unit] >= 0 && units.location[unit] >= 0) run.tally.unitMinutes += run.now - Math.max(units.born[unit], run.observedFrom);
  }
}

/** All accounts begin again: what was before is warm-up. */
function startAfresh(run: Run): void {
  settleAll(run);
  run.tally = new Tally(run.plan);
  run.observedFrom = run.now;
  run.places.account.fill(0);
  run.places.active.clear();
  run.crewActive.clear();
  run.laneActive.clear();
  run.destinations.clear();
  run.locations.clear();
  run.areaAtBucket.fill(0);
  run.engaged.fill(0);
  run.stockArea.fill(0);
  run.stockOut.fill(0);
  run.truckBusy.fill(0);
}

function enterBuckets(run: Run): void {
  const { bucketEdges } = run.model.programme;
  while (run.bucket + 1 < bucketEdges.length && bucketEdges[run.bucket + 1] <= run.now) {
    closeBucket(run);
    run.bucket++;
    run.bucketSince = run.now;
  }
}

/** Unit-minutes of the present bucket by location. */
function closeBucket(run: Run): void {
  const { tally, locations, areaAtBucket } = run, buckets = tally.minutesIn.length;
  locations.settleAll();
  for (let id = 0; id < areaAtBucket.length; id++) {
    if (run.bucket >= 0 && run.bucket < buckets) tally.unitMinutesIn[id * buckets + run.bucket] = locations.area[id] - areaAtBucket[id];
    areaAtBucket[id] = locations.area[id];
  }
  if (run.bucket >= 0 && run.bucket < buckets) tally.minutesIn[run.bucket] = run.now - run.bucketSince;
}

function settleAll(run: Run): void {
  run.places.settleAll();
  run.destinations.settleAll();
  run.locations.settleAll();
  settleResources(run);
  for (let lane = 0; lane < run.model.lanes.count; lane++) settleLane(run, lane);
}
