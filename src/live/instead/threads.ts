import { simulate } from '../../flow/engine.js';
import { type Observation, observe } from '../../measure/observe.js';
import { Plans } from '../../study/run/plans.js';
import type { Threads as InNode, ThreadOptions } from '../../study/run/threads.js';
import { setImmediate } from './node-timers.js';

type Asked = Parameters<InNode['observe']>;

/** What `study/run/threads.ts` is in a page: replications are run here, one at a time. */
export class Threads {
  private readonly plans = new Plans();

  constructor(private readonly options: ThreadOptions) {}

  async observe({ key, model, closely }: Asked[0], replication: Asked[1]): Promise<Observation> {
    const plan = this.plans.get(key) ?? this.plans.make(key, model, closely),
      observation = observe(simulate(plan, this.options.seed, replication), replication);
    // A word to stop is heard in between.
    await setImmediate();
    return observation;
  }

  async close(): Promise<void> {
    return Promise.resolve();
  }
}
