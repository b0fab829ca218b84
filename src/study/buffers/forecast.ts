import type { ToCome } from '../asked.js';

/** The moves that follow a walk take as much as so many of its steps, at least: a place away, a place to. */
const MOVES = 2;

/**
 * How many replications a search takes at least, told after each step of its first walk: by what its steps
 * took on average, as those that go just as others did are not run. Nobody knows how many moves follow.
 */
export class BuffersForecast {
  /** Replications run. */
  done = 0;
  private from = 0;
  private steps = 0;

  /** @param fresh replications of the selection at the end, at least */
  constructor(
    private readonly fresh: number,
    private readonly tell: ((toCome: ToCome) => void) | undefined,
  ) {}

  /** A walk begins. */
  begin(): void {
    this.from = this.done;
    this.steps = 0;
    this.tell?.({ least: this.done, most: null });
  }

  /** One step of it is made, and so many are left. */
  step(left: number): void {
    this.steps++;
    const each = (this.done - this.from) / this.steps;
    this.tell?.({ least: Math.ceil(this.done + (left + MOVES) * each + this.fresh), most: null });
  }
}
