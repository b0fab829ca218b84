import type { ToCome } from '../asked.js';

/** Builds that are told at the end, at least: the one as it is, and one step. */
const TOLD = 2;
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

  /** The frontier was looked for. */
  climbed(): void {
    this.builds(TOLD, TOLD);
  }

  /** So many builds are to be told, on so many of which it is tried what stops them. */
  builds(told: number, stopped: number): void {
    this.tell?.({ least: this.done + told * this.replications + stopped * TO_STOP, most: null });
  }
}
