/**
 * Sums are taken one after the other, in the order of the values and without compensation: another way to add
 * up would change the last bits of results.
 */
export function sum(values: Iterable<number>): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

/** The sum of what each is worth. */
export function sumOf<Each>(all: Iterable<Each>, worth: (each: Each) => number): number {
  let total = 0;
  for (const each of all) total += worth(each);
  return total;
}

/** NaN of none. */
export const mean = (values: readonly number[] | Float64Array): number => sum(values) / values.length;

/** NaN where there is nothing to divide by. */
export const ratio = (part: number, whole: number): number => (whole > 0 ? part / whole : NaN);
