import type { Run } from './run.js';

/** A unit leaves the system: shipped. Items still open are counted. */
export function shipped(run: Run, unit: number): void {
  const { units, tally } = run, index = units.number[unit] - 1;
  tally.shipped++;
  tally.openAtShipping += units.notClean[unit];
  tally.lead(run.now - units.born[unit]);
  if (run.bucket >= 0 && run.bucket < tally.shippedIn.length) tally.shippedIn[run.bucket]++;
  if (index < run.shippedAt.length) run.shippedAt[index] = run.now;
  goOut(run, unit);
}

/** A unit leaves the system: scrapped. */
export function scrapped(run: Run, unit: number): void {
  run.tally.scrapped++;
  goOut(run, unit);
}

function goOut(run: Run, unit: number): void {
  const { units } = run, born = units.born[unit];
  run.tally.unitMinutes += run.now - (born > run.observedFrom ? born : run.observedFrom);
  run.locations.move(units.location[unit], -1);
  units.remove(unit);
  run.gone++;
}
