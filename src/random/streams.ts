/**
 * Named streams of random 32-bit words.
 *
 * A stream's name is turned into four words by seedrandom's alea (J. Baagøe, 2010); from there it is an sfc32
 * generator (C. Doty-Humphrey, PractRand, 2014), a chaotic generator of 128 bits with a 32-bit counter. The
 * state of many streams lies in one Int32Array, four words each, so that a stream costs no object.
 */
import alea from 'seedrandom/lib/alea.js';

/** Words of state that one stream takes in the array. */
export const STATE_WORDS = 4;

/** Turns an integer 0 to 2^32 - 1 into a share of one. */
const TO_SHARE = 2 ** -32;

/** Rounds thrown away after seeding; the author of sfc32 asks for 12 or more. */
const WARM_UP_ROUNDS = 16;

/** The full name of a stream: `seed/replication/thing/purpose`, where `name` is `thing/purpose`. */
export function streamName(seed: string, replication: number, name: string): string {
  return `${seed}/${replication}/${name}`;
}

/** Sets the four words of `state` from index `at` on to the beginning of the stream called `fullName`. */
export function seedStream(state: Int32Array, at: number, fullName: string): void {
  const words = alea(fullName);
  for (let k = 0; k < STATE_WORDS; k++) state[at + k] = words.int32();
  for (let k = 0; k < WARM_UP_ROUNDS; k++) nextWord(state, at);
}

/** The next signed 32-bit word of the stream whose state begins at `at`. */
export function nextWord(state: Int32Array, at: number): number {
  const b = state[at + 1];
  const c = state[at + 2];
  const d = state[at + 3];
  const word = (((state[at] + b) | 0) + d) | 0;
  state[at] = b ^ (b >>> 9);
  state[at + 1] = (c + (c << 3)) | 0;
  state[at + 2] = (((c << 21) | (c >>> 11)) + word) | 0;
  state[at + 3] = (d + 1) | 0;
  return word;
}

/** The next number in the open interval (0, 1): 2^32 equally likely values, the mid-points of equal cells. */
export function nextUniform(state: Int32Array, at: number): number {
  return ((nextWord(state, at) >>> 0) + 0.5) * TO_SHARE;
}

/** Fills out[from] to out[to - 1] with numbers in (0, 1), the same ones that `nextUniform` would give. */
export function fillUniform(
  out: Float64Array,
  from: number,
  to: number,
  state: Int32Array,
  at: number,
): void {
  let a = state[at];
  let b = state[at + 1];
  let c = state[at + 2];
  let d = state[at + 3];
  for (let k = from; k < to; k++) {
    const word = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + word) | 0;
    out[k] = ((word >>> 0) + 0.5) * TO_SHARE;
  }
  state[at] = a;
  state[at + 1] = b;
  state[at + 2] = c;
  state[at + 3] = d;
}
