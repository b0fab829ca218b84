import { number } from '../format.js';
import { defined } from '../lists.js';
import type { Load } from './load.js';

/** More loads than this are only counted. */
const MOST_NAMED = 3;

/** `trucks of 10 on road, lots of 8 at oven and 2 more`. */
export function loadsText(loads: readonly Pick<Load, 'what'>[]): string {
  const named = loads.slice(0, MOST_NAMED).map(({ what }) => what),
    more = loads.length - named.length;
  if (more > 0) return `${named.join(', ')} and ${more} more`;
  const last = named.pop() ?? '';
  return named.length === 0 ? last : `${named.join(', ')} and ${last}`;
}

/** How a rate was counted, for the end of a clause: `, counted over whole loads (trucks of 10 on road)`. */
export const countedText = (loads: readonly Pick<Load, 'what'>[]): string =>
  loads.length === 0 ? '' : `, counted over whole loads (${loadsText(loads)})`;

/** Why a count cannot be trusted: `trucks of 40 on road come every 20 working days`. */
export function slowestText(loads: readonly Load[]): string {
  const slowest = defined([...loads].sort((a, b) => b.cycleDays - a.cycleDays)[0]);
  return `${slowest.what} come every ${number(slowest.cycleDays)} working days`;
}
