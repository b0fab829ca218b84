/** A part of a whole; 0 where the whole is nothing, as for a share of no time. */
export const over = (value: number, whole: number): number => (whole > 0 ? value / whole : 0);

/** One number a thing, in the order of the things. */
export const column = <T>(things: Iterable<T>, read: (thing: T, index: number) => number): Float64Array =>
  Float64Array.from(things, read);
