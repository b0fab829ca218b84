import { setMaxListeners } from 'node:events';
import { setImmediate } from 'node:timers/promises';
import Tinypool from 'tinypool';
import { simulate } from '../../flow/engine.js';
import type { Model } from '../../flow/model/model.js';
import { type Observation, observe } from '../../measure/observe.js';
import type { Journal } from './journal.js';
import { Plans } from './plans.js';
import type { Reply, Question } from '../worker.js';

/** A scenario, or a changed one, as it is run. `key` tells it from all others of the study. */
export interface Variant<Value> {
  readonly key: string;
  readonly model: Model;
  /** What a replication is for the study: the whole observation, or what the study needs of it. */
  readonly read: (observation: Observation) => Value;
  /** The first so many replications are watched closely, see `prepare`; none where left out. */
  readonly closely?: number | undefined;
}

/** Under which a replication stands in journals. */
export const keyOf = ({ key }: Pick<Variant<unknown>, 'key'>, replication: number): string =>
  `${key} ${replication}`;

/** Reads the whole observation. */
export const whole = (observation: Observation): Observation => observation;

export interface ReplicatorOptions {
  readonly seed: string;
  /** Threads; 1: none beside this one. */
  readonly workers: number;
  /** Finished replications of an earlier run, and where new ones are written. */
  readonly journal?: Journal<unknown> | undefined;
  /** Called after each replication that was run or found in the journal, in the order in which they end. */
  readonly onReplication?: ((done: number, of: number) => void) | undefined;
  /** What goes on is then rejected with its reason. */
  readonly signal?: AbortSignal | undefined;
  /** Code of the threads, if not our own; for tests of threads that die. */
  readonly worker?: URL | undefined;
}

/**
 * Threads run built code, which lies a folder beside this file's own; from the sources, as in tests, it is
 * that of the last build.
 */
const WORKER = new URL(
  import.meta.url.endsWith('.ts') ? '../../../dist/study/worker.js' : '../study/worker.js',
  import.meta.url,
);

/** A replication whose thread died is run again so often. */
const MOST_DEATHS = 3;

/**
 * Replications under way for each thread, finished ones that wait for those before them among them. So while
 * one takes some four times as long as the others, every thread still has work.
 */
const LANES = 4;

/** Is given each value when its turn has come; `index`: that of its variant. */
export type Take<Value> = (value: Value, index: number) => unknown;

interface Job<Value> {
  readonly variant: Variant<Value>;
  readonly index: number;
  readonly replication: number;
}

/**
 * Runs replications of variants on all threads, and hands over what was read of them in the order asked, the
 * same for any number of threads, for any thread that died, and whatever the journal held already. Close it
 * at the end.
 */
export class Replicator {
  private pool: Tinypool | undefined;
  private isClosed = false;
  private readonly plans = new Plans();
  private done = 0;
  private planned = 0;

  constructor(private readonly options: ReplicatorOptions) {
    // Each replication under way listens to it: more than ten are no leak, of which Node would warn.
    if (options.signal !== undefined) setMaxListeners(0, options.signal);
  }

  /**
   * Replications `from`, `from + every` .. up to `to` of each variant, handed over one at a time: by variant,
   * in replication order. A lane begins another replication only when its last one was handed over, so no
   * more values wait than there are lanes.
   */
  async each<Value>(
    variants: readonly Variant<Value>[],
    from: number,
    to: number,
    every: number,
    take: Take<Value>,
  ): Promise<void> {
    const { workers, signal } = this.options;
    signal?.throwIfAborted();
    this.planned += variants.length * Math.max(0, Math.floor((to - from) / every) + 1);
    const jobs = jobsOf(variants, from, to, every);
    let isOver = false,
      last = Promise.resolve();
    const goesOn = (): boolean => !isOver;
    const handOver = async (job: Job<Value>, before: Promise<void>): Promise<void> => {
      const value = await this.one(job.variant, job.replication);
      signal?.throwIfAborted();
      if (isOver) return;
      this.options.onReplication?.(++this.done, this.planned);
      // A fault before this one is thrown here too: nobody waits in vain.
      await before;
      if (goesOn()) take(value, job.index);
    };
    const lane = async (): Promise<void> => {
      try {
        for (const job of jobs) {
          if (isOver) return;
          await (last = handOver(job, last));
        }
      } catch (error) {
        // Nothing more is begun, told or handed over.
        isOver = true;
        throw error;
      }
    };
    await Promise.all(Array.from({ length: workers > 1 ? LANES * workers : 1 }, lane));
  }

  /** The same in rows, one for each variant, for a study that needs all values together. */
  async rows<Value>(variants: readonly Variant<Value>[], from: number, to: number): Promise<Value[][]> {
    const rows = variants.map((): Value[] => []);
    await this.each(variants, from, to, 1, (value, index) => rows[index]?.push(value));
    return rows;
  }

  /** The row of a single variant. */
  async row<Value>(variant: Variant<Value>, from: number, to: number): Promise<Value[]> {
    const row: Value[] = [];
    await this.each([variant], from, to, 1, (value) => row.push(value));
    return row;
  }

  /** No thread is left. */
  async close(): Promise<void> {
    this.isClosed = true;
    await this.pool?.destroy();
  }

  private async one<Value>(variant: Variant<Value>, replication: number): Promise<Value> {
    const { journal, workers } = this.options,
      key = keyOf(variant, replication),
      known = journal?.get(key);
    if (known !== undefined) {
      // Lets a signal come through, here and below: a journal may be long.
      await setImmediate();
      // Written by this very study: the journal knows no other.
      return known as Value;
    }
    const observation = workers > 1 ? this.elsewhere(variant, replication) : this.here(variant, replication),
      value = variant.read(await observation);
    journal?.add(key, value);
    return value;
  }

  private async here({ key, model, closely }: Variant<unknown>, replication: number): Promise<Observation> {
    const plan = this.plans.get(key) ?? this.plans.make(key, model, closely);
    const observation = observe(simulate(plan, this.options.seed, replication), replication);
    await setImmediate();
    return observation;
  }

  private async elsewhere(
    { key, model, closely }: Variant<unknown>,
    replication: number,
  ): Promise<Observation> {
    const question = { key, seed: this.options.seed, replication };
    let answer = await this.ask(question);
    if (answer.kind === 'unknown') answer = await this.ask({ ...question, model, closely });
    if (answer.kind === 'observation') return answer.observation;
    throw new Error(answer.kind === 'fault' ? answer.message : `a thread does not know variant ${key}`);
  }

  private async ask(question: Question): Promise<Reply> {
    const { worker = WORKER, workers, signal } = this.options;
    for (let deaths = 1; ; deaths++) {
      // What was under way after a fault would start threads anew.
      if (this.isClosed)
        throw new Error('replicator: expected to be asked before it was closed, got a question after');
      this.pool ??= new Tinypool({
        filename: worker.href,
        runtime: 'worker_threads',
        minThreads: workers,
        maxThreads: workers,
      });
      try {
        return (await this.pool.run(question, { signal: signal ?? null })) as Reply;
      } catch (error) {
        signal?.throwIfAborted();
        // Faults of the engine come back as answers; what is thrown is the death of a thread, which the pool
        // replaces.
        if (deaths === MOST_DEATHS) throw error;
      }
    }
  }
}

/** By variant, in replication order. */
function* jobsOf<Value>(
  variants: readonly Variant<Value>[],
  from: number,
  to: number,
  every: number,
): Generator<Job<Value>> {
  for (const [index, variant] of variants.entries())
    for (let replication = from; replication <= to; replication += every)
      yield { variant, index, replication };
}
