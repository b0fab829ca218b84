import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buffersFirst } from '../../../src/report/first/buffers.js';
import { compareFirst } from '../../../src/report/first/compare.js';
import { factorsFirst } from '../../../src/report/first/factors.js';
import { linesOf, whole } from '../../../src/report/first/first.js';
import { stopsLine } from '../../../src/report/first/lines/stops.js';
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

/** With its prices: what a reader sees. */
const asShown = (study: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../reports/${study}/results.json`, import.meta.url), 'utf8'));

const buffersResults = (): BufferResults => resultsOf('buffers') as BufferResults;

describe('the first screen of simulate', () => {
  const results = resultsOf('rescue-tender') as Results;
  it('says no, from when, what stops it, and that the best trial alone is not enough', () => {
    const first = simulateFirst(results);
    expect(first.about).toBe('Rescue tender, four a day. “Invented data.”');
    expect(first.question).toBe('Can it ship 4 a working day from 25 October 2027?');
    expect(first.answer).toBe('No. Expect 3.44 a day, not 4.');
    expect(whole(first.sure)).toBe(
      'None of 100 simulated builds ships 4 a day; average 3.42 to 3.45 (95 % sure).',
    );
    expect(first.stops).toEqual({
      brief: 'The station colour booth.',
      more:
        'One place more at colour booth brings 0.29 a day (0.23 to 0.36). Of 5 other things tried, next best: one person ' +
        'more on every shift in painters (coachworks), 0.20 (0.15 to 0.26).',
    });
    expect(first.toDo).toEqual({
      brief: 'Begin with one place more at colour booth (price not given): 0.29 of the 0.56 missing.',
      more: 'A unit costs 16,580 EUR today (16,540 to 16,630); rework is 220 EUR of it.',
    });
    expect(first.when).toEqual({
      brief: 'Last unit by 1 May 2028, four times in five; planned 15 April.',
      more: 'By 27 April 2028, at even odds. So the plan is more likely missed.',
    });
    expect(first.rests).toEqual({
      brief: '6 painters on the late shift; with 5, 0.21 a day less.',
      more:
        'Between 0.13 and 0.30 a day less; with 7, 0.15 more (0.05 to 0.25). Of 9 guesses and estimates the four ' +
        'likeliest to matter were tried.',
    });
    expect(first.besides).toBe(
      '7 of the 10 inputs whose origin is stated are guesses. ' +
        'Intervals cover chance, not wrong inputs. Other pages try other builds: their figures differ a little.',
    );
  });
  it('says of builds that ship nearly what is asked how nearly, and of none that it does', () => {
    const sure = (count: number): string =>
      simulateFirst({
        ...results,
        answer: { ...results.answer, keptUp: { ...results.answer.keptUp!, count, share: count / 100 } },
      }).sure.brief;
    expect(sure(3)).toMatch(/^3 of 100 simulated builds ship at least 98 % of 4 a day; average /);
    expect(sure(100)).toMatch(/^All 100 simulated builds ship at least 98 % of 4 a day; /);
    expect(sure(0)).toMatch(/^None of 100 simulated builds ships 4 a day; /);
  });
  it('says yes or not settled by the verdict alone', () => {
    const answer = (verdict: Results['answer']['verdict']): string =>
      simulateFirst({ ...results, answer: { ...results.answer, verdict } }).answer;
    expect(answer('holds')).toMatch(/^Yes/);
    expect(answer('not settled')).toMatch(/^Not settled/);
    const toDo = (verdict: Results['answer']['verdict'], asked: number | null = 4): string =>
      simulateFirst({ ...results, answer: { ...results.answer, verdict, asked } }).toDo.brief;
    expect(toDo('holds')).toBe('Nothing has to be changed.');
    expect(toDo('not settled')).toBe('Simulate more builds first.');
    expect(toDo('no rate asked', null)).toBe(
      'To ship more, begin with one place more at colour booth (price not given): 0.29 a day more.',
    );
    const unknown = { ...results, constraint: { ...results.constraint!, culprit: null } };
    expect(simulateFirst(unknown).toDo.brief).toBe('Find out what helps.');
  });
  it('says of the best trial that it is enough alone, or that this is not settled, by both whole intervals', () => {
    const toDo = (asked: number): string =>
      simulateFirst({ ...results, answer: { ...results.answer, asked, askedPerDay: asked } }).toDo.brief;
    expect(toDo(3.6)).toContain(', enough alone');
    expect(toDo(3.75)).toContain('; whether that is enough alone is not settled');
    expect(toDo(3.9)).toMatch(/ 0\.29 of the 0\.46 missing\.$/);
  });
  it('names a standstill ahead of all else that stops it', () => {
    const finding = { kind: 'gridlock' as const, text: 'gridlock: a waits for b', replications: 3 };
    expect(simulateFirst({ ...results, findings: [finding] }).stops).toMatchObject({
      brief: 'In 3 of 100 builds units wait for each other for good.',
      more: expect.stringMatching(
        /^The station colour booth\. One place more .* Of 5 other things tried, /,
      ) as string,
    });
  });
  it('has no figure where no build could be counted', () => {
    const throughput = { ...results.throughput.perDay, mean: 0, low: null, high: null, n: 0 },
      of = { ...results, throughput: { ...results.throughput, perDay: throughput } };
    const held = { ...results.answer, heldPerDay: throughput, held: throughput };
    expect(simulateFirst({ ...of, answer: held }).sure.brief).toBe(
      'No build went on long enough to be counted.',
    );
  });
  it('says of what else was tried that it brings as much, or more, or nothing', () => {
    const { constraint } = results,
      [first, ...others] = constraint!.tried,
      why = (shift: number) =>
        stopsLine({
          ...constraint!,
          tried: [
            first,
            ...others.map((each) => ({
              ...each,
              gain: mapped(each.gain, (value) => value + shift),
            })),
          ],
        });
    // Of two that bring as much, none is named without the other, not even at a glance.
    expect(why(0.09)).toMatchObject({
      brief:
        'The station colour booth; one person more on every shift in painters (coachworks) brings as much.',
      more: expect.stringMatching(
        / Of 5 other things tried, one person more .* \(coachworks\) brings as much: 0\.29 \(/,
      ) as string,
    });
    expect(why(0.2)).toMatchObject({
      brief: expect.stringMatching(/ \(coachworks\) brings more still\.$/) as string,
      more: expect.stringMatching(
        / Of 5 other things tried, one person more .* \(coachworks\) brings more still: 0\.40 \(/,
      ) as string,
    });
    expect(why(-0.2)).toMatchObject({
      brief: 'The station colour booth.',
      more: expect.stringContaining(' None of the 5 other things tried brings enough to matter.') as string,
    });
  });
  it('says of the one other thing that was tried what it brings', () => {
    const { constraint } = results,
      [first, second] = constraint!.tried,
      more = (shift: number): string =>
        stopsLine({
          ...constraint!,
          tried: [first, { ...second, gain: mapped(second.gain, (value) => value + shift) }],
        }).more;
    expect(more(0)).toMatch(
      / The other thing tried, one person more .*, brings less: 0\.20 \(0\.15 to 0\.26\)\.$/,
    );
    expect(more(0.09)).toMatch(/ The other thing tried, one person more .*, brings as much: 0\.29 \(/);
    expect(more(0.2)).toMatch(/ The other thing tried, one person more .*, brings more still: 0\.40 \(/);
    expect(more(-0.2)).toMatch(/ The other thing tried brings too little to matter\.$/);
  });
  it('names no cause that is not certain, and says why not', () => {
    const unknown = { ...results.constraint!, culprit: null },
      none = { ...unknown, outcome: 'none helps' as const },
      harm = none.tried.map((each) => ({ ...each, gain: mapped(each.gain, (value) => value - 0.4) }));
    expect(stopsLine({ ...unknown, outcome: 'not settled' }).brief).toBe(
      'That cannot be told from one simulated build.',
    );
    expect(stopsLine({ ...unknown, outcome: 'rate asked', tried: [] }).brief).toBe('Only the rate asked.');
    expect(stopsLine({ ...unknown, outcome: 'rate asked' }).brief).toBe(
      'Only what arrives: none of 6 things tried brings more.',
    );
    expect(stopsLine(none)).toEqual({
      brief: 'None of 6 things tried brings more that matters.',
      more:
        'The best is one place more at colour booth, 0.29 a day more (0.23 to 0.36). Perhaps only two at once would ' +
        'help, or something that was not tried.',
    });
    expect(stopsLine(none, { at: 'with them, tried at 4.4 a day' }).more).toMatch(
      /^With them, tried at 4\.4 a day: the best is /,
    );
    expect(stopsLine({ ...none, tried: harm }, { of: 'with them' }).brief).toBe(
      'With them, none of 6 things tried brings more.',
    );
    expect(stopsLine({ ...none, tried: harm.slice(0, 1) }).brief).toBe(
      'The one thing tried does not bring more.',
    );
    expect(stopsLine({ ...none, tried: [] }).brief).toBe('No single thing that was found.');
    expect(stopsLine(null)).toEqual({ brief: '', more: '' });
  });
  it('tells one person more as one on every shift', () => {
    const { constraint } = results,
      painters = constraint!.tried.find(({ thing }) => thing.kind === 'crew')!;
    expect(whole(stopsLine({ ...constraint!, culprit: painters, tried: [painters] }))).toMatch(
      /^The crew painters \(coachworks\)\. One person more on every shift in painters \(coachworks\) brings /,
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
    expect(first.answer).toBe('No what-if reaches 4. Nearest: second colour booth, 3.7.');
    // Today's would by itself be 3.4 to 3.5.
    expect(first.sure.brief).toBe(
      'It ships 3.70 to 3.74 a day, today 3.41 to 3.49 (95 % sure, 40 simulated builds).',
    );
    expect(first.when).toEqual({
      brief: 'Last unit by 13 April 2028 with “second colour booth”, four times in five; planned 15 April.',
      more:
        'By 12 April 2028 with “second colour booth”, at even odds. So the plan is kept, four times in five. That is 15 ' +
        'days sooner than today (13 to 16).',
    });
    expect(first.stops.brief).toBe('With “second colour booth”, the station polish bay.');
    expect(first.toDo.brief).toBe('Begin with “second colour booth” (price not given): 0.27 a day more.');
    expect(first.toDo.more).toMatch(
      /^Between 0\.23 and 0\.32 a day more\. It ships the most\. The others: a painter more in each shift 0\.19 more, no absence 0\.10 more, small body store 0\.06 less\. A unit is then 970 EUR cheaper than today \(850 to 1,090\), the price of the change not counted\.$/,
    );
  });
  it('names what brings most for the money, and beside it what brings most, each with its price', () => {
    const offer = {
        ...{ currency: 'EUR', pricePerUnit: null, day: 0 },
        ...{ readyAfter: null, atMost: 1, needs: [] },
      },
      prices = [420000, 18000],
      priced = {
        ...results,
        whatIfs: results.whatIfs.map((one, i) =>
          i < prices.length ? { ...one, offer: { ...offer, names: [one.name], price: prices[i] ?? 0 } } : one,
        ),
      };
    const { toDo, when, stops } = compareFirst(priced);
    expect(toDo.brief).toBe(
      'Begin with “second colour booth”, for 420,000 EUR once: 0.27 a day more; or “a painter more in each ' +
        'shift”, for 18,000 EUR once: 0.19 more.',
    );
    expect(toDo.more).toBe(
      '“a painter more in each shift”: between 0.15 and 0.23 a day more; 18,000 EUR. “second colour booth”: between ' +
        '0.23 and 0.32 a day more; 420,000 EUR. With “second colour booth” a unit is then 970 EUR cheaper than today ' +
        '(850 to 1,090), the price of the change not counted. The others: no absence 0.10 more, small body store 0.06 less.',
    );
    // What stops it and by when are of the one that ships most, and say so.
    expect(when.brief).toContain(' with “second colour booth”, ');
    expect(stops.brief).toContain('With “second colour booth”, ');
    // One that ships most by its mean alone is not said to ship so much more, nor another to be best for its price.
    const open = {
      ...results,
      whatIfs: results.whatIfs.map((one, i) => ({
        ...one,
        compared: one.compared.map((each) =>
          i === 0
            ? {
                ...each,
                verdict: 'not settled' as const,
                difference: { ...each.difference, low: -0.1, high: 0.64 },
              }
            : each,
        ),
      })),
    };
    expect(compareFirst(open).toDo.brief).toBe(
      'Begin with “a painter more in each shift” (price not given): 0.19 a day more; or “second ' +
        'colour booth” (price not given): between 0.1 less and 0.6 more.',
    );
  });
  it('names what stops the scenario where no what-if surely ships more', () => {
    const constraint = { ...results.constraint!, of: null };
    const none = results.whatIfs.map((one) => ({
      ...one,
      compared: one.compared.map((each) => ({ ...each, verdict: 'not settled' as const })),
    }));
    expect(compareFirst({ ...results, whatIfs: none })).toMatchObject({
      toDo: { brief: 'Try other changes: none of these surely ships more.' },
      when: { brief: expect.stringContaining(' 2028 with “second colour booth”, ') as string },
    });
    expect(compareFirst({ ...results, constraint }).stops.brief).toBe('The station polish bay.');
  });
  it('says which does, by its whole interval, and that an interval across what is asked settles nothing', () => {
    expect(compareFirst(withValue(4.01, 4.2)).answer).toBe('Only second colour booth does.');
    expect(compareFirst(withValue(3.9, 4.1)).answer).toMatch(/^Not settled/);
  });
  it('leaves a name out of the answer that is too long to be read at a glance', () => {
    const name = 'a second colour booth with its own oven and a crew of its own on both shifts',
      named = { ...results, whatIfs: results.whatIfs.map((one, i) => (i === 0 ? { ...one, name } : one)) };
    expect(compareFirst(named).answer).toBe('No what-if reaches 4. The nearest ships 3.7.');
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
    expect(compareFirst(turned).when.more).toMatch(/ That is 15 days later than today \(13 to 16\)\.$/);
    expect(compareFirst(turned).toDo.more).toContain(
      'A unit is then 970 EUR dearer than today (850 to 1,090), the price of the change not counted.',
    );
  });
});

describe('the first screens of the searches', () => {
  it('promise a rate, and name what stops a higher one where that was tried', () => {
    const first = rateFirst(resultsOf('rate') as RateResults);
    expect(first.answer).toBe('Promise 3.4 a day, not 4.');
    expect(first.sure.brief).toBe(
      'All 9 simulated builds ship at least 98 % of it. 9 in 10 such studies would agree.',
    );
    expect(first.sure.more).toMatch(
      /^What is up to 2 % less than asked counts as that\. .* that is an estimate/,
    );
    expect(first.stops.brief).toBe('Above that, the station colour booth.');
    expect(first.stops.more).toMatch(/^Tried at 3\.85 a day: one place more at colour booth brings 0\.28 /);
    expect(first.toDo.brief).toBe(
      'Plan for it; for more, begin with one place more at colour booth (price not given).',
    );
    expect(first.when.brief).toBe(
      'Last unit by 3 May 2028 at 3.4 a day, four times in five; planned 15 April.',
    );
    // What ships as much as the plan asks has nothing to plan anew.
    expect(rateFirst({ ...(resultsOf('rate') as RateResults), plannedPerDay: 3.4 }).toDo.brief).toMatch(
      /^To ship more, begin with one place more at colour booth /,
    );
    const rate = resultsOf('rate') as RateResults,
      spread = { ...rate.answer.spread, low: 3.3, high: 3.5 };
    expect(rateFirst({ ...rate, answer: { ...rate.answer, spread } }).sure.brief).toMatch(
      / 9 in 10 such studies would say 3\.3 to 3\.5 a day\.$/,
    );
  });
  it('say that no single change reaches what is asked, and both ends of the guess that matters', () => {
    const reliefs = resultsOf('reliefs') as ReliefsResults,
      first = reliefsFirst(reliefs);
    expect(first.answer).toBe('No single change reaches 4. The most: 0.26 more.');
    expect(first.stops.brief).toBe(
      'The station colour booth or the calendar "paint shifts"; not settled which.',
    );
    expect(first.stops.more).toBe('Changes to them bring the most, of 246 looked at.');
    expect(first.toDo.more).toContain(' Or one person more on every shift in painters (coachworks): 0.18 (');
    expect(first.sure.brief).toBe(
      'Today 3.38 to 3.49 a day, with any change at most 3.82 (95 % sure, 20 simulated builds).',
    );
    expect(first.when.brief).toBe(
      'Last unit by 1 May 2028, four times in five; planned 15 April. With it 14 days sooner.',
    );
    expect(first.when.more).toMatch(/ With one place more at colour booth 14 days sooner \(11 to 16\)\.$/);
    expect(first.toDo.more).toContain('900 EUR less (700 to 1,100), the price of the change not counted.');
    expect(first.rests).toEqual({
      brief: '6 painters on the late shift; with 5, 0.23 a day less.',
      more: 'Between 0.17 and 0.29 a day less; with 7, 0.14 more (0.08 to 0.19). Nine guesses and estimates were tried.',
    });
    // One that may reach it is enough to say something else.
    const asked = { ...reliefs.rate, asked: 3.6, askedPerDay: 3.6 };
    expect(reliefsFirst({ ...reliefs, rate: asked }).answer).toBe(
      'One place more at colour booth: 0.26 a day more.',
    );
    // What is not told apart from others is not said to stop it.
    const stops = (named: number, others: number) =>
      reliefsFirst({ ...reliefs, best: { named, others } }).stops;
    expect(stops(1, 2)).toEqual({
      brief: 'Not settled: several changes may bring the most.',
      more: '246 changes looked at.',
    });
    expect(stops(9, 0).brief).toMatch(/^Not settled: /);
    expect(stops(1, 0)).toEqual({
      brief: 'The station colour booth.',
      more: 'One place more at colour booth brings the most of 246 changes looked at.',
    });
    // An answer that names a calendar has it in the quotes of print.
    const [, hour] = reliefs.reliefs;
    expect(reliefsFirst({ ...reliefs, rate: asked, reliefs: [hour] }).answer).toMatch(
      /^One hour of overtime a day in “paint shifts” .*: 0\.20 a day more\.$/,
    );
    expect(reliefsFirst({ ...reliefs, best: null }).stops.brief).toBe('');
  });
  it('say of fewer places as much, less or perhaps by the whole interval', () => {
    const results = buffersResults(),
      answer = (low: number, high: number): string => {
        const difference = { ...results.gain.difference, mean: (low + high) / 2, low, high };
        return buffersFirst({ ...results, gain: { ...results.gain, difference } }).answer;
      };
    expect(buffersFirst(results).answer).toBe('Not settled: 8 places may ship as much as today’s 21.');
    expect(buffersFirst(results).toDo.brief).toBe(
      'Simulate more builds. If settled: colour booth 14 to 2, clear booth 1 to 6, ' +
        'cover stand 4 to 0, polish bay 2 to 0. Floor space: 48 EUR a day, not 126.',
    );
    // Builds that would settle something else, whether more places than these matter, do not settle this.
    const settled = (of: BufferResults): string =>
      buffersFirst({ ...of, answer: { ...of.answer, verdict: 'not settled', toSettle: 80 } }).toDo.brief;
    expect(settled(results)).toMatch(/^Simulate more builds\. If settled: /);
    expect(settled({ ...results, goal: { kind: 'target', rate: 3.44, relative: null } })).toMatch(
      /^Simulate about 80 builds\. If settled: /,
    );
    expect(buffersFirst(results).question).toBe('Where should up to 10 waiting places go?');
    expect(buffersFirst(results).sure.brief).toBe(
      'Between 0.07 a day less and 0.03 more than today (95 % sure, 20 simulated builds).',
    );
    expect(answer(-0.03, 0.02)).toBe('8 places ship as much as today’s 21.');
    expect(answer(-0.3, -0.1)).toBe('8 places ship less than today’s 21.');
    expect(answer(0.1, 0.3)).toBe('8 places ship more than today’s 21.');
    const many = results.spots.flatMap((spot) => [spot, spot]);
    expect(buffersFirst({ ...results, spots: many }).toDo.brief).toContain(', and 4 more. Floor space: ');
    const asToday = results.spots.map((spot) => ({ ...spot, chosen: spot.present }));
    expect(buffersFirst({ ...results, spots: asToday }).toDo.brief).toBe(
      'Leave the waiting places as they are today.',
    );
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
      expect(first.about).toBe('Rescue tender, four a day. “Invented data.”');
      expect(text).toContain('Intervals cover chance, not wrong inputs.');
      // How sure, what stops it, what to do, by when, the weakest guess: on each of them, in this order.
      expect(linesOf(first).map(({ name }) => name)).toEqual([
        'How sure',
        'What stops it',
        'What to do',
        'By when',
        'Weakest guess',
      ]);
      expect(first.stops.brief).toMatch(/ (station|crew) /);
      expect(first.when.brief).toMatch(/^Last unit by \d+ \w+ 2028\b.*; planned 15 April\./);
      expect(first.toDo.brief).toMatch(/^(Begin with|Buy|Plan for|Simulate)[ ,]/);
      expect(first.rests.brief).toMatch(/^6 painters on the late shift; with 5, 0\.\d\d a day less/);
      expect(first.answer.split(/\s+/).length).toBeLessThanOrEqual(12);
    }
  });
  it('are read, those of all five studies together, within two minutes', () => {
    const firsts = [
      simulateFirst(asShown('rescue-tender') as Results),
      compareFirst(asShown('compare') as CompareResults),
      rateFirst(asShown('rate') as RateResults),
      reliefsFirst(asShown('reliefs') as ReliefsResults),
      buffersFirst(asShown('buffers') as BufferResults),
    ];
    const words = firsts
      .flatMap((first, page) => [
        ...[first.question, first.answer],
        // The names of the lines are the same on every page, and are read on one.
        ...linesOf(first).flatMap(({ name, brief }) => (page === 0 ? [name, brief] : [brief])),
      ])
      .join(' ')
      .split(/\s+/).length;
    // English prose is read silently at 238 words a minute on average (Brysbaert 2019, Journal of Memory and
    // Language 109, from memory), so this is the time of somebody who reads every word.
    expect((60 * words) / 238).toBeLessThanOrEqual(120);
  });
});
