import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import { programmeClock, type ProgrammeClock } from '../../scenario/programme/clock.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { Counts } from '../statistics/counts.js';
import { asAmount, asShare, intervalOf } from '../statistics/interval.js';
import { Later } from './deferred.js';
import { Moments } from '../statistics/interval.js';
import { releaseCalendar, type ReleaseCalendar } from './planned.js';
import type { Estimate } from '../simulate/results.js';

/** What was planned, whatever comes of it. */
export interface Planned {
  readonly scenario: Scenario;
  readonly model: Model;
  readonly clock: ProgrammeClock;
  readonly calendar: ReleaseCalendar;
}

export const planned = (scenario: Scenario, model: Model): Planned => ({
  scenario,
  model,
  clock: programmeClock(scenario),
  calendar: releaseCalendar(scenario),
});

/** What is known of the replications that have come. */
export interface Folded<Known> {
  readonly value: Known;
}

/**
 * The replications of one scenario, which come one at a time and are not kept: all that is to be known of
 * them is asked before the first one comes, and tells at any time of those that have come.
 */
export class Sample implements Planned {
  readonly scenario: Scenario;
  readonly model: Model;
  readonly clock: ProgrammeClock;
  readonly calendar: ReleaseCalendar;
  private readonly asked: ((observation: Observation) => void)[] = [];
  private begin: Observation | undefined;
  private seen = 0;

  /** @param level confidence of all intervals */
  constructor(
    { scenario, model, clock, calendar }: Planned,
    readonly level: number,
  ) {
    this.scenario = scenario;
    this.model = model;
    this.clock = clock;
    this.calendar = calendar;
  }

  /** How many have come. */
  get replications(): number {
    return this.seen;
  }

  /** The first one, the only one that is kept. */
  get first(): Observation {
    if (this.begin === undefined)
      throw new RangeError('replications: expected at least 1 to summarise, saw none; run some');
    return this.begin;
  }

  /** In replication order. */
  take(observation: Observation): void {
    this.begin ??= observation;
    this.seen++;
    for (const part of this.asked) part(observation);
  }

  /** Goes over all replications: `step` gives what is known with one more, and may change what was known. */
  fold<Known>(start: Known, step: (known: Known, observation: Observation) => Known): Folded<Known> {
    const folded = { value: start };
    this.ask((observation) => {
      folded.value = step(folded.value, observation);
    });
    return folded;
  }

  /** Mean over replications of what cannot be below 0; NaN where a replication has no value. */
  amount(of: (observation: Observation) => number): Later<Estimate> {
    const moments = this.moments(of);
    return new Later(() => asAmount(intervalOf(moments, this.level)));
  }

  /** Mean over replications of a share; NaN where a replication has no value. */
  share(of: (observation: Observation) => number): Later<Estimate> {
    const moments = this.moments(of);
    return new Later(() => asShare(intervalOf(moments, this.level)));
  }

  /** How often each number occurs over replications; NaN where a replication has no value. */
  counts(of: (observation: Observation) => number): Folded<Counts> {
    return this.fold(new Counts(), (counts, observation) => {
      const value = of(observation);
      if (!Number.isNaN(value)) counts.add(value);
      return counts;
    });
  }

  /** Replications of which something is true. */
  count(is: (observation: Observation) => boolean): Later<number> {
    const times = this.fold(0, (known, observation) => (is(observation) ? known + 1 : known));
    return new Later(() => times.value);
  }

  private moments(of: (observation: Observation) => number): Moments {
    const moments = new Moments();
    this.ask((observation) => {
      moments.add(of(observation));
    });
    return moments;
  }

  private ask(part: (observation: Observation) => void): void {
    if (this.seen > 0) throw new Error('a sample is asked before its first replication comes');
    this.asked.push(part);
  }
}

/** A ratio, NaN where there is nothing to divide by. */
export const ratio = (part: number, whole: number): number => (whole > 0 ? part / whole : NaN);
