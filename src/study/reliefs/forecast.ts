import type { ToCome } from '../asked.js';

/** A group of changes as the screen has it: replications run, and those that are still in. */
export interface Screening {
  readonly run: number;
  readonly alive: number;
  /** Replications that each of them has had. */
  readonly each: number;
}

/**
 * How many replications a study of reliefs takes in all: at least those of the first look, and what was run
 * since; at most as if nothing more were ruled out.
 */
export class Forecast {
  private readonly groups: Screening[];

  constructor(
    private readonly first: number,
    private readonly most: number,
    sizes: readonly number[],
    private readonly tell: ((toCome: ToCome) => void) | undefined,
  ) {
    this.groups = sizes.map((alive) => ({ run: 0, alive, each: 0 }));
    this.say();
  }

  /** A group has been looked at. */
  seen(group: number, screening: Screening): void {
    this.groups[group] = screening;
    this.say();
  }

  private say(): void {
    const { first, most, groups, tell } = this;
    let least = most,
      atMost = most;
    for (const { run, alive, each } of groups) {
      least += each === 0 ? first * alive : run;
      atMost += run + alive * (most - each);
    }
    tell?.({ least, most: atMost });
  }
}
