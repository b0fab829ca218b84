import type { Model } from '../flow/model.js';
import type { Observation } from '../measure/observation.js';
import type { ProgrammeClock } from '../scenario/compile-clock.js';
import type { Scenario } from '../scenario/scenario.js';
import { amount, share } from './interval.js';
import type { ReleaseCalendar } from './release-calendar.js';
import type { Estimate } from './results.js';

/** The replications of one scenario, and what is needed to read them. */
export class Sample {
  constructor(
    readonly scenario: Scenario,
    readonly model: Model,
    readonly clock: ProgrammeClock,
    readonly calendar: ReleaseCalendar,
    /** In replication order, at least one. */
    readonly observations: readonly Observation[],
    readonly level: number,
  ) {}

  get replications(): number {
    return this.observations.length;
  }

  /** Mean over replications of what cannot be below 0; NaN where a replication has no value. */
  amount(of: (observation: Observation) => number): Estimate {
    return amount(this.observations.map(of), this.level);
  }

  /** Mean over replications of a share; NaN where a replication has no value. */
  share(of: (observation: Observation) => number): Estimate {
    return share(this.observations.map(of), this.level);
  }

  /** Replications of which something is true. */
  count(is: (observation: Observation) => boolean): number {
    return this.observations.filter(is).length;
  }
}

/** A ratio, NaN where there is nothing to divide by. */
export const ratio = (part: number, whole: number): number => (whole > 0 ? part / whole : NaN);
