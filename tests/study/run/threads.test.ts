import type { Worker } from 'node:worker_threads';
import { expect, it } from 'vitest';
import { Threads } from '../../../src/study/run/threads.js';
import { modelOf } from '../../flow/run-yaml.js';

it('threads can be closed while one of them dies', async () => {
  const threads = new Threads({ seed: 'a', workers: 2 }),
    model = modelOf(`
scenario: one
programme: { arrivals: saturated, quantity: 2 }
sites: { a: { stations: { s: {} } } }
route: [{ step: w, at: s, work: 1 h }]
`);
  await threads.observe({ key: 'one', model }, 1);
  const { pool } = threads as unknown as {
      pool: { readonly threads: readonly { readonly thread: Worker }[] };
    },
    all = [...pool.threads],
    underWay = threads.observe({ key: 'one', model }, 2).catch(() => undefined),
    closed = threads.close();
  // As Node tells of an exception in a thread, before the thread has ended.
  for (const { thread } of all)
    if (thread.listenerCount('error') > 0) thread.emit('error', new Error('died meanwhile'));
  await expect(closed).resolves.toBeUndefined();
  await underWay;
});
