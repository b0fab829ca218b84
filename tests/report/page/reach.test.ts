import { describe, expect, it } from 'vitest';
import type { PageTable } from '../../../src/report/columns.js';
import type { PageContent } from '../../../src/report/page/page.js';
import { reachPage } from '../../../src/report/page/studies/reach.js';
import type { ReachResults } from '../../../src/study/reach/results.js';
import {
  byDay,
  CHEAPER_OPEN,
  changed,
  HOLDS,
  made,
  NO_PRICES,
  NOT_REACHED,
  nineSteps,
  SAMPLE,
} from '../samples/reach.js';
import { textRows } from '../samples/read.js';

const tableOf = (results: ReachResults, id: string): PageTable => {
  const found = reachPage(results).tables.find((table) => table.id === id);
  if (found === undefined) throw new Error(`expected a table ${id}`);
  return found;
};
/** The cells of a column, by its head. */
const column = (table: PageTable, head: string): string[] => {
  const at = table.head.indexOf(head);
  if (at < 0) throw new Error(`expected a column ${head}, got ${table.head.join(', ')}`);
  return textRows(table).map((row) => row[at] ?? '');
};
const wordsOf = ({ inFull, findings, assumptions, tables }: PageContent): string =>
  [
    inFull,
    ...findings,
    ...assumptions,
    ...tables.flatMap((table) => [table.note, ...textRows(table).flat()]),
  ].join('\n');

describe('the page of reach', () => {
  it('has the way in sentences that can be signed', () => {
    const [first, , third] = reachPage(SAMPLE).findings;
    expect(first).toBe(
      '1. “second colour booth” (one place more at colour booth), 420,000 EUR, to be ordered by 2027-03-16: 3.736 a ' +
        'day (95 % CI 3.725 to 3.748), more than the step before, +0.31 (98.3 % CI 0.27 to 0.35). What stops it ' +
        'then: the station polish bay.',
    );
    expect(third).toMatch(/ What stops it then: the calendar "days", at 4\.4 a day\.$/);
    expect(reachPage(NOT_REACHED).findings[1]).toContain(', not surely more than the step before, ');
    expect(reachPage(HOLDS).findings).toHaveLength(1);
  });

  it('has steps with price, money so far, day of order, dates and the cost of a unit', () => {
    const steps = tableOf(SAMPLE, 'steps');
    expect(column(steps, 'Step')).toEqual(['0', '1', '2', '3']);
    expect(column(steps, 'What is bought').slice(0, 2)).toEqual(['as it is', '“second colour booth”']);
    expect(column(steps, 'Price, EUR')).toEqual(['', '420,000', '36,000', '9,000']);
    expect(column(steps, 'So far, EUR')).toEqual(['0', '420,000', '456,000', '465,000']);
    expect(column(steps, 'Order by')).toEqual(['', '2027-03-16', '2027-06-16', '2027-07-12']);
    expect(column(steps, 'Last unit, four of five').at(-1)).toBe('2028-04-05');
    expect(column(steps, 'A unit costs').at(-1)).toMatch(/^14,996 \(/);
  });

  it('has what each step brings, and what stops it then', () => {
    const effects = tableOf(NOT_REACHED, 'effects');
    expect(column(effects, 'Seen')).toEqual(['', 'brings more', 'no gain seen']);
    expect(column(effects, 'What stops it then')).toEqual([
      'the station colour booth',
      'the station polish bay',
      'the crew bench builders (coachworks)',
    ]);
    expect(column(tableOf(SAMPLE, 'effects'), 'What stops it then')[3]).toBe(
      'the calendar "days", at 4.4 a day',
    );
    expect(column(tableOf(byDay('2028-04-10'), 'effects'), 'Out in time, %')[3]).toMatch(/^90 /);
  });

  it('says from when on a change is there where a day of order is given', () => {
    const steps = SAMPLE.steps.map((step, i) =>
      i === 1 ? { ...step, made: { ...step.made!, from: '2027-11-01' } } : step,
    );
    const table = tableOf(changed({ ordered: '2027-06-01', steps }), 'steps');
    expect(column(table, 'There from')).toEqual(['', '2027-11-01', 'the first day', 'the first day']);
    expect(table.head).not.toContain('Order by');
  });

  it('has what could be changed, with limits, and how often it was made', () => {
    const changes = tableOf(SAMPLE, 'changes');
    expect(column(changes, 'Made')).toEqual(['1', '0', '0', '0', '1', '1', '0', '0', '0', '0']);
    expect(column(changes, 'Price, EUR').at(-1)).toBe('not given');
    expect(column(changes, 'Not with')[2]).toBe('a painter more in each shift');
    expect(column(changes, 'Not without')[8]).toBe('a truck more to the final plant');
    expect(column(tableOf(nineSteps(), 'changes'), 'Made')[2]).toBe('3');
  });

  it('has the most for each sum, or number of changes, and which set is that of the answer', () => {
    expect(column(tableOf(SAMPLE, 'most'), 'Money once, EUR').at(-1)).toBe('465,000');
    expect(column(tableOf(SAMPLE, 'most'), 'Of the answer')).toEqual(['', '', '', '', '', 'yes']);
    expect(column(tableOf(NO_PRICES, 'most'), 'Changes')).toEqual(['0', '1', '2', '4', '2', '3']);
  });

  it('says how it was searched, and of what is open that it is', () => {
    const said = (results: ReachResults): string => reachPage(results).assumptions.join(' ');
    expect(said(SAMPLE)).toContain(
      '101 sets of 10 changes were run; 2,708 replications in all; every cheaper set falls short: ',
    );
    expect(said(CHEAPER_OPEN)).toContain('every cheaper set but 1 that could not be settled falls short');
    expect(said(changed({ search: { ...SAMPLE.search, isProven: false } }))).toContain(
      'the search was ended before every cheaper set was looked at',
    );
    expect(said(NOT_REACHED)).toContain('every set falls short: it was run, or is part of one');
    expect(column(tableOf(CHEAPER_OPEN, 'decided'), 'Found')).toEqual(['not settled', 'does enough']);
    const hurts = [{ with: ['a', 'b'], without: [] }];
    expect(textRows(tableOf(changed({ search: { ...SAMPLE.search, hurts } }), 'harm'))).toEqual([
      ['“a” and “b”', 'as it is'],
    ]);
  });

  it('says what a price is worth asking for, and has no such table where none is', () => {
    expect(reachPage(SAMPLE).tables.map(({ id }) => id)).not.toContain('unpriced');
    const unpriced = [
      { names: ['masking cut ahead'], made: [made('masking cut ahead')], money: 0, worth: 465_000 },
    ];
    expect(textRows(tableOf({ ...SAMPLE, unpriced }, 'unpriced'))[0].slice(0, 4)).toEqual([
      '“masking cut ahead”',
      '“masking cut ahead”',
      '0',
      '465,000',
    ]);
  });

  it.each(
    Object.entries({ 'no prices': NO_PRICES, 'nine steps': nineSteps(), 'a day': byDay('2028-04-10') }),
  )('says nothing that is not known: %s', (what, results) => {
    const words = wordsOf(reachPage(results));
    expect(words).not.toMatch(/undefined|NaN|\[object|null| {2}/);
    if (what === 'no prices') expect(words).not.toMatch(/EUR|cheaper/);
  });
});
