/** Parts of an octave of a histogram of durations: a bin is 0.27 % wide. */
export const BINS_PER_OCTAVE = 256;
const LOWEST_OCTAVE = -10,
  OCTAVES = 40;
export const BIN_COUNT = OCTAVES * BINS_PER_OCTAVE;

/**
 * Bin of a duration in minutes, on a scale of logarithms from 2^-10 to 2^30 minutes; what lies outside goes
 * to the end bins.
 */
export function binOf(minutes: number): number {
  const bin = Math.floor((Math.log2(minutes) - LOWEST_OCTAVE) * BINS_PER_OCTAVE);
  return bin < 0 || minutes <= 0 ? 0 : bin >= BIN_COUNT ? BIN_COUNT - 1 : bin;
}
/** Lower edge of a bin, minutes. */
export function binEdge(bin: number): number {
  return 2 ** (LOWEST_OCTAVE + bin / BINS_PER_OCTAVE);
}
