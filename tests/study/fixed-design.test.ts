import { chmodSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { replicationsOf, runDesign, type FixedDesign } from '../../src/study/fixed-design.js';
import { Journal } from '../../src/study/journal.js';
import { mergeShards, MissingShards } from '../../src/study/merge.js';
import { aboutShard, readShard, ShardError, writeShard, type ShardFolder } from '../../src/study/shard-folder.js';
import { benchVariant } from './bench-variant.js';

/** A study of two variants, as those that compare are. */
const DESIGN: FixedDesign<{ seen: Float64Array }, number[][]> = {
  identity: { study: 'two', seed: 'a' }, variants: [benchVariant(5), benchVariant(8)], replications: 7, seed: 'a',
  read: ({ replication, shipped }) => ({ seen: Float64Array.of(replication, shipped) }),
  summarise: (rows) => rows.map((row) => row.flatMap(({ seen }) => [...seen])),
};
const folder = mkdtempSync(join(tmpdir(), 'fixed-design-'));

async function shardFolder(index: number, of: number, asked: object = { file: 'two.yaml' }): Promise<ShardFolder> {
  const path = join(mkdtempSync(join(folder, 'shard-')), 'done'), shard = { index, of };
  writeShard(path, aboutShard(DESIGN.identity, asked, shard), DESIGN, await runDesign(DESIGN, { workers: 1 }, shard));
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
    const whole = DESIGN.summarise(await runDesign(DESIGN, { workers: 2 }));
    expect(whole[0]).not.toEqual(whole[1]);
    // Replication and units shipped, in turn.
    expect(whole.map((row) => row.filter((_, i) => i % 2 === 0))).toEqual([[1, 2, 3, 4, 5, 6, 7], [1, 2, 3, 4, 5, 6, 7]]);
    const shards = [await shardFolder(2, 3), await shardFolder(3, 3), await shardFolder(1, 3)];
    expect(mergeShards(DESIGN, shards)).toEqual(whole);
    expect(() => mergeShards(DESIGN, shards.slice(1))).toThrow(MissingShards);
  });

  it('does not take shards of another version of the program, nor shards that were asked something else', async () => {
    const shard = await shardFolder(1, 1);
    expect(() => mergeShards({ ...DESIGN, identity: { ...DESIGN.identity, program: '9' } }, [shard])).toThrow('program was not there, now it is 9');
    expect(() => mergeShards(DESIGN, [shard, { ...shard, about: aboutShard(DESIGN.identity, { file: 'other.yaml' }, { index: 1, of: 1 }) }])).toThrow(ShardError);
  });

  it('refuses to put into JSON what JSON cannot hold', () => {
    expect(() => aboutShard(DESIGN.identity, { length: Infinity }, { index: 1, of: 1 })).toThrow('expected only finite numbers');
  });

  it('has shards that are merged where nothing may be written', async () => {
    const { path, about } = await shardFolder(1, 1), file = join(path, 'shard.journal'), bytes = readFileSync(file);
    chmodSync(file, 0o444);
    // As any user but the superuser would see it: opened to be read only.
    const journal = new Journal(file, about.identity, true);
    expect(() => journal.add('more', 1)).toThrow('EBADF');
    journal.close();
    expect(journal.size).toBe(14);
    expect(readFileSync(file)).toEqual(bytes);
    expect(() => new Journal(join(path, 'none'), about.identity, true)).toThrow('ENOENT');
  });
});
