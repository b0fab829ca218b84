import { totalmem } from 'node:os';
import { constrainedMemory, memoryUsage } from 'node:process';
import { exact } from '../../study/format.js';
import { inWords } from './pace.js';
import type { Stop } from './said.js';

/** What a study may take unless it is to be done anyway: seconds still to come, and a share of the memory. */
const LONGEST = 24 * 3600,
  MOST_OF_MEMORY = 0.8;

/** Bytes that a unit takes, with its row in the results; measured, of units that all wait at once. */
const BYTES_OF_UNIT = 10_000;

/** How often in turn the estimate of the time must be above the limit: the first ones are rough. */
const LOOKS = 8;

/** Bytes that a study may use. */
export const mostMemory = (): number => MOST_OF_MEMORY * memoryOfMachine();

function memoryOfMachine(): number {
  // 0 or far above what there is where nothing is set.
  const set = constrainedMemory();
  return set > 0 ? Math.min(set, totalmem()) : totalmem();
}

/** Watches over what a study takes while it runs. */
export class Limits {
  private tooLong = 0;

  constructor(
    private readonly most = mostMemory(),
    private readonly used = (): number => memoryUsage.rss(),
  ) {}

  /**
   * What is above a limit.
   * @param secondsLeft as foreseen, undefined where nothing tells it
   * @param units of the programme
   */
  look(secondsLeft: number | undefined, units: number): Stop | null {
    const foreseen = units * BYTES_OF_UNIT;
    if (Math.max(foreseen, this.used()) > this.most)
      return limit(
        `to need at most ${gigabytes(this.most)} of memory, four fifths of what is here, it needs ` +
          (foreseen > this.most ? `about ${gigabytes(foreseen)} for ${exact(units)} units` : 'more'),
        'use fewer --workers or a machine with more memory',
      );
    this.tooLong = secondsLeft !== undefined && secondsLeft > LONGEST ? this.tooLong + 1 : 0;
    if (this.tooLong < LOOKS || secondsLeft === undefined) return null;
    return limit(
      `to be done within ${inWords(LONGEST)}, at this pace it takes ${inWords(secondsLeft)}`,
      'spread it over machines by --through',
    );
  }
}

const gigabytes = (bytes: number): string => `${(bytes / 2 ** 30).toFixed(1)} GB`;

/** Of such a study something was mostly typed wrong. */
const limit = (expected: string, remedy: string): Stop => ({
  kind: 'limit',
  message: `expected the study ${expected}`,
  hint: `look for a number typed wrong; otherwise ask for less, ${remedy}, or give --anyway`,
});
