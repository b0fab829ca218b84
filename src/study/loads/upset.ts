import { sumOf } from '../statistics/sums.js';
import type { Load } from './load.js';
import { type Weights } from './weights.js';

/** Starting points of the cycles that are tried, and what each cycle is moved by from one to the next. */
const STARTS = 32,
  GOLDEN = 0.6180339887498949;
/** More units than this are moved on several at a time. */
const MOST_UNITS = 2000;

/**
 * Units by which loads alone can upset a count, by arithmetic: units are released evenly, each waits at every
 * load of the route for the next one, and goes on without any other delay. Shipped is what is asked, so what
 * the count makes of it beyond or below that is its error. The greatest of several starting points of the
 * cycles against the time counted, spread evenly (Weyl 1916: multiples of an irrational number).
 * @param days working days counted, in `cells` parts of which each shipment has the mean weight
 * @param perDay units a working day
 */
export function upset(
  loads: readonly Load[],
  weights: Weights,
  days: number,
  cells: number,
  perDay: number,
): number {
  if (loads.length === 0) return 0;
  const cell = days / cells,
    worth = Float64Array.from({ length: cells }, (_, i) => weights(i * cell, (i + 1) * cell)),
    all = sumOf(worth, (weight) => weight) * cell,
    lead = sumOf(loads, ({ cycleDays }) => cycleDays),
    apart = Math.max(1, Math.floor((perDay * (days + lead)) / MOST_UNITS)) / perDay;
  let most = 0;
  for (let start = 0; start < STARTS; start++) {
    const part = (i: number): number => (start * GOLDEN * (i + 1) + (start * i) / STARTS) % 1;
    let counted = 0;
    for (let release = (part(0) - 1) * apart - lead; release < days; release += apart) {
      let time = release;
      for (const [i, { cycleDays }] of loads.entries()) {
        const begun = part(i + 1) * cycleDays;
        time = Math.ceil((time + begun) / cycleDays - 1e-9) * cycleDays - begun;
      }
      if (time >= 0 && time < days) counted += worth[Math.min(cells - 1, Math.floor(time / cell))];
    }
    most = Math.max(most, Math.abs(1 - (counted * apart) / all) * perDay * days);
  }
  return most;
}
