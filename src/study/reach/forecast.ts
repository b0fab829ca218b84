import type { ToCome } from '../asked.js';

/** Replications that it takes to tell what stops a build: itself, and what is tried on it. */
const TO_STOP = 7 * 20;

/**
 * How many replications a study takes at least: what was run, and what the figures at the end take. Nobody
 * knows how many sets are still tried.
 */
export class ReachForecast {
  /** Replications run. */
  done = 0;

  constructor(
    private readonly replications: number,
    private readonly tell: ((toCome: ToCome) => void) | undefined,
  ) {}

  /** The frontier was looked for: a build is told at least, maybe the one as it is. */
  climbed(): void {
    this.builds(this.replications, 1);
  }

  /** So many replications are left to tell builds, on so many of which it is tried what stops them. */
  builds(toTell: number, stopped: number): void {
    this.tell?.({ least: this.done + toTell + stopped * TO_STOP, most: null });
  }
}
