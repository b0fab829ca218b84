import { BIN_COUNT, type Durations } from '../flow/accounts/bins.js';

/** A part of a whole; 0 where the whole is nothing, as for a share of no time. */
export const over = (value: number, whole: number): number => (whole > 0 ? value / whole : 0);

/** One number a thing, in the order of the things. */
export const column = <T>(things: Iterable<T>, read: (thing: T, index: number) => number): Float64Array =>
  Float64Array.from(things, read);

/** Times by bins of `bins.ts`, from the first to the last that has one: `first`, +1, ..; minutes. */
export function histogram({ bins, least, greatest }: Durations) {
  let first = 0,
    end = BIN_COUNT;
  while (first < end && bins[first] === 0) first++;
  while (end > first && bins[end - 1] === 0) end--;
  return { first, bins: bins.slice(first, end), least, greatest };
}
