import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buffersFirst } from '../../../src/report/first/buffers.js';
import { compareFirst } from '../../../src/report/first/compare.js';
import { rateFirst } from '../../../src/report/first/rate.js';
import { reliefsFirst } from '../../../src/report/first/reliefs.js';
import { simulateFirst } from '../../../src/report/first/simulate.js';
import type { BufferResults } from '../../../src/study/buffers/results.js';
import type { CompareResults } from '../../../src/study/compare/results.js';
import type { RateResults } from '../../../src/study/rate/results.js';
import type { ReliefsResults } from '../../../src/study/reliefs/results.js';
import type { Results } from '../../../src/study/simulate/results.js';

/** The demo's own results, of invented data; what is claimed of them is tried by changing one thing at a time. */
const resultsOf = (study: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../reports/${study}/results.json`, import.meta.url), 'utf8'));

describe('the first screen of simulate', () => {
  const results = resultsOf('rescue-tender') as Results;
  it('says no, what stops it, and that the best trial alone is not enough', () => {
    const first = simulateFirst(results);
    expect(first.answer).toBe('No. Expect 3.44 a day, not 4.');
    expect(first.sure).toBe(
      'On average between 3.424 and 3.456 a day (95 %, 100 builds tried). None of 100 builds keep up with it.',
    );
    expect(first.why).toMatch(/^Colour booth stops it: one place more at colour booth brings \+0\.30 /);
    expect(first.toDo).toContain('of the 0.56 a day that are missing, not enough alone');
    expect(first.whenAndCost[0]).toMatch(
      /^Last unit out by 27 April 2028 in half of the builds, by 1 May 2028/,
    );
    expect(first.rests).toBe('7 of 10 values with a stated source are guesses.');
  });
  it('says yes or not settled by the verdict alone', () => {
    const answer = (verdict: Results['answer']['verdict']): string =>
      simulateFirst({ ...results, answer: { ...results.answer, verdict } }).answer;
    expect(answer('holds')).toMatch(/^Yes/);
    expect(answer('not settled')).toMatch(/^Not settled/);
  });
  it('does not call enough too little: a trial that may reach what is asked is not said to fall short', () => {
    const { answer } = results,
      asked = { ...answer, asked: 3.6, askedPerDay: 3.6 };
    expect(simulateFirst({ ...results, answer: asked }).toDo).not.toContain('not enough alone');
  });
});

describe('the first screen of compare', () => {
  const results = resultsOf('compare') as CompareResults;
  const withValue = (low: number, high: number): CompareResults => ({
    ...results,
    whatIfs: results.whatIfs.map((whatIf, i) => ({
      ...whatIf,
      compared: whatIf.compared.map((each) =>
        i === 0 && each.measure === 'throughput'
          ? { ...each, value: { ...each.value, mean: (low + high) / 2, low, high } }
          : each,
      ),
    })),
  });
  it('says that none ships what is asked, and which is nearest', () => {
    expect(compareFirst(results).answer).toBe('None; second colour booth ships 3.73.');
    expect(compareFirst(results).whenAndCost).toEqual([
      'With second colour booth the last unit is out 14.4 days sooner.',
      'With second colour booth a unit is 965 EUR cheaper, what it costs to have it not counted.',
    ]);
  });
  it('says which does, by its whole interval, and that an interval across what is asked settles nothing', () => {
    expect(compareFirst(withValue(4.01, 4.2)).answer).toBe('Only second colour booth does.');
    expect(compareFirst(withValue(3.9, 4.1)).answer).toMatch(/^Not settled/);
  });
});

describe('the first screens of the searches', () => {
  it('are a promise, no single change, and what as many places ship', () => {
    expect(rateFirst(resultsOf('rate') as RateResults).answer).toBe('Promise 3.4 a day, not 4.');
    expect(buffersFirst(resultsOf('buffers') as BufferResults).answer).toBe(
      '7 waiting places ship about as much as today’s 21.',
    );
    const reliefs = resultsOf('reliefs') as ReliefsResults;
    expect(reliefsFirst(reliefs).answer).toBe('No single change reaches 4.');
    // One that may reach it is enough to say something else.
    const asked = { ...reliefs.rate, asked: 3.6, askedPerDay: 3.6 };
    expect(reliefsFirst({ ...reliefs, rate: asked }).answer).toMatch(
      /^One place more at colour booth: \+0\.27/,
    );
  });
});
