import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buffersFirst } from '../../../src/report/first/buffers.js';
import { compareFirst } from '../../../src/report/first/compare.js';
import { factorsFirst } from '../../../src/report/first/factors.js';
import { whyText } from '../../../src/report/first/first.js';
import { rateFirst } from '../../../src/report/first/rate.js';
import { reachFirst } from '../../../src/report/first/reach/reach.js';
import { reliefsFirst } from '../../../src/report/first/reliefs.js';
import { simulateFirst } from '../../../src/report/first/simulate.js';
import type { BufferResults } from '../../../src/study/buffers/results.js';
import type { CompareResults } from '../../../src/study/compare/results.js';
import type { FactorsResults } from '../../../src/study/factors/results.js';
import type { RateResults } from '../../../src/study/rate/results.js';
import type { ReachResults } from '../../../src/study/reach/results.js';
import type { ReliefsResults } from '../../../src/study/reliefs/results.js';
import type { Results } from '../../../src/study/simulate/results.js';
import { mapped, negated } from '../../../src/study/statistics/estimate.js';

/** What is told of prices of change has tests of its own. */
const PRICES = ['offer', 'pricePerGain', 'rankPerPrice'];
/**
 * The demo's own results, of invented data, as if it gave no prices of change; what is claimed of them is tried
 * by changing one thing at a time.
 */
const resultsOf = (study: string): unknown =>
  JSON.parse(
    readFileSync(new URL(`../../../reports/${study}/results.json`, import.meta.url), 'utf8'),
    (key, value: unknown) => (PRICES.includes(key) ? undefined : value),
  );

const buffersResults = (): BufferResults => resultsOf('buffers') as BufferResults;

describe('the first screen of simulate', () => {
  const results = resultsOf('rescue-tender') as Results;
  it('says no, from when, what stops it, and that the best trial alone is not enough', () => {
    const first = simulateFirst(results);
    expect(first.question).toBe(
      'Can “Rescue tender, four a day” ship 4 a working day from 25 October 2027? The scenario notes: “Invented data.”',
    );
    expect(first.answer).toBe('No. Expect 3.44 a day, not 4.');
    expect(first.sure).toBe(
      'On average between 3.42 and 3.45 a day (95 % sure, 100 simulated builds). None of 100 builds ships what is ' +
        'asked.',
    );
    expect(first.why).toBe(
      'The station colour booth: one place more at colour booth brings 0.29 a day (0.23 to 0.35). Next best ' +
        'of 6 tried: one person more on every shift in painters (coachworks), 0.20 (0.16 to 0.25).',
    );
    expect(first.toDo).toBe(
      'Begin with one place more at colour booth (price not given): it closes 0.29 of the 0.56 a day that are ' +
        'missing, not enough alone.',
    );
    expect(first.whenAndCost).toEqual([
      'Last unit out by 27 April 2028 at even odds, by 1 May 2028 at four in five; planned: 15 April 2028, more ' +
        'likely missed.',
      'A unit costs 16,580 EUR today (16,540 to 16,630); rework is 220 EUR of it.',
    ]);
    expect(first.rests).toBe(
      'Weakest guess of 4 tried: the number of painters on the late shift, 6: with 5 it ships 0.21 a day less ' +
        '(0.14 to 0.29); with 7, 0.15 more (0.06 to 0.24).',
    );
    expect(first.besides).toBe(
      '7 of the 10 inputs whose origin is stated are guesses. ' +
        'Intervals cover chance, not wrong inputs. Other pages try other builds: their figures differ a little.',
    );
  });
  it('says yes or not settled by the verdict alone', () => {
    const answer = (verdict: Results['answer']['verdict']): string =>
      simulateFirst({ ...results, answer: { ...results.answer, verdict } }).answer;
    expect(answer('holds')).toMatch(/^Yes/);
    expect(answer('not settled')).toMatch(/^Not settled/);
  });
  it('says of the best trial enough, not enough or not settled by both whole intervals', () => {
    const toDo = (asked: number): string =>
      simulateFirst({ ...results, answer: { ...results.answer, asked, askedPerDay: asked } }).toDo;
    expect(toDo(3.6)).toContain(', enough alone');
    expect(toDo(3.75)).toContain('; whether that is enough alone is not settled');
    expect(toDo(3.9)).toContain(', not enough alone');
  });
  it('names a standstill ahead of all else that stops it', () => {
    const finding = { kind: 'gridlock' as const, text: 'gridlock: a waits for b', replications: 3 };
    expect(simulateFirst({ ...results, findings: [finding] }).why).toMatch(
      /^In 3 of 100 builds units wait for each other for good\. The station colour booth: /,
    );
  });
  it('has no figure where no build could be counted', () => {
    const throughput = { ...results.throughput.perDay, mean: 0, low: null, high: null, n: 0 },
      of = { ...results, throughput: { ...results.throughput, perDay: throughput } };
    const held = { ...results.answer, heldPerDay: throughput, held: throughput };
    expect(simulateFirst({ ...of, answer: held }).sure).toBe('No build went on long enough to be counted.');
  });
  it('says of what else was tried that it brings as much, or more, or nothing', () => {
    const { constraint } = results,
      [first, ...others] = constraint!.tried,
      why = (shift: number): string =>
        whyText({
          ...constraint!,
          tried: [
            first,
            ...others.map((each) => ({
              ...each,
              gain: mapped(each.gain, (value) => value + shift),
            })),
          ],
        });
    expect(why(0.09)).toContain(' As much: one person more');
    expect(why(0.2)).toContain(' More still: one person more');
    expect(why(-0.2)).toContain(' None of the 5 other things tried brings enough to matter.');
  });
  it('tells one person more as one on every shift', () => {
    const { constraint } = results,
      painters = constraint!.tried.find(({ thing }) => thing.kind === 'crew')!;
    expect(whyText({ ...constraint!, culprit: painters, tried: [painters] })).toMatch(
      /^The crew painters \(coachworks\): one person more on every shift in painters \(coachworks\) brings /,
    );
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
  it('says that none ships what is asked, which is nearest, and that its own cost is not in the figures', () => {
    const first = compareFirst(results);
    expect(first.answer).toBe('No, none reaches 4 a day. Nearest: second colour booth, 3.7.');
    expect(first.sure).toBe(
      'Today it ships between 3.41 and 3.49 a day; with “second colour booth” between 3.70 and 3.74 (95 % sure ' +
        'that all figures here hold, 40 simulated builds).',
    );
    expect(first.whenAndCost).toEqual([
      'With “second colour booth” the last unit is out by 12 April 2028 at even odds, by 13 April 2028 at four in ' +
        'five, 15 days sooner than today (13 to 16); planned: 15 April 2028, kept at four in five.',
      'A unit is then 970 EUR cheaper than today (850 to 1,090), the price of the change not counted.',
    ]);
    expect(first.why).toMatch(/^With “second colour booth” it is the station polish bay: one place more /);
    expect(first.toDo).toMatch(
      /^Begin with “second colour booth” \(price not given\): it ships the most, 0\.27 a day more .* The others: a painter more in each shift 0\.19 more, no absence 0\.10 more, small body store 0\.06 less\.$/,
    );
  });
  it('names what stops the scenario where no what-if surely ships more', () => {
    const constraint = { ...results.constraint!, of: null };
    expect(compareFirst({ ...results, constraint }).why).toMatch(/^The station polish bay: /);
  });
  it('says which does, by its whole interval, and that an interval across what is asked settles nothing', () => {
    expect(compareFirst(withValue(4.01, 4.2)).answer).toBe('Only second colour booth does.');
    expect(compareFirst(withValue(3.9, 4.1)).answer).toMatch(/^Not settled/);
  });
  it('leaves a name out of the answer that is too long to be read at a glance', () => {
    const name = 'a second colour booth with its own oven and a crew of its own on both shifts',
      named = { ...results, whatIfs: results.whatIfs.map((one, i) => (i === 0 ? { ...one, name } : one)) };
    expect(compareFirst(named).answer).toBe('No, none reaches 4 a day. The nearest ships 3.7.');
  });
  it('calls dearer and later what is', () => {
    const turned = {
      ...results,
      whatIfs: results.whatIfs.map((one) => ({
        ...one,
        compared: one.compared.map((each) =>
          ['cost', 'last unit'].includes(each.measure)
            ? { ...each, difference: negated(each.difference) }
            : each,
        ),
      })),
    };
    expect(compareFirst(turned).whenAndCost).toEqual([
      expect.stringContaining('15 days later than today (13 to 16)') as string,
      'A unit is then 970 EUR dearer than today (850 to 1,090), the price of the change not counted.',
    ]);
  });
});

describe('the first screens of the searches', () => {
  it('promise a rate, and name what stops a higher one where that was tried', () => {
    const first = rateFirst(resultsOf('rate') as RateResults);
    expect(first.answer).toBe('Promise 3.4 a day, not 4.');
    expect(first.sure).toMatch(/^At that rate all 30 simulated builds ship what is asked, to within 2 %\. /);
    expect(first.why).toMatch(/^Above that, tried at 3\.85 a day, it is the station colour booth: /);
    expect(first.whenAndCost[0]).toBe(
      'At 3.4 a day the last unit is out by 2 May 2028 at even odds, by 3 May 2028 at four in five; planned: 15 April 2028, more likely missed.',
    );
  });
  it('say that no single change reaches what is asked, and both ends of the guess that matters', () => {
    const reliefs = resultsOf('reliefs') as ReliefsResults,
      first = reliefsFirst(reliefs);
    expect(first.answer).toBe('No single change reaches 4.');
    expect(first.why).toBe(
      'The station colour booth or the calendar "paint shifts": of 246 changes looked at, theirs bring the most; which ' +
        'of them is not settled.',
    );
    expect(first.toDo).toContain('Or one person more on every shift in painters (coachworks): 0.18 (');
    expect(first.sure).toMatch(/; with the best single change no more than 3\.82\.$/);
    expect(first.whenAndCost[0]).toMatch(
      /^As it is, the last unit is out by 27 April 2028 .*; planned: 15 April 2028, more likely missed\. With one place more at colour booth 14 days sooner \(11 to 16\)\.$/,
    );
    expect(first.whenAndCost[1]).toContain(
      '900 EUR less (700 to 1,100), the price of the change not counted.',
    );
    expect(first.rests).toContain(
      'with 5 it ships 0.23 a day less (0.17 to 0.29); with 7, 0.14 more (0.08 to 0.19).',
    );
    // One that may reach it is enough to say something else.
    const asked = { ...reliefs.rate, asked: 3.6, askedPerDay: 3.6 };
    expect(reliefsFirst({ ...reliefs, rate: asked }).answer).toBe(
      'One place more at colour booth: 0.26 a day more.',
    );
    // What is not told apart from others is not said to stop it.
    expect(reliefsFirst({ ...reliefs, best: { named: 1, others: 2 } }).why).toBeNull();
    expect(reliefsFirst({ ...reliefs, best: { named: 1, others: 0 } }).why).toMatch(
      /^The station colour booth: of 246 changes looked at, one place more at colour booth brings the most\.$/,
    );
  });
  it('say of fewer places as much, less or perhaps by the whole interval', () => {
    const results = buffersResults(),
      answer = (low: number, high: number): string => {
        const difference = { ...results.gain.difference, mean: (low + high) / 2, low, high };
        return buffersFirst({ ...results, gain: { ...results.gain, difference } }).answer;
      };
    expect(buffersFirst(results).answer).toBe(
      'Not settled: 7 waiting places may ship as much as today’s 21.',
    );
    expect(buffersFirst(results).toDo).toMatch(
      /^Try more builds; if they settle it, have waiting places at colour booth 2 \(today 14\), /,
    );
    expect(buffersFirst(results).sure).toContain('between 0.10 a working day less and 0.01 more than today.');
    expect(answer(-0.03, 0.02)).toBe('7 waiting places ship as much as today’s 21.');
    expect(answer(-0.3, -0.1)).toBe('7 waiting places ship less than today’s 21.');
    expect(answer(0.1, 0.3)).toBe('7 waiting places ship more than today’s 21.');
  });
  it('use no word that stops a manager, and no interval of 99 %', () => {
    const firsts = [
      simulateFirst(resultsOf('rescue-tender') as Results),
      compareFirst(resultsOf('compare') as CompareResults),
      factorsFirst(resultsOf('factors') as FactorsResults),
      rateFirst(resultsOf('rate') as RateResults),
      reliefsFirst(resultsOf('reliefs') as ReliefsResults),
      buffersFirst(buffersResults()),
      reachFirst(resultsOf('reach') as ReachResults),
    ];
    for (const first of firsts) {
      const text = JSON.stringify(first);
      expect(text).not.toMatch(
        /\bCI\b|99\.?\d* %|replication|\bpairs?\b|random|keeps? up|arithmetic|\bP\d\d\b/,
      );
      expect(text).not.toMatch(/\d{4}-\d\d/);
      expect(text).toContain('The scenario notes: “Invented data.”');
      expect(text).toContain('Intervals cover chance, not wrong inputs.');
      // What stops it, by when, and the weakest guess: on each of them.
      expect(first.why).toMatch(/ (station|crew) /);
      expect(first.whenAndCost[0]).toMatch(/ by \d+ \w+ 2028 at .* planned: 15 April 2028/);
      expect(first.toDo).toMatch(/^(Begin with|Buy|Plan for|Try)[ ,]/);
      expect(first.rests).toMatch(/^Weakest guess.*: the number of painters on the late shift, 6: with 5 /);
      expect(first.answer.split(/\s+/).length).toBeLessThanOrEqual(12);
    }
  });
});
