import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FrameReader, frameOf, GarbledError } from '../../../../src/study/run/workers/frames.js';

/** What may be in an observation or a model, and more: numbers of every kind, typed arrays, holes. */
const value = fc.letrec<{ any: unknown }>((tie) => ({
  any: fc.oneof(
    { maxDepth: 3 },
    fc.double(),
    fc.constantFrom(-0, NaN, Infinity, -Infinity, Number.MIN_VALUE, 2 ** 53 + 2, undefined, null),
    fc.integer(),
    fc.bigInt(),
    fc.string({ unit: 'binary' }),
    fc.float64Array(),
    fc.float32Array(),
    fc.int32Array(),
    fc.uint8Array(),
    fc.array(tie('any'), { maxLength: 4 }),
    fc.dictionary(fc.string(), tie('any'), { maxKeys: 4, noNullPrototype: true }),
    fc.array(fc.tuple(fc.string(), tie('any')), { maxLength: 3 }).map((pairs) => new Map(pairs)),
  ),
})).any;

/** Bytes cut into pieces at any places. */
const cut = (bytes: Buffer, at: readonly number[]): Buffer[] => {
  const places = [0, ...at.map((share) => Math.floor(share * bytes.length)), bytes.length].sort(
    (a, b) => a - b,
  );
  return places.slice(1).map((end, i) => bytes.subarray(places[i], end));
};

const read = (pieces: readonly Buffer[]): unknown[] => {
  const reader = new FrameReader();
  return pieces.flatMap((piece) => [...reader.push(piece)]);
};

describe('frames', () => {
  it('bring any values to the bit, in their order, in whatever pieces they come', () => {
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 1, maxLength: 4 }),
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 6 }),
        (messages, at) => {
          // Object.is tells -0 and NaN, in typed arrays too.
          expect(read(cut(Buffer.concat(messages.map(frameOf)), at))).toStrictEqual(messages);
        },
      ),
      { seed: 17, numRuns: 500 },
    );
  });

  it('keep all bits of numbers and the kind of arrays', () => {
    const bits = Float64Array.of(-0, NaN, Infinity, 0.1 + 0.2, Number.MIN_VALUE, -1 / 3),
      [back] = read([frameOf({ bits, few: Int32Array.of(-1), alone: -0 })]) as [
        { bits: Float64Array; few: Int32Array; alone: number },
      ];
    expect(back.bits).toBeInstanceOf(Float64Array);
    expect(back.few).toBeInstanceOf(Int32Array);
    expect(Buffer.from(back.bits.buffer)).toEqual(Buffer.from(bits.buffer));
    expect(Object.is(back.alone, -0)).toBe(true);
    // A value that is kept does not keep the message that it came in.
    expect(back.bits.buffer.byteLength).toBe(bits.byteLength);
  });

  it('tell any text between them, at once', () => {
    const frame = frameOf('one');
    for (const text of ['Welcome to node7\n', '\n', 'x', 'é']) {
      expect(() => read([Buffer.from(text)])).toThrow(GarbledError);
      expect(() => read([frame, Buffer.from(text), frame])).toThrow(GarbledError);
    }
  });

  it('tell any change of one byte, or wait for more', () => {
    const frame = frameOf({ shipped: 417, at: Float64Array.of(1.5, 2.5) });
    for (const [i, byte] of frame.entries())
      for (const bit of [1, 128]) {
        const changed = Buffer.from(frame);
        changed[i] = byte ^ bit;
        let got: unknown[] = [];
        try {
          got = read([changed]);
        } catch (error) {
          expect(error).toBeInstanceOf(GarbledError);
        }
        expect(got).toEqual([]);
      }
  });

  it('end with a line feed, at which those who hand on whole lines let go', () => {
    expect(frameOf(1).at(-1)).toBe(10);
  });
});
