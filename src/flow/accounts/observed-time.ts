import type { Run } from '../run.js';
import { Tally } from './tally.js';

/**
 * The time observed: it begins at the end of warm-up, is cut into buckets for the series, and ends with the
 * run.
 */

/**
 * The next time at which the engine has to stop for observation: a bucket's edge, the end of warm-up, the end
 * of the run.
 */
export function nextBoundary(run: Run, end: number): number {
  const { bucketEdges, warmUp } = run.model.programme;
  let next = Math.min(end, run.changesAt);
  if (run.bucket + 1 < bucketEdges.length) next = Math.min(next, bucketEdges[run.bucket + 1]);
  if (warmUp > run.now) next = Math.min(next, warmUp);
  if (run.startUp !== null) next = Math.min(next, run.startUp.nextEdge);
  return next;
}

/** The clock stands at a boundary. */
export function cross(run: Run): void {
  const { warmUp } = run.model.programme;
  run.startUp?.settle(run.now);
  if (run.now === warmUp && run.observedFrom < warmUp) startAfresh(run);
  enterBuckets(run);
}

export function enterBuckets(run: Run): void {
  const { bucketEdges } = run.model.programme;
  while (run.bucket + 1 < bucketEdges.length && bucketEdges[run.bucket + 1] <= run.now) {
    closeBucket(run);
    run.bucket++;
    run.bucketSince = run.now;
  }
}

export function finishObservation(run: Run): void {
  const { shop, now } = run;
  settle(run);
  closeBucket(run);
  for (const resource of [...shop.stations, ...shop.resources, ...shop.lanes]) resource.finishActive(now);
  run.bottleneckWatch?.finish();
  run.startUp?.settle(now);
  settleHolds(run);
  for (const unit of run.units.all)
    if (unit.alive && unit.location >= 0)
      run.tally.unitMinutes += now - Math.max(unit.born, run.observedFrom);
}

/** All accounts begin again: what was before is warm-up. */
function startAfresh(run: Run): void {
  const { shop, now } = run;
  settle(run);
  run.tally = new Tally(run.model, shop.inspections.length, shop.holds.length);
  run.changeoverLog?.startAfresh();
  run.disruptions.clear();
  run.observedFrom = now;
  run.locations.clear();
  run.areaAtBucket.fill(0);
  run.engagedAtBucket.fill(0);
  for (const step of shop.steps) step.visits = 0;
  for (const each of [...shop.stations, ...shop.lanes, ...shop.resources]) each.clear(now);
  for (const each of [...shop.supplies, ...shop.companions, ...shop.pulseLines, ...run.overtimeRules])
    each.clear();
  run.bottleneckWatch?.startAfresh();
  run.startUp?.startAfresh();
}

/** Unit-minutes of the present bucket by location, person-minutes by crew. */
function closeBucket(run: Run): void {
  const { tally, locations, areaAtBucket, engagedAtBucket } = run,
    buckets = tally.minutesIn.length,
    isOpen = run.bucket >= 0 && run.bucket < buckets;
  locations.settle(run.now);
  for (let id = 0; id < areaAtBucket.length; id++) {
    if (isOpen) tally.unitMinutesIn[id * buckets + run.bucket] = locations.area[id] - areaAtBucket[id];
    areaAtBucket[id] = locations.area[id];
  }
  for (let crew = 0; crew < engagedAtBucket.length; crew++) {
    const engaged = run.shop.resources[crew].engagedUpTo(run.now);
    if (isOpen) tally.engagedIn[crew * buckets + run.bucket] = engaged - engagedAtBucket[crew];
    engagedAtBucket[crew] = engaged;
  }
  if (isOpen) tally.minutesIn[run.bucket] = run.now - run.bucketSince;
}

/** Brings all accounts up to now. */
function settle(run: Run): void {
  const { shop, now } = run;
  for (const place of shop.places) place.settle();
  for (const buffer of run.buffers) buffer.settle();
  for (const lane of shop.lanes) lane.settle(now);
  for (const resource of [...shop.resources, ...shop.supplies, ...shop.companions]) resource.settle(now);
  run.locations.settle(now);
}

/** At the end of the run: the time of those who are still held. */
function settleHolds(run: Run): void {
  for (const { alive, heldAt, heldSince } of run.units.all) {
    if (alive && heldAt !== null)
      run.tally.quality.heldMinutes[heldAt.hold] += run.now - Math.max(heldSince, run.observedFrom);
  }
}
