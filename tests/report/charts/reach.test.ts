import { afterEach, describe, expect, it } from 'vitest';
import { renderPng } from '../../../src/report/canvas.js';
import type { Chart } from '../../../src/report/charts/chart.js';
import { CHARTS } from '../../../src/report/charts/of-study.js';
import { LAYOUT } from '../../../src/report/style.js';
import type { ReachResults } from '../../../src/study/reach/results.js';
import { axisTitle, datasets } from '../samples/drawn.js';
import { readPng } from '../samples/png.js';
import {
  byDay,
  changed,
  HOLDS,
  LONG,
  NO_PRICES,
  NOT_REACHED,
  NOT_SETTLED,
  nineSteps,
  SAMPLE,
} from '../samples/reach.js';

type Name = keyof typeof CHARTS.reach;
const draw = (name: Name, results: ReachResults): Chart => {
  const chart = CHARTS.reach[name](results);
  if (chart === null) throw new Error(`expected ${name} to have something to draw`);
  return chart;
};
const pointsOf = (chart: Chart): unknown[] => datasets(chart)[0].data;

const wide = { ...LAYOUT };
afterEach(() => {
  Object.assign(LAYOUT, wide);
});
const PHONE = { width: 346, hasTitles: false, mostRows: 10 };

describe('the staircase', () => {
  it('says what the steps cost and bring, and what became of what is asked', () => {
    const finding = (results: ReachResults): string => draw('01-steps', results).finding;
    expect(finding(SAMPLE)).toBe('3 steps for 465,000 EUR: from 3.43 to 3.92 a day: 4 holds');
    expect(finding(NOT_REACHED)).toBe('2 steps for 456,000 EUR: from 3.43 to 3.87 a day, short of 4');
    expect(finding(NOT_SETTLED)).toBe('3 steps for 465,000 EUR: from 3.43 to 3.92 a day: 4 is not settled');
    expect(finding(NO_PRICES)).toBe('3 steps: from 3.43 to 3.92 a day: 4 holds');
    expect(finding(byDay('2028-04-10'))).toBe(
      '3 steps for 465,000 EUR: the last unit is out by 2028-04-05, not 2028-05-01; asked is 2028-04-10',
    );
    expect(CHARTS.reach['01-steps'](HOLDS)).toBeNull();
  });

  it('stands on the money spent so far, and on steps where no price or but one sum is known', () => {
    const xs = (results: ReachResults): unknown[] =>
      pointsOf(draw('01-steps', results)).map((point) => (point as { x: number }).x);
    expect(xs(SAMPLE)).toEqual([0, 420_000, 456_000, 465_000]);
    expect(axisTitle(draw('01-steps', SAMPLE), 'x')).toBe('money, once, EUR');
    expect(xs(NO_PRICES)).toEqual([0, 1, 2, 3]);
    const free = changed({ steps: SAMPLE.steps.map((step) => ({ ...step, money: 0, price: 0 })) });
    expect(xs(free)).toEqual([0, 1, 2, 3]);
    const open = changed({
      steps: SAMPLE.steps.map((step, i) => (i === 3 ? { ...step, money: null, price: null } : step)),
    });
    expect(xs(open)).toEqual([0, 1, 2, 3]);
    expect(draw('01-steps', open).alt).toContain('one bench builder more, price not given: 3.92 a day');
  });

  it('says of a step whose interval covers 0 that no gain was seen', () => {
    expect(draw('01-steps', NOT_REACHED).alt).toContain(
      'one polish bay more, 36,000 EUR: 3.87 a day, no gain seen at this step',
    );
    expect(draw('01-steps', SAMPLE).alt).not.toContain('no gain seen');
  });

  it.each([
    ['in a file', {}],
    ['on a phone', PHONE],
  ])('cuts none of nine names and touches no edge %s', async (_, layout) => {
    Object.assign(LAYOUT, layout);
    const chart = draw('01-steps', nineSteps()),
      texts: string[] = [];
    const png = await renderPng(chart.configuration, chart.width, chart.height, (text) => texts.push(text));
    expect(readPng(png).frameIsWhite(1)).toBe(true);
    expect(texts.join(' ').split(LONG)).toHaveLength(1 + 3);
    expect(texts.join(' ')).not.toContain('…');
    // Each step has its number in the plot, and in the key below it.
    for (let i = 1; i <= 9; i++)
      expect(texts.filter((text) => text === String(i)).length).toBeGreaterThanOrEqual(2);
  });

  it('draws days as days from the one asked, or else planned, and says so', () => {
    const [set] = datasets(draw('01-steps', byDay('2028-04-10')));
    expect(set.label).toBe('last unit, days after 2028-04-10');
    expect(set.data.map((point) => (point as { y: number }).y)).toEqual([21, 3, -5, -5]);
    const beside = draw('03-last-unit-by-step', SAMPLE);
    expect(datasets(beside)[0].label).toBe('last unit, days after 2028-04-15');
    expect(beside.finding).toBe(
      '3 steps for 465,000 EUR: the last unit is out by 2028-04-05, not 2028-05-01; the plan says 2028-04-15',
    );
    expect(CHARTS.reach['03-last-unit-by-step'](byDay('2028-04-10'))).toBeNull();
    expect(CHARTS.reach['06-shipped-by-step'](SAMPLE)).toBeNull();
    expect(draw('06-shipped-by-step', byDay('2028-04-10')).finding).toBe(
      '3 steps for 465,000 EUR: from 3.43 to 3.92 a day',
    );
    const none = changed({
      steps: SAMPLE.steps.map((step) => ({ ...step, lastUnit: [] })),
      plannedEnd: null,
    });
    expect(CHARTS.reach['03-last-unit-by-step'](none)).toBeNull();
  });
});

describe('the most for each sum', () => {
  const finding = (results: ReachResults): string => draw('02-most-for-each-sum', results).finding;
  it('says what little money surely brings, and what less than the answer does not', () => {
    expect(finding(SAMPLE)).toBe(
      '3,000 EUR bring 3.65 a day; for less than 465,000 EUR no set found ships more than 3.87 a day',
    );
    // Its interval reaches into that of the build as it is.
    const unsure = changed({
      frontier: SAMPLE.frontier.map((set, i) =>
        i === 1 ? { ...set, throughput: { ...set.throughput, low: 3.44 } } : set,
      ),
    });
    expect(finding(unsure)).toMatch(/^55,000 EUR bring 3\.68 a day; /);
  });
  it('names no set of the answer as enough where none is', () => {
    expect(finding(NOT_REACHED)).toBe(
      '3,000 EUR bring 3.65 a day; whatever is spent, no set found ships more than 3.92 a day',
    );
  });
  it('counts changes where there are no prices', () => {
    expect(finding(NO_PRICES)).toBe(
      '1 change brings 3.65 a day; with fewer than 3 changes no set found ships more than 3.87 a day',
    );
    expect(axisTitle(draw('02-most-for-each-sum', NO_PRICES), 'x')).toBe('changes made');
  });
  it('speaks of days where a day is asked, and is left out with one set', () => {
    expect(finding(byDay('2028-04-10'))).toBe(
      'For less than 465,000 EUR no set found has the last unit out before 2028-04-05 in four of five builds',
    );
    expect(CHARTS.reach['02-most-for-each-sum'](HOLDS)).toBeNull();
  });
});
