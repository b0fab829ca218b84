import { count, number } from '../format.js';
import { defined, listed } from '../lists.js';
import type { Counting } from './counting.js';
import type { Load } from './load.js';

/** More loads than this are only counted. */
const MOST_NAMED = 3;

/** `trucks of 10 on road, lots of 8 at oven and 2 more`. */
export function loadsText(loads: readonly Pick<Load, 'what'>[]): string {
  const named = loads.slice(0, MOST_NAMED).map(({ what }) => what),
    more = loads.length - named.length;
  return more > 0 ? `${named.join(', ')} and ${more} more` : listed(named, 'and');
}

/** How units were counted, as results tell it. */
export interface CountingResult {
  /** Loads over whole cycles of which they were; working days from one to the next; empty: a plain count. */
  readonly loads: readonly Pick<Load, 'what' | 'cycleDays'>[];
  /** Two cycles of each go into the time counted; if not it is a plain count none the less. */
  readonly isWhole: boolean;
  /** Units by which loads alone can upset the count of a replication, by arithmetic. */
  readonly upsetUnits: number;
}

export const countingResult = ({ loads, isWhole, upset }: Counting): CountingResult => ({
  loads: loads.map(({ what, cycleDays }) => ({ what, cycleDays })),
  isWhole,
  upsetUnits: upset,
});

/** For the end of a clause: `, counted over whole loads (trucks of 10 on road)`; nothing of a plain count. */
export function countedText(counting: CountingResult | null): string {
  if (counting === null || counting.loads.length === 0) return '';
  const { loads, isWhole, upsetUnits } = counting;
  return isWhole
    ? `, counted over whole loads (${loadsText(loads)})`
    : `, give or take ${count(Math.ceil(upsetUnits), 'unit')} that loads make, of which too few come in ` +
        `that time (${loadsText(loads)})`;
}

/** Why a count cannot be trusted: `trucks of 40 on road come every 20 working days`. */
export function slowestText(loads: readonly Load[]): string {
  const slowest = defined([...loads].sort((a, b) => b.cycleDays - a.cycleDays)[0]);
  return `${slowest.what} come every ${number(slowest.cycleDays)} working days`;
}
