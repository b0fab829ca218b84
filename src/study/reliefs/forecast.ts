import type { ToCome } from '../asked.js';
import { defined } from '../lists.js';

/** A group of changes as the screen has it: replications run, and those that are still in. */
export interface Screening {
  readonly run: number;
  readonly alive: number;
  /** Replications that each of them has had. */
  readonly each: number;
}

/**
 * How many replications a study of reliefs takes in all: at least those of the first look, and what was run
 * since; at most as if nothing more were ruled out, and the final were as large as can be.
 */
export class Forecast {
  private readonly groups: Screening[];
  /** Fresh replications of the final. */
  private final: ToCome;

  constructor(
    /** Replications to the first look, at least; of reliefs and of values. */
    private readonly firsts: readonly [reliefs: number, values: number],
    private readonly most: number,
    sizes: readonly [reliefs: number, values: number],
    /** So many reliefs go into the final; the base and a value come with them. */
    keep: number,
    private readonly tell: ((toCome: ToCome) => void) | undefined,
  ) {
    const finalists = sizes[0] + sizes[1] === 0 ? 0 : 1 + Math.min(keep, sizes[0]) + Math.min(1, sizes[1]);
    this.final = { least: 0, most: finalists * most };
    this.groups = sizes.map((alive) => ({ run: 0, alive, each: 0 }));
    this.say();
  }

  /** A group has been looked at. */
  seen(group: number, screening: Screening): void {
    this.groups[group] = screening;
    this.say();
  }

  /** So many are run once more. */
  finalists(finalists: number): void {
    const all = finalists * this.most;
    this.final = { least: all, most: all };
    this.say();
  }

  private say(): void {
    const { firsts, most, groups, final, tell } = this;
    let least = most + final.least,
      atMost = most + (final.most ?? 0);
    for (const [group, { run, alive, each }] of groups.entries()) {
      least += each === 0 ? defined(firsts[group]) : run;
      atMost += run + alive * (most - each);
    }
    tell?.({ least, most: atMost });
  }
}
