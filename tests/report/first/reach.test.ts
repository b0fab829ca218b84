import { describe, expect, it } from 'vitest';
import { whole } from '../../../src/report/first/first.js';
import { reachFirst } from '../../../src/report/first/reach/reach.js';
import type { ReachResults } from '../../../src/study/reach/results.js';
import { mapped, negated } from '../../../src/study/statistics/estimate.js';
import {
  byDay,
  CHEAPER_OPEN,
  changed,
  HOLDS,
  LONG,
  made,
  NO_PRICES,
  NOT_REACHED,
  NOT_SETTLED,
  nineSteps,
  OF_EVERY_OUTCOME,
  SAMPLE,
} from '../samples/reach.js';

const textOf = (results: ReachResults): string => JSON.stringify(reachFirst(results));

describe('the first screen of reach', () => {
  it('says what to buy, for how much, how sure, what stops it now and next, by when, and what a unit costs', () => {
    const first = reachFirst(SAMPLE);
    expect(first.question).toBe('What does it take to ship 4 a working day, for the least money?');
    expect(first.answer).toBe('Yes, for 465,000 EUR: three changes.');
    // Yes, though on average it ships less than 4: how near is near enough is said ahead of it.
    expect(first.sure).toEqual({
      brief:
        '98 of 160 simulated builds ship 4 a day, or at most 2 % less, and surely half must. On average 3.908 to 3.926 ' +
        '(95 % sure).',
      more:
        'What is up to 2 % less than asked counts as that. Today it ships 3.40 to 3.46 a day. Every cheaper set falls ' +
        'short, if no change does harm.',
    });
    expect(first.stops.brief).toBe(
      'Today, the station colour booth. With these changes, the calendar "days".',
    );
    expect(first.stops.more).toMatch(
      /^Today: one place more at colour booth brings 0\.28 a day .* With these changes, tried at 4\.4 a day: one hour /,
    );
    expect(first.toDo.brief).toBe(
      'Buy, in this order: “second colour booth” (420,000 EUR, order by 16 March 2027); “one polish bay more” ' +
        '(36,000 EUR, order by 16 June); “one bench builder more” (9,000 EUR, order by 12 July).',
    );
    expect(first.toDo.more).toBe(
      'So ordered, all of it is there from the first day on. A unit then costs 14,996 EUR (14,985 to 15,007), with ' +
        'the 52 EUR a day of the changes; today 16,520. With the 465,000 EUR spread over 480 units it is 15,960, 560 ' +
        'less than today.',
    );
    expect(first.when).toEqual({
      brief: 'Last unit by 5 April 2028 with these changes, four times in five; planned 15 April.',
      more:
        'By 4 April 2028 with these changes, at even odds. Today: by 1 May 2028, four times in five. So the plan is kept, four times in ' +
        'five.',
    });
    expect(first.next.command).toBe('rateproof reach rescue-tender.yaml --rate 4.4');
  });

  it('asks with what was allowed, and the next command asks with it too', () => {
    const asked = changed({ budget: 500_000, atMost: 3, ordered: '2027-03-01', by: '2027-12-01' });
    expect(reachFirst(asked).question).toContain(
      'for the least money, with at most 500,000 EUR, in at most 3 changes, ordered on 1 March 2027, in time for ' +
        '1 December 2027?',
    );
    expect(reachFirst({ ...asked, outcome: 'not settled' }).next.command).toBe(
      'rateproof reach rescue-tender.yaml --rate 4 --by 2027-12-01 --ordered 2027-03-01 --budget 500000 ' +
        '--at-most 3 --replications 160',
    );
  });

  it('says that every cheaper set falls short only where that is proven and none of them is open', () => {
    expect(textOf(SAMPLE)).toContain('Every cheaper set falls short');
    expect(SAMPLE.answer.sentence).toContain('every cheaper set falls short');
    const open = reachFirst(CHEAPER_OPEN);
    expect(open.answer).toBe('Yes, for at most 465,000 EUR: three changes.');
    expect(open.sure.more).toMatch(
      / Whether less would do is not settled: “second colour booth” and “one polish bay more” for 456,000 EUR\.$/,
    );
    expect(CHEAPER_OPEN.answer.sentence).toMatch(/ for 456,000 EUR would do is not settled$/);
    // One that did enough when it was decided, and did not stand up to the verdict, is open as well.
    const side = 'above' as const,
      [first, ...rest] = CHEAPER_OPEN.search.finalists,
      above = changed({ search: { ...CHEAPER_OPEN.search, finalists: [{ ...first, side }, ...rest] } });
    expect(reachFirst(above).sure.more).toContain('Whether less would do is not settled');
    const below = { ...CHEAPER_OPEN.search, finalists: [{ ...first, side: 'below' as const }, ...rest] };
    expect(reachFirst(changed({ search: below })).sure.more).toContain('Every cheaper set falls short');
    const ended = changed({ search: { ...SAMPLE.search, isProven: false } });
    expect(reachFirst(ended).sure.more).toMatch(/ Not every cheaper set was tried\.$/);
    expect(reachFirst(ended).answer).toContain('at most');
    for (const one of [CHEAPER_OPEN, ended])
      expect(textOf(one) + one.answer.sentence).not.toMatch(/every cheaper set falls/i);
  });

  it('says of the build as it is that it may do, where that is what is open', () => {
    const as: ReachResults = changed({
      search: {
        ...SAMPLE.search,
        finalists: [{ made: [], money: 0, replications: 160, side: null }, ...SAMPLE.search.finalists],
      },
    });
    expect(reachFirst(as).sure.more).toMatch(/ Whether less would do is not settled: it may as it is\.$/);
    expect(as.answer.sentence).toMatch(/: whether the build as it is would do is not settled$/);
  });

  it('says plainly no, how far it goes and what stops it there, and never that it holds', () => {
    const first = reachFirst(NOT_REACHED);
    expect(first.answer).toBe('No. It goes no further than 3.87 a day, not 4.');
    expect(first.sure.more).toMatch(/ Every set that may be made falls short, if no change does harm\.$/);
    expect(first.stops.brief).toMatch(
      / With these changes, the crew bench builders \(coachworks\); one hour .* brings more still \(6 tried\)\.$/,
    );
    expect(first.toDo.brief).toMatch(/^None of it is enough\. As far as it goes: “second colour booth” /);
    const asked = {
      ...NOT_REACHED.constraint,
      outcome: 'rate asked' as const,
      culprit: null,
      sentence: 'The rate asked is what limits it: it is held.',
    };
    for (const one of [NOT_REACHED, { ...NOT_REACHED, constraint: asked }])
      expect(textOf(one)).not.toMatch(/\bholds?\b|\bheld\b|\bYes\b/);
    const some = { ...NOT_REACHED, search: { ...NOT_REACHED.search, isProven: false } };
    expect(reachFirst(some).answer).toMatch(/^No set tried does\. /);
    expect(reachFirst(some).sure.more).toMatch(/ Not every set was tried\.$/);
  });

  it('does not say that a step helps whose interval covers 0, and which later one needs it', () => {
    expect(reachFirst(NOT_REACHED).toDo.more).toContain(
      '“one polish bay more” was not seen to bring more at its step. ',
    );
    const needed = changed({
      steps: SAMPLE.steps.map((step, i) =>
        i === 1 ? { ...step, gain: { ...step.gain!, low: -0.1 } } : step,
      ),
      possible: SAMPLE.possible.map((each) =>
        each.name === 'one polish bay more' ? { ...each, requires: ['second colour booth'] } : each,
      ),
    });
    expect(reachFirst(needed).toDo.more).toContain(
      '“second colour booth” was not seen to bring more at its step, but “one polish bay more” needs it. ',
    );
    const worse = changed({
      steps: SAMPLE.steps.map((step, i) => (i === 3 ? { ...step, gain: negated(step.gain!) } : step)),
    });
    const least = / “one bench builder more” ships less at its step, but without it the others fall short\. /;
    expect(reachFirst(worse).toDo.more).toMatch(least);
    // Where a cheaper set is open it may do without.
    expect(reachFirst({ ...worse, search: CHEAPER_OPEN.search }).toDo.more).toContain(
      ' ships less at its step. ',
    );
    expect(whole(reachFirst(SAMPLE).toDo)).not.toContain('not seen');
  });

  it('has nothing bought where it holds already, and leaves what is too close open', () => {
    const holds = reachFirst(HOLDS);
    expect(holds.answer).toBe('Yes, as it is: nothing to buy.');
    expect(holds.toDo.brief).toBe('Nothing has to be changed.');
    expect(holds.stops.brief).toBe('The calendar "days".');
    expect(holds.stops.more).toMatch(/^Tried at 4\.4 a day: one hour /);
    expect(textOf(HOLDS)).not.toMatch(/With these changes|order by|465,000/);
    const open = reachFirst(NOT_SETTLED);
    expect(open.answer).toBe('Not settled: 465,000 EUR may do, in three changes.');
    expect(open.toDo.brief).toMatch(/^If more builds settle it, buy “second colour booth”/);
    expect(whole(open.sure)).not.toContain('falls short');
    const both = { ...NOT_SETTLED, search: CHEAPER_OPEN.search };
    expect(reachFirst(both).sure.more).toMatch(/ One other set may do as well\.$/);
  });

  it('speaks of builds that are out by a day, and of the earliest that was found', () => {
    const first = reachFirst(byDay('2028-04-10'));
    expect(first.question).toContain('to have its last unit out by 10 April 2028, for the least money?');
    expect(first.answer).toBe('Yes, for 465,000 EUR: three changes.');
    expect(first.sure.brief).toContain(
      '36 of 40 builds have the last unit out by 10 April 2028; asked are surely 80 in 100.',
    );
    const not = byDay('2028-03-10', { outcome: 'not reached' });
    expect(reachFirst(not).answer).toBe('No. The earliest found is 5 April 2028.');
    expect(not.answer.sentence).toMatch(
      /^no set of changes that may be made has the last unit out by 2028-03-10: .* it is out by 2028-04-05 in 80 of 100 builds/,
    );
    const none = { ...not, steps: not.steps.slice(0, 1) };
    expect(reachFirst(none).sure.brief).toContain(
      'None of 40 builds has the last unit out by 10 March 2028; ',
    );
    // The day is met by the middle of the builds, not by enough of them.
    const few = byDay('2028-04-10', { outcome: 'not reached' });
    expect(reachFirst(few).answer).toBe('No. Too few builds are out by 10 April 2028.');
  });

  it('says from when on a change is there if a day of order is given, not by when to order', () => {
    const steps = SAMPLE.steps.map((step, i) =>
      i === 1 ? { ...step, made: { ...step.made!, from: '2027-11-01' } } : step,
    );
    const { toDo } = reachFirst(changed({ ordered: '2027-06-01', steps }));
    expect(toDo.brief).toContain('“second colour booth” (420,000 EUR, there from 1 November 2027); ');
    expect(whole(toDo)).not.toMatch(/order by|from the first day on/);
    expect(reachFirst(changed({ ordered: '2027-01-01' })).toDo.more).toMatch(
      /^Ordered on 1 January 2027, all of it is there from the first day on\. /,
    );
  });

  it('speaks of no money where no change has a price, and says of one price that it is not given', () => {
    expect(reachFirst(NO_PRICES).answer).toBe('Yes, with three changes.');
    expect(reachFirst(NO_PRICES).sure.more).toMatch(
      / Every set of fewer changes falls short, if no change does harm\.$/,
    );
    expect(textOf(NO_PRICES)).not.toMatch(/least money|price is not given|EUR|\(, /);
    expect(NO_PRICES.answer.sentence).toMatch(/ hold 4 a day: every set of fewer changes falls short$/);
    const one = changed({
      steps: SAMPLE.steps.map((step, i) => (i === 3 ? { ...step, price: null, money: null } : step)),
    });
    expect(reachFirst(one).answer).toBe('Yes, with three changes.');
    expect(reachFirst(one).toDo.brief).toContain(
      '“one bench builder more” (its price is not given, order by',
    );
  });

  it('says what a price that is not given would be worth, and what is known without it', () => {
    const masks = {
      names: ['masking cut ahead'],
      made: [made('masking cut ahead'), made('one polish bay more')],
      money: 36_000,
    };
    const costs = (outcome: ReachResults['outcome'], worth: number | null): string =>
      reachFirst({ ...SAMPLE, outcome, unpriced: [{ ...masks, worth }] }).toDo.more;
    const asked =
      'The price of “masking cut ahead” is not given: with it it would do with “one polish bay more”, for 36,000 EUR';
    expect(costs('reached', 429_000)).toContain(`${asked}, so it is worth up to 429,000 EUR.`);
    expect(costs('not reached', null)).toContain(`${asked}; without, no set does.`);
    expect(costs('not settled', null)).toContain(`${asked}.`);
  });

  it('counts a change as often as it is made, and tells the first four of nine', () => {
    const first = reachFirst(nineSteps());
    expect(first.answer).toBe('Yes, for 590,000 EUR: eleven changes.');
    expect(first.toDo.brief).toContain('; 3 × “change 3” (9,000 EUR, ');
    expect(first.toDo.brief).toContain('; then five more, see Steps below.');
    expect(first.toDo.brief).toContain(LONG);
  });

  it('names a change that did harm in what was tried', () => {
    const hurts = [{ with: ['a', 'second colour booth'], without: ['second colour booth'] }];
    expect(reachFirst(changed({ search: { ...SAMPLE.search, hurts } })).sure.more).toMatch(
      / “a” did harm in what was tried: look at it by itself\.$/,
    );
  });

  it('says of a mean above what is asked that it is too few builds that ship it', () => {
    const throughput = mapped(NOT_REACHED.steps[2].throughput, (value) => value + 0.2),
      steps = NOT_REACHED.steps.map((step, i) => (i === 2 ? { ...step, throughput } : step));
    expect(reachFirst({ ...NOT_REACHED, steps }).answer).toBe('No. Too few builds ship 4 a day.');
  });

  it('speaks of a rate by the week as the plan does', () => {
    const week = reachFirst(changed({ rateUnit: { per: 'week', workingDays: 5 } }));
    expect(week.question).toContain('to ship 20 a week, ');
    expect(week.sure.brief).toContain(' ship 20 a week, or at most 2 % less, ');
    expect(week.sure.brief).toContain('On average 19.54 to 19.63 (95 % sure).');
    expect(week.sure.more).toContain('Today it ships 17.0 to 17.3 a week.');
    expect(week.stops.more).toContain('tried at 22 a week: ');
  });

  it.each(Object.entries(OF_EVERY_OUTCOME))(
    'of %s is read at a glance, without a word of statistics',
    (_, results) => {
      const first = reachFirst(results),
        text = JSON.stringify(first);
      expect(first.answer.split(/\s+/).length).toBeLessThanOrEqual(12);
      expect(text).not.toMatch(
        /\bCI\b|99\.?\d* %|replication(?!s \d)|\bpairs?\b|arithmetic|\bP\d\d\b|frontier/,
      );
      expect(JSON.stringify({ ...first, next: null })).not.toMatch(/\d{4}-\d\d/);
      expect(text).not.toMatch(/undefined|NaN|null EUR| {2}|\.\.|,:/);
      expect(text).toContain('Intervals cover chance, not wrong inputs.');
    },
  );
});
