import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import type { ProgrammeClock } from '../../scenario/programme/clock.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { Counts } from '../statistics/counts.js';
import { type Estimate } from '../statistics/estimate.js';
import { asAmount, asShare } from '../statistics/interval.js';
import { Moments } from '../statistics/moments.js';
import { eventsInterval, greatestInterval, skewedInterval } from '../statistics/skewed-interval.js';
import { Deferred, type Pending } from './deferred.js';
import type { Planned, ReleaseCalendar } from './planned.js';

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
      throw new RangeError('replications: expected at least 1 to summarise, got none; run some');
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
  amount(of: (observation: Observation) => number): Deferred<Estimate> {
    const moments = this.moments(of);
    return new Deferred(() => asAmount(skewedInterval(moments, this.level)));
  }

  /** Mean number of events a replication; NaN where a replication has no value. */
  events(of: (observation: Observation) => number): Deferred<Estimate> {
    const moments = this.moments(of);
    return new Deferred(() => eventsInterval(moments, this.level));
  }

  /** Mean over replications of the greatest of several values of each; NaN where a replication has none. */
  greatest(of: (observation: Observation) => number): Deferred<Estimate> {
    const moments = this.moments(of);
    return new Deferred(() => greatestInterval(moments, this.level));
  }

  /** Mean over replications of a share; NaN where a replication has no value. */
  share(of: (observation: Observation) => number): Deferred<Estimate> {
    const moments = this.moments(of);
    return new Deferred(() => asShare(skewedInterval(moments, this.level)));
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
  count(is: (observation: Observation) => boolean): Folded<number> {
    return this.fold(0, (known, observation) => (is(observation) ? known + 1 : known));
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

/** Rows of what occurred in some replication. */
export const occurring = <Row>(
  all: readonly { readonly times: Folded<number>; readonly row: Pending<Row> }[],
): Deferred<Row[]> =>
  new Deferred<Row[]>(() => all.filter(({ times }) => times.value > 0).map(({ row }) => row));

/** The first so many buckets, known once all replications have come. */
export type Shown = Folded<number>;

/** Mean over replications of what cannot be below 0, by bucket shown. */
export function byBucket(
  sample: Sample,
  shown: Shown,
  of: (observation: Observation, bucket: number) => number,
): Deferred<readonly Estimate[]> {
  const all = sample.clock.buckets.labels.map((_, b) => sample.amount((each) => of(each, b)));
  return new Deferred<readonly Estimate[]>(() => all.slice(0, shown.value));
}
