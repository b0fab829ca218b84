import { describe, expect, it } from 'vitest';
import { findingsOf } from '../../../src/scenario/file/issues.js';
import { keys, together } from '../../../src/scenario/values/keys.js';
import { whole } from '../../../src/scenario/values/scalars.js';

const stock = keys(
  { 'at start': whole(0).optional(), 'most at a time': whole(1) },
  'a stock: a map with the key most at a time',
).superRefine(
  together(({ atStart = 0, mostAtATime }, wrong) => {
    if (atStart > mostAtATime) wrong(['at start'], `at most ${mostAtATime}`, String(atStart));
  }),
);
const problemsOf = (value: unknown) => findingsOf(stock.safeParse(value).error?.issues ?? [], value);

describe('a map of the planner with keys of several words', () => {
  it('is read with its keys in camel case, in the order of the schema, those left out as undefined', () => {
    const read = stock.parse({ 'most at a time': 3 });
    expect(read).toStrictEqual({ atStart: undefined, mostAtATime: 3 });
    expect(Object.keys(read)).toEqual(['atStart', 'mostAtATime']);
  });

  it("has problems under the planner's own keys", () => {
    expect(problemsOf({ 'at start': -1, 'most at a time': 3 })).toMatchObject([{ path: ['at start'] }]);
    expect(problemsOf({ 'at start': 4, 'most at a time': 3 })).toMatchObject([
      { path: ['at start'], wanted: 'at most 3', seen: '4' },
    ]);
  });

  it('is not asked whether its keys go together while one of them is misspelt', () => {
    expect(problemsOf({ 'at start': 4, 'most at a time': 3, 'at stert': 1 })).toMatchObject([
      { path: ['at stert'], wanted: 'one of the keys at start, most at a time', suggestion: 'at start' },
    ]);
  });

  it('does not have the camel case that it is read with', () => {
    expect(problemsOf({ mostAtATime: 3 })).not.toEqual([]);
  });
});
