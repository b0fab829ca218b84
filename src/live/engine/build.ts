import type { Observation } from '../../measure/observe.js';
import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { ComparedVariant } from '../../study/compare/measures.js';
import { type Replicator, type Variant, whole } from '../../study/run/replicator.js';
import type { Deferred } from '../../study/sample/deferred.js';
import { planned } from '../../study/sample/planned.js';
import { type Reading, readingOf } from '../../study/sample/reading.js';
import { Sample } from '../../study/sample/sample.js';
import { CLOSELY, type Simulated, summary } from '../../study/simulate/summary.js';
import type { Reported } from './messages.js';

/** A scenario that is run in the page as the report runs it, a few replications at a time. */
export class Build {
  readonly readings: Reading[] = [];
  readonly variant: ComparedVariant;
  /** Once all replications have come. */
  readonly simulated: Deferred<Simulated>;
  private readonly sample: Sample;
  private readonly watched: Variant<Observation>;

  /** Throws a RangeError where the scenario cannot be planned. */
  constructor(
    readonly name: string,
    readonly scenario: Scenario,
    { seed, level, scenario: { file } }: Pick<Reported, 'seed' | 'level' | 'scenario'>,
  ) {
    const key = digest(scenario),
      model = compile(scenario);
    this.variant = {
      ...{ key, name, note: null, changes: [], scenario, model },
      read: readingOf(scenario, model),
    };
    this.watched = { key, model, closely: CLOSELY, read: whole };
    this.sample = new Sample(planned(scenario, model), level);
    this.simulated = summary(this.sample, { file, seed });
  }

  /** Runs replications up to that one. */
  async runTo(replication: number, replicator: Replicator): Promise<void> {
    await replicator.each([this.watched], this.readings.length + 1, replication, 1, (seen) => {
      this.sample.take(seen);
      this.readings.push(this.variant.read(seen));
    });
  }
}
