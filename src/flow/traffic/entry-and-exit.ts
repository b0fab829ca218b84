import type { Buffer } from '../floor/buffer.js';
import type { Unit } from '../floor/unit.js';
import { countGone } from '../interruptions/overtime.js';
import { MINUTES_PER_DAY } from '../model/time.js';
import type { Run } from '../run.js';
import { countShippedOpen } from '../tasks/holds.js';

/**
 * Work in process is counted by the location that a unit has come to; from outside it enters the system.
 * Sub-assemblies are not counted.
 */
export function arrive(run: Run, unit: Unit, buffer: Buffer): void {
  if (!unit.step.route.isMain) return;
  if (unit.location < 0) enterSystem(run, unit);
  run.locations.move(unit.location, buffer.location, run.now);
  unit.location = buffer.location;
}

function enterSystem(run: Run, unit: Unit): void {
  const { tally } = run,
    index = unit.number - 1;
  unit.born = run.now;
  tally.entered++;
  if (run.bucket >= 0 && run.bucket < tally.enteredIn.length) tally.enteredIn[run.bucket]++;
  if (index < run.enteredAt.length) run.enteredAt[index] = run.now;
  run.sourceEntered = true;
  run.pending = true;
}

/** A unit leaves the system: shipped. Items still open are counted. */
export function shipped(run: Run, unit: Unit): void {
  const { tally } = run,
    index = unit.number - 1;
  tally.shipped++;
  tally.openAtShipping += unit.notClean;
  if (unit.notClean > 0) countShippedOpen(run, unit);
  tally.leadTimes.add(run.now - unit.born);
  if (unit.dueAt < Infinity) tally.countLateness(run.now - unit.dueAt);
  if (run.bucket >= 0 && run.bucket < tally.shippedIn.length) tally.shippedIn[run.bucket]++;
  if (tally.shippedOn.length > 0) tally.shippedOn[Math.floor(run.now / MINUTES_PER_DAY)]++;
  if (index < run.shippedAt.length) run.shippedAt[index] = run.now;
  run.gone++;
  countGone(run, unit);
  goOut(run, unit);
}

/** A unit leaves the system: scrapped. Its order may be built again. */
export function scrapped(run: Run, unit: Unit): void {
  run.tally.scrapped++;
  // An order that is built again is still to come.
  if (!run.model.programme.orders.replaceScrapped) {
    run.gone++;
    countGone(run, unit);
  }
  goOut(run, unit);
}

function goOut(run: Run, unit: Unit): void {
  run.tally.unitMinutes += run.now - (unit.born > run.observedFrom ? unit.born : run.observedFrom);
  run.locations.move(unit.location, -1, run.now);
  run.units.remove(unit);
  run.pending = true;
}
