import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import type { Observation } from '../../../src/measure/observe.js';
import { Journal } from '../../../src/study/run/journal.js';
import { Replicator, type ReplicatorOptions, type Variant } from '../../../src/study/run/replicator.js';
import { benchVariant } from './bench-variant.js';

const shipped = ({ shipped: units, replication }: Observation): number => 1000 * replication + units;
const variants = (read: Variant<number>['read']) => [benchVariant(5, read), benchVariant(8, read)];
const temporary = (name: string): string => join(mkdtempSync(join(tmpdir(), 'replicator-')), name);

async function run(options: Partial<ReplicatorOptions>, to = 6, read = shipped): Promise<number[][]> {
  const replicator = new Replicator({ seed: 'a', workers: 1, ...options });
  try {
    return await replicator.rows(variants(read), 1, to);
  } finally {
    await replicator.close();
  }
}

describe('replications of variants', () => {
  afterEach(() => {
    delete process.env['DYING_WORKER_FILE'];
  });

  it('come in order and are the same for 1, 2 and 7 threads', async () => {
    const one = await run({ workers: 1 });
    expect(one.map((row) => row.map((value) => Math.floor(value / 1000)))).toEqual([
      [1, 2, 3, 4, 5, 6],
      [1, 2, 3, 4, 5, 6],
    ]);
    expect(one[0]).not.toEqual(one[1]);
    expect(await run({ workers: 2 })).toEqual(one);
    expect(await run({ workers: 7 })).toEqual(one);
  });

  it('are run again when a thread dies', async () => {
    const file = (process.env['DYING_WORKER_FILE'] = temporary('once'));
    writeFileSync(file, '');
    expect(await run({ workers: 2, worker: new URL('dying-worker.mjs', import.meta.url) })).toEqual(
      await run({}),
    );
  });

  it('are given up when a thread dies of the same replication again and again', async () => {
    writeFileSync((process.env['DYING_WORKER_FILE'] = temporary('thread-always')), '');
    await expect(run({ workers: 2, worker: new URL('dying-worker.mjs', import.meta.url) })).rejects.toThrow(
      'thread died',
    );
  });

  it('are taken from a journal where they stand in it, and only the others are run', async () => {
    const path = temporary('study.journal'),
      identity = { seed: 'a' };
    const first = new Journal<number>(path, identity),
      whole = await run({ journal: first }, 6);
    first.close();
    // What stands in the journal is not run again: it is believed.
    const second = new Journal<number>(path, identity);
    expect(second.size).toBe(12);
    const more = await run({ journal: second }, 8, () => -1);
    second.close();
    expect(more.map((row) => row.slice(0, 6))).toEqual(whole);
    expect(more.map((row) => row.slice(6))).toEqual([
      [-1, -1],
      [-1, -1],
    ]);
  });

  it('tell a fault of the engine as it is, from a thread too', async () => {
    const { model } = benchVariant(5, shipped),
      broken = {
        key: 'broken',
        model: { ...model, programme: { ...model.programme, release: 9, intervalDraw: 99 } },
        read: shipped,
      };
    for (const workers of [1, 2]) {
      const replicator = new Replicator({ seed: 'a', workers });
      await expect(replicator.rows([broken], 1, 4)).rejects.toThrow();
      await replicator.close();
    }
  });

  it('stop with the reason of the signal', async () => {
    const controller = new AbortController();
    const running = run(
      {
        workers: 2,
        signal: controller.signal,
        onReplication: () => {
          controller.abort(new Error('enough'));
        },
      },
      50,
    );
    await expect(running).rejects.toThrow('enough');
  });
});
