import { afterAll, describe, expect, it } from 'vitest';
import { KINDS } from './all-kinds.js';
import { noCounts, tryBatch } from './batch.js';
import { Reader } from './reader.js';

/**
 * A few cases of each kind: as many as take a second or two. `npm run fuzz` tries more. Accepted or run, and
 * refused, at least: if none were, the cases would not reach what they are to try.
 */
const SIZES: Readonly<Record<string, readonly [size: number, sound: number, refused: number]>> = {
  trees: [20, 1, 8],
  'mild trees': [15, 4, 1],
  texts: [30, 2, 10],
  tables: [30, 5, 10],
  'what-ifs': [12, 1, 4],
  comparisons: [10, 1, 3],
  arguments: [300, 30, 150],
  'command lines': [40, 1, 3],
  shards: [5, 0, 3],
  journals: [5, 2, 0],
  studies: [4, 1, 0],
};
const reader = new Reader({ read: 20, plan: 20, run: 1 });
afterAll(() => {
  reader.close();
});

describe('what nobody should give the program', () => {
  it.each(KINDS.map((kind) => ({ ...kind, kind })))(
    '$name are answered or refused in words, never with a fault',
    async ({ name, kind }) => {
      const counts = noCounts(),
        [size, sound, refused] = SIZES[name] ?? [0, 0, 0];
      const fault = await tryBatch(
        kind,
        { seed: 'suite', batch: 0, size },
        { reader, counts, known: new Set() },
      );
      expect(fault).toBeUndefined();
      expect(counts).toMatchObject({ tried: size, failed: 0 });
      expect(counts.accepted + counts.run).toBeGreaterThanOrEqual(sound);
      expect(counts.refused).toBeGreaterThanOrEqual(refused);
    },
  );
});
