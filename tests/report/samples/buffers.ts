import type { BufferResults } from '../../../src/study/buffers/results.js';

/** Stored results of `buffers`; those of before 0.9.0 say nothing of how much was tried. */
export const storedBuffers = (results: BufferResults): BufferResults => ({
  ...{ search: { within: null, fewer: null }, bound: null, aboveAsked: null },
  ...results,
  answer: {
    ...{ notes: ['Not every layout was tried: there may be a better one.'], toSettle: null },
    ...results.answer,
  },
});
