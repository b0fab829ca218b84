import type { Worker } from 'node:worker_threads';
import Tinypool from 'tinypool';

/**
 * Threads that wait for work. A study has several parts, each with a `Threads` of its own; threads that have
 * run one know the engine as fast machine code, which takes each of them seconds to come by, so they go from
 * part to part.
 */
let parked: { readonly pool: Tinypool; readonly timer: NodeJS.Timeout } | undefined;

/** Milliseconds for which threads wait: from one part to the next, and for the reading of a file. */
const BETWEEN_PARTS = 500,
  UNTIL_READ = 10_000;

/** So many threads. */
export const newPool = (worker: URL, workers: number): Tinypool =>
  new Tinypool({
    filename: worker.href,
    runtime: 'worker_threads',
    minThreads: workers,
    maxThreads: workers,
    // A thread that dies with nothing to do is replaced.
  }).on('error', () => undefined);

/** Threads that wait, or new ones, at least so many; to be parked or destroyed afterwards. */
export function takePool(worker: URL, workers: number): Tinypool {
  const pool = parked?.pool;
  clearTimeout(parked?.timer);
  parked = undefined;
  if (pool !== undefined && pool.options.maxThreads >= workers) return pool;
  if (pool !== undefined) void destroy(pool);
  return newPool(worker, workers);
}

/** Starts threads ahead of what they will be asked: they load the engine while this one reads a scenario. */
export function startEarly(worker: URL, workers: number): void {
  park(takePool(worker, workers), UNTIL_READ);
}

/** Lets threads with nothing to do wait. They end by themselves, and keep no process from its end. */
export function park(pool: Tinypool, patience = BETWEEN_PARTS): void {
  clearTimeout(parked?.timer);
  if (parked !== undefined) void destroy(parked.pool);
  const timer = setTimeout(() => {
    parked = undefined;
    void destroy(pool);
  }, patience).unref();
  parked = { pool, timer };
}

/** No thread is left. */
export async function destroy(pool: Tinypool): Promise<void> {
  // The pool waits for its threads by `once` of Node, which takes a listener off one that dies meanwhile;
  // threads as the pool hands them out cannot do that, and it would be an exception that nobody catches.
  for (const each of pool.threads as (object & { readonly thread?: Worker })[])
    Object.assign(each, {
      removeListener: (event: string, listener: () => void) => each.thread?.removeListener(event, listener),
    });
  // A thread that died meanwhile is closed as well.
  await pool.destroy().catch(() => undefined);
}
