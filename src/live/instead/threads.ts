import { simulate } from '../../flow/engine.js';
import { type Plan, prepare } from '../../flow/plan.js';
import { type Observation, observe } from '../../measure/observe.js';
import type { Threads as InNode, ThreadOptions } from '../../study/run/threads.js';
import { setImmediate } from './node-timers.js';

type Asked = Parameters<InNode['observe']>;

/** Variants come one after another; few come again. */
const MOST_KEPT = 8;

/** What `study/run/threads.ts` is in a page: replications are run here, one at a time. */
export class Threads {
  private readonly plans = new Map<string, Plan>();

  constructor(private readonly options: ThreadOptions) {}

  async observe({ key, model, closely }: Asked[0], replication: Asked[1]): Promise<Observation> {
    const plan = this.plans.get(key) ?? prepare(model, closely),
      [oldest] = this.plans.keys();
    if (!this.plans.has(key) && oldest !== undefined && this.plans.size === MOST_KEPT)
      this.plans.delete(oldest);
    this.plans.set(key, plan);
    const observation = observe(simulate(plan, this.options.seed, replication), replication);
    // A word to stop is heard in between.
    await setImmediate();
    return observation;
  }

  async close(): Promise<void> {
    return Promise.resolve();
  }
}
