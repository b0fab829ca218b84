import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Replicator, type ReplicatorOptions } from '../../../src/study/run/replicator.js';
import { benchVariant } from './bench-variant.js';

let ended: number[] = [],
  taken: [variant: number, replication: number][] = [],
  whenRead: (count: number) => void = () => undefined;
const read = ({ replication }: { readonly replication: number }): number => {
  ended.push(replication);
  whenRead(ended.length);
  return replication;
};
const VARIANTS = [benchVariant(5, read), benchVariant(8, read)],
  MANY = 40;
/** Threads whose first replication ends when the gate is opened. */
const worker = new URL('gated-worker.mjs', import.meta.url);
const folder = mkdtempSync(join(tmpdir(), 'replicator-order-')),
  gate = join(folder, 'gate');
const open = (): void => {
  writeFileSync(gate, '');
};
/** So that what should not happen had its time to happen. */
const A_MOMENT = 150;

/** Threads of this process that keep it running. */
const threads = (): number =>
  process.getActiveResourcesInfo().filter((resource) => resource === 'Worker' || resource === 'MessagePort')
    .length;

const take = (replication: number, variant: number): void => void taken.push([variant, replication]);

/** `whenEnded` is called whenever a replication has ended, before its turn. */
function replicatorOf(
  workers: number,
  whenEnded: (count: number) => void = () => undefined,
  more: Partial<ReplicatorOptions> = {},
): Replicator {
  whenRead = whenEnded;
  return new Replicator({ seed: 'a', workers, worker, ...more });
}

async function each(replicator: Replicator, to = MANY, takes = take): Promise<void> {
  try {
    await replicator.each(VARIANTS, 1, to, 1, takes);
  } finally {
    await replicator.close();
  }
}

beforeEach(() => {
  [ended, taken] = [[], []];
  process.env['GATED_WORKER_FILE'] = gate;
});
afterEach(() => {
  rmSync(gate, { force: true });
  delete process.env['GATED_WORKER_FILE'];
  delete process.env['GATED_WORKER_FAULT'];
});

describe('values of replications', { timeout: 60_000 }, () => {
  it.each([1, 2, 7])(
    'are handed over by variant, in replication order, in whatever order they end on %i threads',
    async (workers) => {
      await each(
        replicatorOf(workers, (count) => {
          if (count === 4) open();
        }),
        12,
      );
      expect(taken).toEqual([0, 1].flatMap((v) => Array.from({ length: 12 }, (_, i) => [v, i + 1])));
      if (workers > 1) expect(ended.slice(0, 4)).not.toContain(1);
      expect([...ended].sort((a, b) => a - b)).toEqual(
        Array.from({ length: 24 }, (_, i) => Math.floor(i / 2) + 1),
      );
    },
  );

  it('are those of every third replication if so asked, and none where there is none', async () => {
    const replicator = replicatorOf(1);
    await replicator.each(VARIANTS, 2, 9, 3, take);
    await replicator.each(VARIANTS, 10, 9, 3, take);
    await replicator.each([], 1, 9, 1, take);
    expect(taken).toEqual([
      [0, 2],
      [0, 5],
      [0, 8],
      [1, 2],
      [1, 5],
      [1, 8],
    ]);
  });

  it.each([2, 3])(
    'wait for the first one, no more of them than four for each of %i threads, itself among them',
    async (workers) => {
      let most = 0;
      await each(
        replicatorOf(workers, (count) => {
          most = Math.max(most, count - taken.length);
          if (count === 4 * workers - 1) void setTimeout(A_MOMENT).then(open);
        }),
      );
      expect(most).toBe(4 * workers);
      expect(ended[4 * workers - 1]).toBe(1);
      expect(taken).toHaveLength(2 * MANY);
    },
  );

  it('are told when they are planned, and as they end, not when their turn comes', async () => {
    const told: [number, number][] = [];
    await each(
      replicatorOf(2, undefined, {
        onReplication: (done, of) => {
          told.push([done, of]);
          if (done === 7) {
            expect(taken).toEqual([]);
            open();
          }
        },
      }),
      10,
    );
    expect(told).toEqual(Array.from({ length: 21 }, (_, i) => [i, 20]));
  });
});

describe('a fault among replications', { timeout: 60_000 }, () => {
  it('of the engine ends all, though others wait for one before it, and nothing is begun or handed over after it', async () => {
    process.env['GATED_WORKER_FAULT'] = 'yes';
    const replicator = replicatorOf(2);
    await expect(replicator.each(VARIANTS, 1, MANY, 1, take)).rejects.toThrow('replication 6 failed');
    // Threads are still there, and the first replication ends after all.
    open();
    await setTimeout(A_MOMENT);
    expect(taken).toEqual([]);
    // Lanes had begun eight.
    expect(ended.length).toBeLessThan(8);
    await replicator.close();
  });

  it.each([1, 2, 7])(
    'in what takes them on %i threads ends all, with none handed over behind it',
    async (workers) => {
      open();
      const fault = new Error('no more room');
      await expect(
        each(replicatorOf(workers), MANY, (replication, v) => {
          if (replication === 5) throw fault;
          take(replication, v);
        }),
      ).rejects.toBe(fault);
      await setTimeout(A_MOMENT);
      expect(taken).toEqual([1, 2, 3, 4].map((replication) => [0, replication]));
      expect(ended.length).toBeLessThan(5 + 4 * workers);
    },
  );

  it.each([1, 2])(
    'in what reads them on %i threads ends all, and leaves no thread that runs what was waiting',
    async (workers) => {
      const before = threads();
      await expect(
        each(
          replicatorOf(workers, () => {
            if (ended.at(-1) === 4) throw new Error('no such reading');
          }),
        ),
      ).rejects.toThrow('no such reading');
      const count = ended.length;
      await expect.poll(threads, { timeout: 5000 }).toBe(before);
      await setTimeout(A_MOMENT);
      expect([threads(), ended.length]).toEqual([before, count]);
      expect(taken).toEqual(
        workers === 1
          ? [
              [0, 1],
              [0, 2],
              [0, 3],
            ]
          : [],
      );
    },
  );

  it('is not what Node takes for one: many threads that listen to one signal', async () => {
    const warnings: Error[] = [],
      warned = (warning: Error): void => void warnings.push(warning);
    process.on('warning', warned);
    open();
    await each(replicatorOf(7, undefined, { signal: new AbortController().signal }));
    // Warnings are told on the next turn.
    await setTimeout(0);
    process.off('warning', warned);
    expect(warnings).toEqual([]);
  });

  it('may be a signal that comes while all others wait for their turn', async () => {
    const controller = new AbortController(),
      reason = new Error('enough');
    const replicator = replicatorOf(
      2,
      (count) => {
        if (count === 7)
          void setTimeout(A_MOMENT).then(() => {
            controller.abort(reason);
          });
      },
      { signal: controller.signal },
    );
    await expect(each(replicator)).rejects.toBe(reason);
    open();
    await setTimeout(A_MOMENT);
    expect([ended.length, taken.length]).toEqual([7, 0]);
  });
});
