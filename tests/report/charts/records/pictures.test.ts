import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { renderPng } from '../../../../src/report/canvas.js';
import type { Chart, DrawChart } from '../../../../src/report/charts/chart.js';
import { CHARTS } from '../../../../src/report/charts/of-study.js';
import { LAYOUT } from '../../../../src/report/style.js';
import type { ForecastResults } from '../../../../src/study/forecast/forecast.js';
import type { ValidateResults } from '../../../../src/study/validate/results.js';
import { readPng } from '../../samples/png.js';
import { ahead, validated } from '../../samples/records.js';

let slow: ValidateResults, due: ForecastResults, open: ForecastResults;
beforeAll(async () => {
  slow = await validated({ weld: '200 min' });
  due = await ahead('30 h');
  open = await ahead('');
});
const wide = { ...LAYOUT };
afterEach(() => {
  Object.assign(LAYOUT, wide);
});
const PHONE = { width: 346, hasTitles: false, mostRows: 10 };

/** Every name as long as may be. */
const long = (name: string): string => `${name} ${'of a very long name '.repeat(4)}`.trim();
const withLongNames = (results: ValidateResults): ValidateResults => ({
  ...results,
  measures: results.measures.map((each) => ({ ...each, of: long(each.of), what: long(each.what) })),
  wipByDay: results.wipByDay.map((each) => ({ ...each, place: long(each.place) })),
});

const withLongOrders = (results: ForecastResults): ForecastResults => ({
  ...results,
  orders: results.orders.map((each) => ({ ...each, unit: long(each.unit), fourInFive: null })),
});

async function look(chart: Chart): Promise<void> {
  const pixels = readPng(await renderPng(chart.configuration, chart.width, chart.height));
  expect([pixels.width, pixels.height]).toEqual([2 * chart.width, 2 * chart.height]);
  expect(pixels.frameIsWhite(1)).toBe(true);
  expect(pixels.ink).toBeGreaterThan(0.002);
}

describe('pictures of validate and forecast', { timeout: 60_000 }, () => {
  it.each([
    ['a desk', {}],
    ['a phone', PHONE],
  ])('are cut at no edge on %s, with names of any length', async (_, layout) => {
    const charts = [
      ...Object.values(CHARTS.validate).map((draw) => () => draw(withLongNames(slow))),
      ...Object.values(CHARTS.forecast).map((draw) => () => draw(withLongOrders(due))),
      () => CHARTS.forecast['01-orders'](open),
    ];
    for (const draw of charts) {
      Object.assign(LAYOUT, wide, layout);
      await look(draw()!);
    }
  });

  it('have short titles and notes, in plain words', () => {
    Object.assign(LAYOUT, PHONE);
    for (const [study, results] of [
      ['validate', slow],
      ['forecast', due],
      ['forecast', open],
    ] as const)
      for (const draw of Object.values(CHARTS[study]) as DrawChart<unknown>[]) {
        const { finding, how } = draw(results)!;
        expect(finding.length).toBeLessThanOrEqual(110);
        expect(how.length).toBeLessThanOrEqual(240);
        expect(`${finding} ${how}`).not.toMatch(/\bCI\b|\bP\d\d\b|\d\.\d{3}|undefined|NaN/);
      }
  });

  const datasetOf = ({ configuration }: Chart, label: RegExp): unknown[] =>
    configuration.data.datasets.find((each) => label.test(each.label ?? ''))!.data;

  it('show the slower step farthest out, by as many per cent as the log has it longer', () => {
    const chart = CHARTS.validate['03-step-times'](slow)!,
      weld = slow.measures.find(({ of, topic }) => of === 'weld' && topic === 'minutes')!;
    expect(chart.configuration.data.labels?.[0]).toBe('weld');
    const percent = 100 * (weld.real! / weld.simulated!.middle - 1);
    expect(datasetOf(chart, /^log against model, %$/)[0]).toBeCloseTo(percent, 9);
    expect(chart.finding).toMatch(new RegExp(`^Weld takes ${Math.round(percent)} % more time in the log`));
    expect(CHARTS.validate['02-measures-in-bands'](slow)!.configuration.data.labels).toContain(
      'weld: working minutes',
    );
  });

  it('show units shipped as the results have them, and the log against the middle of the model', () => {
    const chart = CHARTS.validate['01-shipped-by-day'](slow)!,
      values = (label: RegExp): number[] => datasetOf(chart, label).map((each) => (each as { y: number }).y);
    expect(values(/^units shipped, added up$/)).toEqual(slow.byDay.map(({ real }) => real));
    expect(values(/^units ahead of the model$/)).toEqual(slow.byDay.map(({ real, middle }) => real - middle));
    expect(values(/^units ahead of the model, 10 of 10 builds low$/)).toEqual(
      slow.byDay.map(({ low, middle }) => low - middle),
    );
  });

  it('show an order at its days, in the order of the results, ten on a page at first', () => {
    Object.assign(LAYOUT, PHONE);
    const chart = CHARTS.forecast['01-orders'](due)!;
    expect(LAYOUT.isCut).toBe(true);
    expect(chart.configuration.data.labels).toHaveLength(10);
    const day = (date: string): number => (Date.parse(date) - Date.parse(due.at)) / 86_400_000;
    expect(datasetOf(chart, /^due, days after /)).toEqual(
      due.orders.slice(0, 10).map((each) => day(each.due!)),
    );
    expect(datasetOf(chart, /^out in four of five, /)).toEqual(
      due.orders.slice(0, 10).map(({ fourInFive }) => day(fourInFive!)),
    );
    expect(CHARTS.forecast['01-orders']({ ...due, orders: [] })).toBeNull();
  });
});
