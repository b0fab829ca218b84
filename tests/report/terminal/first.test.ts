import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buffersFirst } from '../../../src/report/first/buffers.js';
import { compareFirst } from '../../../src/report/first/compare.js';
import { factorsFirst } from '../../../src/report/first/factors.js';
import { type FirstScreen, linesOf } from '../../../src/report/first/first.js';
import { rateFirst } from '../../../src/report/first/rate.js';
import { reachFirst } from '../../../src/report/first/reach/reach.js';
import { reliefsFirst } from '../../../src/report/first/reliefs.js';
import { simulateFirst } from '../../../src/report/first/simulate.js';
import { buffersTable } from '../../../src/report/terminal/buffers/buffers.js';
import { compareTable } from '../../../src/report/terminal/compare.js';
import { factorsTable } from '../../../src/report/terminal/factors.js';
import { shareOf } from '../../../src/report/terminal/first.js';
import { rateTable } from '../../../src/report/terminal/rate.js';
import { reachTable } from '../../../src/report/terminal/reach.js';
import { reliefsTable } from '../../../src/report/terminal/reliefs.js';
import { resultsTable } from '../../../src/report/terminal/simulate.js';

/** The sample reports of the demo. */
const read = (study: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../reports/${study}/results.json`, import.meta.url), 'utf8'));
const study = <Of>(
  name: string,
  first: (results: Of) => FirstScreen,
  table: (results: Of, width?: number) => string,
): [string, FirstScreen, (width: number) => string] => {
  const results = read(name) as Of;
  return [name, first(results), (width) => table(results, width)];
};
const STUDIES = [
  study('rescue-tender', simulateFirst, resultsTable),
  study('compare', compareFirst, compareTable),
  study('factors', factorsFirst, factorsTable),
  study('rate', rateFirst, rateTable),
  study('reliefs', reliefsFirst, reliefsTable),
  study('buffers', buffersFirst, buffersTable),
  study('reach', reachFirst, reachTable),
];

const figuresIn = (text: string): string[] => text.match(/(?<![\w.,])[-+±]?\d[\d,.]*\d|(?<![\w.,])\d/g) ?? [];

describe.each(STUDIES)('the terminal of %s', (_, first, table) => {
  it('says what the first screen of the page says, the answer first and by itself', () => {
    const text = table(100);
    expect(text.split('\n').slice(0, 2)).toEqual([first.answer, '']);
    const oneLine = text.replaceAll(/\s+/g, ' ');
    for (const { name, brief, more } of linesOf(first))
      expect(oneLine).toContain(`${name}: ${brief} ${more}`.replaceAll('% CI', '% interval').trim());
  });

  it('uses no short form of a quantile or of an interval', () => {
    expect(table(100)).not.toMatch(/\bP\d\d\b|\bCI\b|\bRTY\b/);
  });

  it.each([30, 40, 60, 200])('cuts no figure and runs over no edge of %i columns', (width) => {
    const text = table(width);
    for (const line of text.split('\n')) expect(Array.from(line).length, line).toBeLessThanOrEqual(width);
    const whole = new Set(figuresIn(text));
    expect(figuresIn(table(1000)).filter((figure) => !whole.has(figure))).toEqual([]);
  });
});

it('names quantiles in words', () => {
  expect([0.5, 0.8, 0.95, 0.1].map((p) => shareOf(p, 'builds'))).toEqual([
    'half of the builds',
    'four of five builds',
    '19 of 20 builds',
    '10 of 100 builds',
  ]);
  expect(shareOf(0.9, 'units')).toBe('nine in ten units');
});
