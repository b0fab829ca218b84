import { setImmediate } from 'node:timers/promises';
import Tinypool from 'tinypool';
import { simulate } from '../flow/engine.js';
import type { Model } from '../flow/model.js';
import { observe } from '../measure/observe.js';
import type { Observation } from '../measure/observation.js';
import type { Journal } from './journal.js';
import { Plans } from './plans.js';
import type { Answer, Question } from './worker.js';

/** A scenario, or a changed one, as it is run. `key` tells it from all others of the study. */
export interface Variant {
  readonly key: string;
  readonly model: Model;
  /** The first so many replications are watched closely, see `prepare`; none where left out. */
  readonly closely?: number | undefined;
}

/** Under which a replication stands in journals. */
export const keyOf = ({ key }: Variant, replication: number): string => `${key} ${replication}`;

/** What a replication is for a study: the observation, or what the study needs of it. */
export type Reading<Value> = (observation: Observation, variant: Variant) => Value;

export interface ReplicatorOptions<Value> {
  readonly seed: string;
  /** Threads; 1: none beside this one. */
  readonly workers: number;
  readonly read: Reading<Value>;
  /** Finished replications of an earlier run, and where new ones are written. */
  readonly journal?: Journal<Value> | undefined;
  /** Called after each replication that was run or found in the journal, in the order in which they end. */
  readonly onReplication?: ((done: number, of: number) => void) | undefined;
  /** What goes on is then rejected with its reason. */
  readonly signal?: AbortSignal | undefined;
  /** Code of the threads, if not our own; for tests of threads that die. */
  readonly worker?: URL | undefined;
}

/** Threads run built code, which lies a folder beside this file's own; from the sources, as in tests, it is that of the last build. */
const WORKER = new URL(import.meta.url.endsWith('.ts') ? '../../dist/study/worker.js' : '../study/worker.js', import.meta.url);

/** A replication whose thread died is run again so often. */
const MOST_DEATHS = 3;

/**
 * Runs replications of variants on all threads, and gives what was read of them in the order asked, the same for any number
 * of threads, for any thread that died, and whatever the journal held already. Close it at the end.
 */
export class Replicator<Value> {
  private pool: Tinypool | undefined;
  private readonly plans = new Plans();
  private done = 0;
  private planned = 0;

  constructor(private readonly options: ReplicatorOptions<Value>) {}

  /** Replications `from`, `from + every` .. up to `to` of each variant: by variant, in replication order. */
  async run(variants: readonly Variant[], from: number, to: number, every = 1): Promise<Value[][]> {
    const { workers, signal } = this.options;
    signal?.throwIfAborted();
    const rows = variants.map(() => new Array<Value>(Math.max(0, Math.floor((to - from) / every) + 1)));
    const jobs = rows.flatMap((row, v) => Array.from(row, (_, i) => ({ row, variant: variants[v]!, i })));
    this.planned += jobs.length;
    let next = 0;
    const work = async (): Promise<void> => {
      try {
        while (next < jobs.length) {
          const { row, variant, i } = jobs[next++]!;
          row[i] = await this.one(variant, from + i * every);
          signal?.throwIfAborted();
          this.options.onReplication?.(++this.done, this.planned);
        }
      } finally {
        // After a fault nothing more is begun.
        next = jobs.length;
      }
    };
    // Two for each thread, so that the next replication waits for it already.
    await Promise.all(Array.from({ length: workers > 1 ? 2 * workers : 1 }, work));
    return rows;
  }

  /** No thread is left. */
  async close(): Promise<void> {
    await this.pool?.destroy();
    this.pool = undefined;
  }

  private async one(variant: Variant, replication: number): Promise<Value> {
    const { journal, read } = this.options, key = keyOf(variant, replication), known = journal?.get(key);
    if (known !== undefined) return known;
    const value = read(this.options.workers > 1 ? await this.elsewhere(variant, replication) : await this.here(variant, replication), variant);
    journal?.add(key, value);
    return value;
  }

  private async here({ key, model, closely }: Variant, replication: number): Promise<Observation> {
    const plan = this.plans.get(key) ?? this.plans.make(key, model, closely);
    const observation = observe(simulate(plan, this.options.seed, replication), replication);
    // Lets a signal come through.
    await setImmediate();
    return observation;
  }

  private async elsewhere({ key, model, closely }: Variant, replication: number): Promise<Observation> {
    const { seed, workers, signal } = this.options;
    this.pool ??= new Tinypool({ filename: (this.options.worker ?? WORKER).href, runtime: 'worker_threads', minThreads: workers, maxThreads: workers });
    const ask = async (question: Question): Promise<Answer> => {
      for (let deaths = 1; ; deaths++) {
        try {
          return await this.pool!.run(question, { signal: signal ?? null }) as Answer;
        } catch (error) {
          signal?.throwIfAborted();
          // Faults of the engine come back as answers; what is thrown is the death of a thread, which the pool replaces.
          if (deaths === MOST_DEATHS) throw error;
        }
      }
    };
    const question = { key, seed, replication };
    let answer = await ask(question);
    if (answer.kind === 'unknown') answer = await ask({ ...question, model, closely });
    if (answer.kind === 'observation') return answer.observation;
    throw new Error(answer.kind === 'fault' ? answer.message : `a thread does not know variant ${key}`);
  }
}
