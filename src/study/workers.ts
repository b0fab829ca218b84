import { setImmediate } from 'node:timers/promises';
import Tinypool from 'tinypool';
import { simulate } from '../flow/engine.js';
import type { Model } from '../flow/model.js';
import { prepare } from '../flow/plan.js';
import { observe } from '../measure/observe.js';
import type { Observation } from '../measure/observation.js';
import { tuneFor } from './tune.js';
import type { WorkerJob } from './worker.js';

export interface Job {
  readonly model: Model;
  readonly seed: string;
  /** Replications 1 to this many are run. */
  readonly replications: number;
  /** Threads; 1: none beside this one. */
  readonly workers: number;
  /** Called after each replication, in the order in which they end. */
  readonly onReplication?: ((done: number, of: number) => void) | undefined;
  /** The promise is then rejected with its reason, and no thread is left. */
  readonly signal?: AbortSignal | undefined;
}

/** Threads run built code, which lies a folder beside this file's own; from the sources, as in tests, it is that of the last build. */
const WORKER = new URL(import.meta.url.endsWith('.ts') ? '../../dist/study/worker.js' : '../study/worker.js', import.meta.url);

/** Runs the replications of a model, and gives their observations in replication order, the same for any number of workers. */
export async function replicate(job: Job): Promise<Observation[]> {
  job.signal?.throwIfAborted();
  const threads = Math.min(job.workers, job.replications);
  return threads > 1 ? inThreads(job, threads) : here(job);
}

async function here({ model, seed, replications, onReplication, signal }: Job): Promise<Observation[]> {
  tuneFor(model);
  const plan = prepare(model), observations: Observation[] = [];
  for (let replication = 1; replication <= replications; replication++) {
    observations.push(observe(simulate(plan, seed, replication), replication));
    onReplication?.(replication, replications);
    // Lets a signal come through.
    await setImmediate();
    signal?.throwIfAborted();
  }
  return observations;
}

async function inThreads({ model, seed, replications, onReplication, signal }: Job, threads: number): Promise<Observation[]> {
  const workerData: WorkerJob = { model, seed }, observations = new Array<Observation>(replications);
  const pool = new Tinypool({ filename: WORKER.href, runtime: 'worker_threads', minThreads: threads, maxThreads: threads, workerData });
  let next = 1, done = 0, ended: Promise<void> | undefined;
  const end = (): Promise<void> => (ended ??= pool.destroy());
  /** Asks for one replication after the other; none after the end, as the pool would start threads anew. */
  const ask = async (): Promise<void> => {
    while (next <= replications && ended === undefined) {
      const replication = next++;
      observations[replication - 1] = await pool.run(replication) as Observation;
      if (ended === undefined) onReplication?.(++done, replications);
    }
  };
  const stop = (): void => void end();
  signal?.addEventListener('abort', stop, { once: true });
  try {
    // Two for each thread, so that the next replication waits for it already.
    await Promise.all(Array.from({ length: 2 * threads }, ask));
    signal?.throwIfAborted();
    return observations;
  } catch (error) {
    signal?.throwIfAborted();
    throw error;
  } finally {
    signal?.removeEventListener('abort', stop);
    await end();
  }
}
