import { setMaxListeners } from 'node:events';
import { setImmediate } from 'node:timers/promises';
import type { Worker } from 'node:worker_threads';
import Tinypool from 'tinypool';
import { simulate } from '../../flow/engine.js';
import { type Observation, observe } from '../../measure/observe.js';
import type { Question, Reply } from '../worker.js';
import { ranOutOfMemory } from './out-of-memory.js';
import { Plans } from './plans.js';
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

/** Threads that answer questions. One that dies is replaced, also when it has nothing to do. */
export const threadPool = (threads: number, worker: URL = WORKER): Tinypool =>
  new Tinypool({
    filename: worker.href,
    runtime: 'worker_threads',
    minThreads: threads,
    maxThreads: threads,
  }).on('error', () => undefined);

/** No thread of it is left, whatever they do. */
export async function endPool(pool: Tinypool): Promise<void> {
  // The pool waits for its threads by `once` of Node, which takes a listener off one that dies meanwhile;
  // threads as the pool hands them out cannot do that, and it would be an exception that nobody catches.
  for (const each of pool.threads as (object & { readonly thread?: Worker })[])
    Object.assign(each, {
      removeListener: (event: string, listener: () => void) => each.thread?.removeListener(event, listener),
    });
  // A thread that died meanwhile is closed as well.
  await pool.destroy().catch(() => undefined);
}

/**
 * Runs replications, in this thread or in others. A thread that dies is replaced, and its replication run
 * again.
 */
export class Threads implements Runner {
  private pool: Tinypool | undefined;
  private isClosed = false;
  private readonly plans = new Plans();

  constructor(private readonly options: ThreadOptions) {
    // Each replication under way listens to it: more than ten are no leak, of which Node would warn.
    if (options.signal !== undefined) setMaxListeners(0, options.signal);
  }

  async observe(variant: ToRun, replication: number): Promise<Observation> {
    return this.options.workers > 1 ? this.elsewhere(variant, replication) : this.here(variant, replication);
  }

  /** No thread is left. */
  async close(): Promise<void> {
    this.isClosed = true;
    if (this.pool !== undefined) await endPool(this.pool);
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
      question = { key, seed, replication, meter: meter?.shared, slot };
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
      this.pool ??= threadPool(workers, worker);
      try {
        return (await this.pool.run(question, { signal: signal ?? null })) as Reply;
      } catch (error) {
        signal?.throwIfAborted();
        // Faults of the engine come back as answers; what is thrown is the death of a thread, which the pool
        // replaces. For want of memory it would die again.
        if (deaths === MOST_DEATHS || ranOutOfMemory(error)) throw error;
      }
    }
  }
}
