import { BIN_COUNT, binOf, type Durations } from '../flow/accounts/bins.js';

/** A part of a whole; 0 where the whole is nothing, as for a share of no time. */
export const over = (value: number, whole: number): number => (whole > 0 ? value / whole : 0);

/** One number a thing, in the order of the things. */
export const column = <T>(things: Iterable<T>, read: (thing: T, index: number) => number): Float64Array =>
  Float64Array.from(things, read);

/** Times by bins of `bins.ts`, from the first to the last that has one: `first`, +1, ..; minutes. */
export function histogram({ count, bins, least, greatest }: Durations) {
  const first = count > 0 ? binOf(least) : BIN_COUNT,
    end = count > 0 ? binOf(greatest) + 1 : BIN_COUNT;
  return { first, bins: bins.slice(first, end), least, greatest };
}
