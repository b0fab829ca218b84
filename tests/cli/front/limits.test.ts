import { Worker } from 'node:worker_threads';
import { describe, expect, it } from 'vitest';
import { Limits } from '../../../src/cli/front/limits.js';
import { ranOutOfMemory } from '../../../src/study/run/out-of-memory.js';

const GB = 2 ** 30,
  HOUR = 3600;

describe('the limits of a study', () => {
  it('are not reached by one of a day that fits into memory', () => {
    const limits = new Limits(8 * GB, () => 7.9 * GB);
    for (let look = 0; look < 100; look++) expect(limits.look(24 * HOUR, 50_000)).toBeNull();
    expect(limits.look(undefined, 0)).toBeNull();
  });

  it('are reached at once by more units than memory has room for, and by memory that is full', () => {
    expect(new Limits(8 * GB, () => GB).look(undefined, 10_000_000)).toEqual({
      kind: 'limit',
      message:
        'expected the study to need at most 8.0 GB of memory, four fifths of what is here, ' +
        'it needs about 93.1 GB for 10,000,000 units',
      hint:
        'look for a number typed wrong; otherwise ask for less, use fewer --workers or a machine with more ' +
        'memory, or give --anyway',
    });
    expect(new Limits(8 * GB, () => 8.1 * GB).look(10, 100)?.kind).toBe('limit');
  });

  it('are reached by more than a day, but not by one estimate among others', () => {
    const limits = new Limits(8 * GB, () => GB);
    for (let look = 0; look < 20; look++)
      expect(limits.look(look % 4 === 0 ? HOUR : 25 * HOUR, 100)).toBeNull();
    limits.look(HOUR, 100);
    const found = Array.from({ length: 8 }, () => limits.look(25 * HOUR, 100)).filter(
      (stop) => stop !== null,
    );
    expect(found).toMatchObject([
      { message: 'expected the study to be done within 24 h, at this pace it takes 25 h' },
    ]);
  });
});

describe('want of memory', () => {
  it('is told from a fault, of a thread that ended by it and of an array that is too long', async () => {
    const thread = new Worker('const all = []; for (;;) all.push(Array(1000).fill(all.length + 0.5));', {
      eval: true,
      resourceLimits: { maxOldGenerationSizeMb: 16 },
    });
    const error = await new Promise((resolve) => thread.once('error', resolve));
    expect(ranOutOfMemory(error)).toBe(true);
    expect(() => new Float64Array(2 ** 40)).toThrow(expect.toSatisfy(ranOutOfMemory) as Error);
    expect(ranOutOfMemory(new TypeError('cannot read x'))).toBe(false);
  });
});
