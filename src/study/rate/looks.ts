import { SURELY } from '../held/evidence.js';
import { type Proportion, proportion } from '../statistics/proportion.js';
import { sequentialProportion } from '../statistics/sequential-proportion.js';

/** A rate that is not settled is run up to so many times the replications. */
export const MOST_TIMES = 4;

/** Replications after which a rate is looked at while it has fewer than were asked for. */
const EARLY = [5, 9, 16];

/**
 * What is told before all replications asked for are there adds little to the errors of what is told then
 * (interim looks far stricter than the last one: Haybittle 1971, Brit. J. Radiology 44, 793-797; Peto et al.
 * 1976, Brit. J. Cancer 34, 585-612; from memory): the share that keeps up has to be as sure as that at all
 * early looks together, and what can be shipped at each of them.
 */
const EARLY_SHARE = 0.98,
  EARLY_SURELY = 0.9997;

/** When a rate is looked at, and how sure must be what is told. */
export class Looks {
  /** @param replications asked for; a look at all of them, or more, is as if there had been none before */
  constructor(
    readonly replications: number,
    private readonly level: number,
  ) {}

  get first(): number {
    return this.next(0);
  }

  /** Replications of a rate at most. */
  get most(): number {
    return MOST_TIMES * this.replications;
  }

  /** Replications of the next look behind one; beyond `most` there is none. */
  next(had: number): number {
    const { replications } = this;
    return had < replications
      ? (EARLY.find((look) => look > had && look < replications) ?? replications)
      : 2 * had;
  }

  isEarly(replications: number): boolean {
    return replications < this.replications;
  }

  /** A share of so many replications, with its interval. */
  readonly share = (count: number, n: number): Proportion =>
    this.isEarly(n) ? sequentialProportion(count, n, EARLY_SHARE) : proportion(count, n, this.level);

  /** One-sided confidence of what is surely shipped. */
  surely(replications: number): number {
    return this.isEarly(replications) ? EARLY_SURELY : SURELY;
  }
}
