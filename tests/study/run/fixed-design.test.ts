import {
  chmodSync,
  closeSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  truncateSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Observation } from '../../../src/measure/observe.js';
import {
  answerOf,
  type FixedDesign,
  replicationsOf,
  runDesign,
} from '../../../src/study/run/fixed-design.js';
import { Journal } from '../../../src/study/run/journal.js';
import { MissingShards, mergeShards } from '../../../src/study/run/merge.js';
import { keyOf } from '../../../src/study/run/replicator.js';
import {
  aboutShard,
  readShard,
  ShardError,
  type ShardFolder,
  writeShard,
} from '../../../src/study/run/shards.js';
import { benchVariant } from './bench-variant.js';

interface Seen {
  readonly seen: Float64Array;
}

const read = ({ replication, shipped }: Observation): Seen => ({
  seen: Float64Array.of(replication, shipped),
});

/** A study of two variants, as those that compare are; found is what came, in the order in which it came. */
const DESIGN: FixedDesign<Seen, number[][]> = {
  identity: { study: 'two', seed: 'a' },
  variants: [benchVariant(5, read), benchVariant(8, read)],
  replications: 7,
  seed: 'a',
  gather: () => {
    const came: number[][] = [];
    return { take: ({ seen }, v) => void came.push([v, ...seen]), found: () => came };
  },
};
const folder = mkdtempSync(join(tmpdir(), 'fixed-design-'));

/** The lowest number under which no file is open: that is the one a new one is given (POSIX, open). */
function freeHandle(): number {
  const handle = openSync(folder, 'r');
  closeSync(handle);
  return handle;
}

async function shardFolder(
  index: number,
  of: number,
  asked: object = { file: 'two.yaml' },
  design = DESIGN,
): Promise<ShardFolder> {
  const path = join(mkdtempSync(join(folder, 'shard-')), 'done'),
    shard = { index, of };
  const journal = new Journal<Seen>(
    join(mkdtempSync(join(folder, 'run-')), 'shard.journal'),
    design.identity,
  );
  await runDesign(design, { workers: 1, journal }, () => undefined, shard);
  writeShard(path, aboutShard(design.identity, asked, shard), design, (key) => journal.get(key));
  journal.close();
  return readShard(path);
}

describe('the replications of shards', () => {
  it('are every n-th one, and together each exactly once', () => {
    expect(replicationsOf({ index: 3, of: 4 }, 10)).toEqual([3, 7]);
    expect(replicationsOf({ index: 1, of: 1 }, 3)).toEqual([1, 2, 3]);
    expect(replicationsOf({ index: 4, of: 4 }, 3)).toEqual([]);
    for (const of of [1, 2, 3, 7]) {
      const all = Array.from({ length: of }, (_, i) => replicationsOf({ index: i + 1, of }, 7)).flat();
      expect(all.sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    }
  });
});

describe('a design of several variants', () => {
  it('merged from shards is what it is run as a whole', async () => {
    const whole = await answerOf(DESIGN, { workers: 2 });
    // Variant, replication and units shipped.
    expect(whole.map(([v, replication]) => [v, replication])).toEqual(
      [0, 1].flatMap((v) => [1, 2, 3, 4, 5, 6, 7].map((replication) => [v, replication])),
    );
    expect(whole.slice(0, 7).map(([, , units]) => units)).not.toEqual(
      whole.slice(7).map(([, , units]) => units),
    );
    const [one, two, three] = [await shardFolder(1, 3), await shardFolder(2, 3), await shardFolder(3, 3)];
    for (const shards of [
      [one, two, three],
      [three, one, two],
      [two, three, one, two],
      [three, two, one],
    ])
      expect(mergeShards(DESIGN, shards)).toEqual(whole);
    expect(() => mergeShards(DESIGN, [one, three])).toThrow(MissingShards);
  });

  it('runs no more of a variant than its most, as a whole and in shards, and counts them so', async () => {
    const [first, second] = DESIGN.variants,
      design = { ...DESIGN, variants: [first, { ...second, most: 3 }] },
      counted: [number, number][] = [];
    const whole = await answerOf(design, {
      workers: 1,
      onReplication: (done, of) => counted.push([done, of]),
    });
    expect(whole.map(([v, replication]) => [v, replication])).toEqual([
      ...[1, 2, 3, 4, 5, 6, 7].map((replication) => [0, replication]),
      ...[1, 2, 3].map((replication) => [1, replication]),
    ]);
    expect(counted.at(-1)).toEqual([10, 10]);
    // Of seven and three replications the fifth of five shards has the fifth alone.
    const shards = await Promise.all(
      [1, 2, 3, 4, 5].map((index) => shardFolder(index, 5, undefined, design)),
    );
    expect(mergeShards(design, shards)).toEqual(whole);
  });

  it('holds the files of its shards open while they are merged, and none of them afterwards, whatever happens', async () => {
    const shards = [await shardFolder(1, 2), await shardFolder(2, 2)],
      before = freeHandle(),
      fault = new Error('no more room');
    const merged = (take: () => void): number =>
      mergeShards({ ...DESIGN, gather: () => ({ take, found: freeHandle }) }, shards);
    expect(merged(() => undefined)).toBeGreaterThan(before);
    expect(freeHandle()).toBe(before);
    expect(() =>
      merged(() => {
        throw fault;
      }),
    ).toThrow(fault);
    expect(freeHandle()).toBe(before);
    // The second is damaged: the first is closed again.
    truncateSync(join(shards[1].path, 'shard.journal'), 200);
    expect(() => merged(() => undefined)).toThrow(
      'expected every replication of shard 2 of 2, got a damaged file',
    );
    expect(freeHandle()).toBe(before);
  });

  it('has no shard where a value is missing', async () => {
    const { about } = await shardFolder(1, 1),
      path = join(mkdtempSync(join(folder, 'shard-')), 'none'),
      missing = keyOf(DESIGN.variants[1], 4);
    const write = (): void => {
      writeShard(path, about, DESIGN, (key) => (key === missing ? undefined : { seen: Float64Array.of(1) }));
    };
    expect(write).toThrow(ShardError);
    expect(write).toThrow(
      'shard 1 of 1: expected every replication in its journal as it was written, got one that is not',
    );
    expect(readdirSync(dirname(path))).toEqual([]);
  });

  it('does not take shards of another version of the program, nor shards that were asked something else', async () => {
    const shard = await shardFolder(1, 1);
    expect(() => mergeShards({ ...DESIGN, identity: { ...DESIGN.identity, program: '9' } }, [shard])).toThrow(
      'program was not there, now it is 9',
    );
    expect(() =>
      mergeShards(DESIGN, [
        shard,
        { ...shard, about: aboutShard(DESIGN.identity, { file: 'other.yaml' }, { index: 1, of: 1 }) },
      ]),
    ).toThrow(ShardError);
  });

  it('refuses to put into JSON what JSON cannot hold', () => {
    expect(() => aboutShard(DESIGN.identity, { length: Infinity }, { index: 1, of: 1 })).toThrow(
      'expected only finite numbers',
    );
  });

  it('has shards that are merged where nothing may be written', async () => {
    const { path, about } = await shardFolder(1, 1),
      file = join(path, 'shard.journal'),
      bytes = readFileSync(file);
    chmodSync(file, 0o444);
    // As any user but the superuser would see it: opened to be read only.
    const journal = new Journal(file, about.identity, true);
    expect(() => {
      journal.add('more', 1);
    }).toThrow('EBADF');
    journal.close();
    expect(journal.size).toBe(14);
    expect(readFileSync(file)).toEqual(bytes);
    expect(() => new Journal(join(path, 'none'), about.identity, true)).toThrow('ENOENT');
  });
});
