import { setMaxListeners } from 'node:events';
import { setImmediate } from 'node:timers/promises';
import type Tinypool from 'tinypool';
import { simulate } from '../../flow/engine.js';
import { type Observation, observe } from '../../measure/observe.js';
import type { Question, Reply } from '../worker.js';
import { ranOutOfMemory } from './out-of-memory.js';
import { Plans } from './plans.js';
import { destroy, newPool, park, startEarly, takePool } from './pools.js';
import { MOST_DEATHS, type Runner, type RunnerOptions, type ToRun } from './runner.js';

/**
 * Threads run built code, which lies a folder beside this file's own; from the sources, as in tests, it is
 * that of the last build.
 */
const WORKER = new URL(
  import.meta.url.endsWith('.ts') ? '../../../dist/study/worker.js' : '../study/worker.js',
  import.meta.url,
);

export interface ThreadOptions extends RunnerOptions {
  /** Code of the threads, if not our own; for tests of threads that die. */
  readonly worker?: URL | undefined;
}

/** Threads that answer questions. */
export const threadPool = (threads: number): Tinypool => newPool(WORKER, threads);

/** Starts so many threads now, for the next who needs them. */
export const startThreads = (workers: number): void => {
  if (workers > 1) startEarly(WORKER, workers);
};

/** Threads know variants by their keys, which are those of one study alone. */
let studies = 0;

/**
 * Runs replications, in this thread or in others. A thread that dies is replaced, and its replication run
 * again.
 */
export class Threads implements Runner {
  private pool: Tinypool | undefined;
  private isClosed = false;
  private underWay = 0;
  private readonly study = ++studies;
  private readonly plans = new Plans();

  constructor(private readonly options: ThreadOptions) {
    // Each replication under way listens to it: more than ten are no leak, of which Node would warn.
    if (options.signal !== undefined) setMaxListeners(0, options.signal);
  }

  async observe(variant: ToRun, replication: number): Promise<Observation> {
    return this.options.workers > 1 ? this.elsewhere(variant, replication) : this.here(variant, replication);
  }

  /** Threads with nothing to do wait a moment for the next study; of others none is left. */
  async close(): Promise<void> {
    this.isClosed = true;
    const { pool, underWay } = this,
      { worker, signal } = this.options;
    this.pool = undefined;
    if (pool === undefined) return;
    if (underWay > 0 || signal?.aborted === true || worker !== undefined) await destroy(pool);
    else park(pool);
  }

  private async here({ key, model, closely }: ToRun, replication: number): Promise<Observation> {
    const plan = this.plans.get(key) ?? this.plans.make(key, model, closely);
    const { seed, meter } = this.options,
      slot = meter?.take();
    const run = simulate(plan, seed, replication, { tell: meter?.teller(slot) });
    meter?.give(slot);
    const observation = observe(run, replication);
    await setImmediate();
    return observation;
  }

  private async elsewhere({ key, model, closely }: ToRun, replication: number): Promise<Observation> {
    const { seed, meter } = this.options,
      slot = meter?.take(),
      question = { key: `${this.study} ${key}`, seed, replication, meter: meter?.shared, slot };
    let answer = await this.ask(question);
    if (answer.kind === 'unknown') answer = await this.ask({ ...question, model, closely });
    meter?.give(slot);
    if (answer.kind === 'observation') return answer.observation;
    throw new Error(answer.kind === 'fault' ? answer.message : `a thread does not know variant ${key}`);
  }

  private async ask(question: Question): Promise<Reply> {
    const { worker, workers, signal } = this.options;
    for (let deaths = 1; ; deaths++) {
      // What was under way after a fault would start threads anew.
      if (this.isClosed)
        throw new Error('replicator: expected to be asked before it was closed, got a question after');
      this.pool ??= worker === undefined ? takePool(WORKER, workers) : newPool(worker, workers);
      this.underWay++;
      try {
        return (await this.pool.run(question, { signal: signal ?? null })) as Reply;
      } catch (error) {
        signal?.throwIfAborted();
        // Faults of the engine come back as answers; what is thrown is the death of a thread, which the pool
        // replaces. For want of memory it would die again.
        if (deaths === MOST_DEATHS || ranOutOfMemory(error)) throw error;
      } finally {
        this.underWay--;
      }
    }
  }
}
