import { describe, expect, it } from 'vitest';
import { inProportion } from '../../../src/study/buffers/search/ample.js';
import { likelyToGain, likelyToSpare } from '../../../src/study/buffers/search/moves.js';
import type { Tried } from '../../../src/study/buffers/search/tried.js';
import { placesOf } from '../../../src/study/buffers/spots.js';
import { known, spots } from './known-trials.js';

const booked = (lacking: readonly number[], inside: readonly number[]): Tried =>
  ({ lacking: () => lacking, inside: () => inside }) as unknown as Tried;

describe('places in proportion', () => {
  it('are so many in all, by largest remainders, and never below the least', () => {
    // Ten are free: 0.4 of 4, 4 and 2 is 1.6, 1.6 and 0.8.
    expect(inProportion([0, 1, 0], [4, 5, 2], 5)).toEqual([2, 2, 1]);
    expect(inProportion([0, 1, 0], [4, 5, 2], 1)).toEqual([0, 1, 0]);
    expect(inProportion([0, 1, 0], [4, 5, 2], 99)).toEqual([4, 5, 2]);
    for (let places = 2; places <= 30; places++)
      expect(placesOf(inProportion([0, 2, 0, 0], [9, 7, 13, 3], places))).toBe(places);
  });
});

describe('the spots of many that are looked at', () => {
  // 28 spots: a quarter are seven.
  const many = spots(new Array<number>(28).fill(0)),
    layout = many.map((_, s) => (s < 14 ? 2 : 0)),
    waiting = many.map((_, s) => (s * 11) % 28);

  it('are the quarter for whose room most units wait', () => {
    const found = likelyToGain(booked(waiting, waiting), many, layout);
    expect(found.map((s) => waiting[s]).sort((a, b) => a - b)).toEqual([21, 22, 23, 24, 25, 26, 27]);
  });

  it('are those with places that are used least', () => {
    const none = waiting.map(() => 0),
      found = likelyToSpare(booked(none, waiting), many, layout),
      least = waiting.slice(0, 14).sort((a, b) => a - b);
    expect(found.map((s) => waiting[s]).sort((a, b) => a - b)).toEqual(least.slice(0, 7));
  });

  it('are all where nothing tells them apart, and all of few', () => {
    expect(
      likelyToGain(
        known(() => 1),
        many,
        layout,
      ),
    ).toHaveLength(28);
    expect(likelyToGain(booked([3, 2, 1], [0, 0, 0]), spots([0, 0, 0]), [1, 1, 1])).toEqual([0, 1, 2]);
  });
});
