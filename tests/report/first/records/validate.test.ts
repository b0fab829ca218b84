import { beforeAll, describe, expect, it } from 'vitest';
import type { Oddity } from '../../../../src/records/oddity.js';
import { linesOf } from '../../../../src/report/first/first.js';
import { validateFirst } from '../../../../src/report/first/records/validate.js';
import {
  byPosition,
  isJudged,
  positionOf,
  shownOf,
} from '../../../../src/report/first/records/validate-told.js';
import { validateTable } from '../../../../src/report/terminal/records/validate.js';
import type { Compared, ValidateResults } from '../../../../src/study/validate/results.js';
import { validated } from '../../samples/records.js';

let right: ValidateResults, slow: ValidateResults;
beforeAll(async () => {
  right = await validated({});
  slow = await validated({ weld: '200 min' });
});

/** Made up. */
const NO_STEP: Oddity = {
  ...{ kind: 'unknown step', rule: 'left out', count: 20, lines: [3, 8], example: 'weeld' },
  told: 'the scenario has no step "weeld"',
};
const wordsIn = (text: string): number => text.split(/\s+/).length;

describe('the first screen of validate', () => {
  it('says of a log of the same line that it is not against the model', () => {
    const first = validateFirst(right);
    expect(right.verdict).toBe('agrees');
    expect(first.question).toBe('Would the model have foretold 1 March 2027 to 23 March 2027?');
    expect(first.answer).toBe('Yes: the log is not against the model.');
    expect(first.sure.brief).toMatch(
      /^All \d+ measures agree \(95 % for all together, 10 simulated builds\)\.$/,
    );
    expect(first.stops.brief).toBe('No input is seen to differ.');
    expect(first.when.brief).toBe('Rates, dates, buffers and rework.');
    expect(linesOf(first).map(({ name }) => name)).toEqual([
      'How sure',
      'What differs',
      'Measure next',
      'Use it for',
      'Left out',
    ]);
    expect(first.next.command).toBe('rateproof forecast shop.yaml made.csv --at 2027-03-24');
  });

  it('names the step that is slower, and says that this is evidence and no proof', () => {
    const first = validateFirst(slow);
    expect(first.stops.brief).toMatch(
      /^Working minutes of weld: \d+ in the log, \d+ in the model, \d+ % longer\./,
    );
    expect(first.stops.more).toContain('no proof');
    expect(first.toDo.brief).toMatch(/^Time \d+ visits of weld/);
    expect(first.sure.brief).toMatch(/^\d+ of \d+ measures? do(es)? not agree /);
    expect(first.next.command).toBe('rateproof validate shop.yaml made.csv');
  });

  /** Uses are made up: what is said of them must follow from them alone. */
  const used = (...may: readonly (boolean | null)[]): ValidateResults => ({
    ...right,
    uses: right.uses.map((each, i) => ({ ...each, may: may[i] ?? null })),
  });
  it.each<[readonly (boolean | null)[], string, string]>([
    [[true, true, true, true], 'Yes: the log is not against the model.', 'Rates, dates, buffers and rework.'],
    [
      [true, false, false, null],
      'In part: for rates, not for dates or buffers.',
      'Rates. Not for dates or buffers. Of rework the log does not tell.',
    ],
    [
      [false, false, false, false],
      'No: the model does not agree with the log.',
      'Nothing yet. Not for rates, dates, buffers or rework.',
    ],
    [
      [null, null, null, null],
      'Not known: the log is too short to tell.',
      'Nothing yet. Of rates, dates, buffers and rework the log does not tell.',
    ],
  ])('of uses %j says %s', (may, answer, uses) => {
    const first = validateFirst(used(...may));
    expect(first.answer).toBe(answer);
    expect(first.when.brief).toBe(uses);
    expect(wordsIn(first.answer)).toBeLessThanOrEqual(12);
  });
  it('has an answer of at most twelve words for every mix of uses, also for uses that it does not know', () => {
    const kinds = [true, false, null];
    for (const a of kinds)
      for (const b of kinds)
        for (const c of kinds)
          for (const d of kinds) {
            const mixed = used(a, b, c, d),
              longer = mixed.uses.map((each) => ({ ...each, use: `${each.use} of two plants and a lane` }));
            expect(wordsIn(validateFirst(mixed).answer)).toBeLessThanOrEqual(12);
            expect(wordsIn(validateFirst({ ...mixed, uses: longer }).answer)).toBeLessThanOrEqual(12);
          }
  });

  it('says no name of an input as cause where only another input explains it', () => {
    const [first] = slow.causes,
      both = [first, { ...first, words: 'dirt left to it: 20 % in the log', follows: true }],
      { stops } = validateFirst({ ...slow, causes: both });
    expect(stops.brief).not.toContain('dirt');
    expect(stops.brief).toContain('One more gap may follow from it.');
    expect(stops.brief).not.toContain('differs');
    const agreeing = { ...used(true, true, true, true), causes: both };
    expect(validateFirst(agreeing).answer).toBe('Yes, but 1 input differs from the log.');
    expect(stops.more).toContain('It may follow from another: dirt left to it');
  });

  it('says how many rows of the log were left out, and why', () => {
    const log = { ...right.log, rows: 1200, used: 1180, oddities: [NO_STEP] };
    expect(validateFirst({ ...right, log }).rests).toEqual({
      brief: '20 of 1,200 rows of the log.',
      more: '20 rows: the scenario has no step "weeld".',
    });
  });

  it('stands on the terminal in the same words', () => {
    const text = validateTable(slow, 2000);
    for (const { name, brief } of linesOf(validateFirst(slow))) expect(text).toContain(`${name}: ${brief}`);
    expect(text.startsWith(`${validateFirst(slow).answer}\n`)).toBe(true);
    for (const note of slow.notes) expect(text).toContain(note);
    // All that do not agree, and of the others the nearest.
    const judged = shownOf(slow).filter(isJudged),
      out = judged.filter(({ agrees }) => !agrees);
    expect(text.match(/ no$/gm)?.length).toBe(out.length);
    expect(text).toContain(`${judged.length - out.length - 15} measures more in the report`);
  });
});

describe('the place of a log in its band', () => {
  const measure = (real: number, low: number, middle: number, high: number, agrees: boolean): Compared => ({
    ...{ topic: 'quality', of: 'look', what: 'sent back', n: 50, adjusted: 1 },
    ...{ real, agrees, simulated: { low, middle, high } },
  });
  const place = (each: Compared): number => positionOf(isJudged(each) ? each : (undefined as never));
  it('is told in halves of the band, each side by itself', () => {
    expect(place(measure(0.3, 0.1, 0.2, 0.6, true))).toBeCloseTo(0.25);
    expect(place(measure(0.1, 0.1, 0.2, 0.6, true))).toBeCloseTo(-1);
    expect(place(measure(0.8, 0.1, 0.2, 0.6, false))).toBeCloseTo(1.5);
    expect(place(measure(0, 0, 0, 0, true))).toBe(0);
    expect(place(measure(0.1, 0, 0, 0, false))).toBe(Infinity);
  });
  it('puts what does not agree ahead, and a share of nothing that can be no less behind', () => {
    const none = measure(0, 0, 0.01, 0.04, true),
      near = measure(0.5, 0.1, 0.2, 0.6, true),
      out = measure(0.61, 0.1, 0.2, 0.6, false);
    expect(byPosition([none, near, out].filter(isJudged))).toEqual([out, near, none]);
  });
});
