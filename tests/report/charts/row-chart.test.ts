import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { textWidth } from '../../../src/report/canvas.js';
import { valueAxis } from '../../../src/report/charts/axes.js';
import type { Chart } from '../../../src/report/charts/chart.js';
import { rowChart, rowsOf } from '../../../src/report/charts/row-chart.js';
import { nameLines } from '../../../src/report/charts/row-names.js';
import { trialGains } from '../../../src/report/charts/studies/constraint-trials.js';
import { reliefGains } from '../../../src/report/charts/studies/reliefs-gains.js';
import { reliefTornado } from '../../../src/report/charts/studies/reliefs-tornado.js';
import { LAYOUT, SIZE } from '../../../src/report/style.js';
import type { Tried } from '../../../src/study/constraint/results.js';
import type { ReliefsResults } from '../../../src/study/reliefs/results.js';
import { results } from '../samples/drawn.js';
import { inked, textsOver } from '../samples/inked.js';

const ROOM = 330;
const named = (...names: string[]) => rowsOf(names, String);
const long = (what: string): string =>
  `one person more on every shift in the crew of the ${what} of the rear body (shell works)`;

const wide = { ...LAYOUT };
const LAYOUTS = [
  ['in a PNG file', wide],
  ['on a wide page', { width: 1000, hasTitles: false, mostRows: 10 }],
  ['on a page of half the width', { width: 620, hasTitles: false, mostRows: 10 }],
  ['on a phone', { width: 346, hasTitles: false, mostRows: 10 }],
] as const;
afterEach(() => {
  Object.assign(LAYOUT, wide);
});

describe('names beside bars', () => {
  it('go on in a second line where they are long, and lose nothing', () => {
    const [lines = []] = nameLines(named(long('painters')), ROOM);
    expect(lines).toHaveLength(2);
    expect(lines.join(' ')).toBe(long('painters'));
    for (const line of lines) expect(textWidth(line, SIZE.text)).toBeLessThanOrEqual(ROOM);
  });

  it('lose their middle where three lines do not hold them', () => {
    const [lines = []] = nameLines(named(long(`painters, ${'polishers, '.repeat(9)}sanders`)), ROOM);
    expect(lines).toHaveLength(3);
    expect(lines[0]?.startsWith('one person more')).toBe(true);
    expect(lines.join(' ')).toContain('…');
    expect(lines.at(-1)?.endsWith('(shell works)')).toBe(true);
  });

  it('stay whole where they would then read alike', () => {
    const both = ['painters', 'finishers'].map((what) =>
      long(`${'polishers, '.repeat(9)}${what}${', grinders'.repeat(9)}`),
    );
    const lines = nameLines(named(...both, 'oven'), ROOM);
    expect(lines.map((each) => each.join(' '))).toEqual([...both, 'oven']);
    expect(lines[0]?.length).toBeGreaterThan(3);
  });

  it('of one word each stay whole too where they would read alike', () => {
    const words = ['a', 'b'].map((letter) => `station_${'x'.repeat(40)}${letter}${'x'.repeat(40)}`);
    expect(nameLines(named(...words), ROOM)).toEqual(words.map((word) => [word]));
    expect(nameLines(named(words[0]), ROOM)[0].join('')).toContain('…');
  });

  it.each(LAYOUTS)('lie over no other text, row after row, %s', (_, layout) => {
    Object.assign(LAYOUT, layout);
    const names = ['painters', 'oven', 'finishers', 'sanders'].map((what) =>
      what === 'oven' ? what : long(what),
    );
    const chart = rowChart({
      finding: 'a finding',
      how: 'how it is drawn.',
      rows: rowsOf(names, String),
      columns: [[['a day more'], () => '0.26 (0.18 to 0.33)']],
      values: valueAxis('gain'),
      intervals: { of: 'gain', sure: '95 % interval', ends: () => [0.1, 0.3], mean: () => 0.2 },
    });
    expectWhole(chart, names);
  });
});

/** Nothing is cut, nothing lies over anything, and every name is there, line after line. */
function expectWhole(chart: Chart, names: readonly string[]): void {
  const { texts } = inked(chart),
    written = texts.map(({ text }) => text);
  expect(written.filter((text) => text.includes('…'))).toEqual([]);
  expect(textsOver(texts)).toEqual([]);
  const all = written.join(' ').replaceAll('\u00a0', ' ');
  expect(names.filter((name) => !all.includes(name))).toEqual([]);
}

describe('names of changes', () => {
  const reliefs = JSON.parse(readFileSync('reports/reliefs/results.json', 'utf8')) as ReliefsResults;
  const offer = {
    names: ['second colour booth with its own air, heat and lights'],
    currency: 'EUR',
    price: 420_000,
    pricePerUnit: null,
    day: 40,
    readyAfter: '5 months',
    atMost: 1,
    needs: [],
  };
  const CALLED = '“second colour booth with its own air, heat and lights”';

  it.each(LAYOUTS)('are those of the scenario, whole, in the picture of reliefs %s', (_, layout) => {
    Object.assign(LAYOUT, layout);
    const [first, ...others] = reliefs.reliefs,
      sentence = 'one person more in finishers of doors and bonnets (composite covers)',
      [second, ...rest] = others;
    const chart = reliefGains({
      ...reliefs,
      reliefs: [{ ...first, offer }, { ...second, text: sentence, offer: null }, ...rest],
    });
    expect(chart?.finding.startsWith(CALLED)).toBe(true);
    expectWhole(chart as Chart, [
      CALLED,
      'one person more on every shift in finishers of doors and bonnets (composite covers)',
    ]);
    expectWhole(reliefTornado(reliefs) as Chart, [reliefs.assumptions[0]?.words ?? '']);
  });

  it.each(LAYOUTS)('are those of the scenario, whole, in the picture of trials %s', (_, layout) => {
    Object.assign(LAYOUT, layout);
    const found = results.constraint!,
      culprit: Tried = { ...found.culprit!, offer },
      hours = 'one hour of overtime a day in "paint and oven shifts" (23:30 to 00:30)',
      tried = found.tried.map((each, i) =>
        each.what === culprit.what ? culprit : i === 1 ? { ...each, what: hours } : each,
      );
    const chart = trialGains({ ...found, culprit, tried }) as Chart;
    expect(chart.finding).toContain(`stops it: ${CALLED} brings`);
    expectWhole(chart, [CALLED, hours]);
  });
});
