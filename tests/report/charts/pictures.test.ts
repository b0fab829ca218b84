import { describe, expect, it } from 'vitest';
import { renderPng } from '../../../src/report/canvas.js';
import { CHARTS } from '../../../src/report/charts/of-study.js';
import type { Results } from '../../../src/study/simulate/results.js';
import { axisTitle, datasets, draw, results, titleOf } from '../samples/drawn.js';
import { readPng } from '../samples/png.js';
import { sampleResults } from '../samples/results.js';

describe('findings in the titles', () => {
  it.each([
    ['01-throughput-by-week', 'Ships 3.38 a day (3.29 to 3.47), 4 asked'],
    ['02-wip-by-site', '61 units are inside on average, 26.1 of them in paint and finishing works'],
    [
      '04-bottlenecks',
      'Used most in the weeks judged: top coat booth 6, 93.7 % of its time; 93.0 % over the whole run',
    ],
    ['10-changeovers', 'weld cab floor and tunnel 1: 38.0 changeovers in 100 units, 12.4 h a week'],
    ['05-lead-time', 'Half of the units take at most 30.2 days, nine in ten at most 46.8'],
  ])('%s says: %s', (name, title) => {
    expect(titleOf(draw(name))).toBe(title);
  });

  it('03-place-time names the busiest station', () => {
    const busiest = results.bottlenecks
      .filter(({ kind }) => kind === 'station')
      .reduce((a, b) => (b.active.mean > a.active.mean ? b : a));
    expect(titleOf(draw('03-place-time')).replaceAll('\u00a0', ' ')).toMatch(
      new RegExp(`^Busiest station in the weeks judged: ${busiest.name}, [\\d.]+ % of its time on shift$`),
    );
  });

  it('06-buffers names the buffer that is full most often', () => {
    const fullest = results.buffers.reduce((a, b) => ((b.full?.mean ?? 0) > (a.full?.mean ?? 0) ? b : a));
    expect(titleOf(draw('06-buffers'))).toContain(`Full most often: ${fullest.name}, `);
  });

  it('07-first-time-through names the lowest inspection and the rolled yield', () => {
    const lowest = results.inspections.reduce((a, b) => (b.ftt.mean < a.ftt.mean ? b : a));
    expect(titleOf(draw('07-first-time-through'))).toMatch(
      new RegExp(`^Fewest right first time: ${lowest.name}, [\\d.]+ %; over the whole route [\\d.]+ %$`),
    );
  });

  it('say that there is no interval with one replication', () => {
    const one = sampleResults({ stations: 3, weeks: 12, replications: 1 });
    expect(titleOf(draw('01-throughput-by-week', one))).toBe('Ships 3.38 a day (no interval), 4 asked');
    expect(draw('07-first-time-through', one).alt).toContain('no interval, as only 1 build was tried');
  });

  it('fall back on the throughput of the whole run where no rate was asked', () => {
    const steady: Results = {
      ...results,
      answer: {
        ...results.answer,
        askedPerDay: null,
        heldPerDay: null,
        asked: null,
        held: null,
        window: null,
      },
      series: { ...results.series, unit: 'part', asked: results.series.asked.map(() => null) },
    };
    const chart = draw('01-throughput-by-week', steady);
    expect(titleOf(chart)).toBe('Ships 2.96 a day (2.91 to 3.01)');
    expect(datasets(chart).map(({ label }) => label)).not.toContain('asked');
    expect(axisTitle(chart, 'x')).toBe('part of the run');
  });
});

describe('axes', () => {
  it.each([
    ['01-throughput-by-week', 'y', 'units a working day'],
    ['02-wip-by-site', 'y', 'units'],
    ['03-place-time', 'x', 'share of place time on shift, %'],
    ['04-bottlenecks', 'x', 'used, % of time on shift'],
    ['15-losses', 'x', 'units a working day'],
    ['16-trials', 'x', 'gain, units a working day'],
    ['05-lead-time', 'x', 'lead time, days'],
    ['05-lead-time', 'y', 'units in each class of 2 days'],
    ['06-buffers', 'x', 'units'],
    ['07-first-time-through', 'x', 'first-time-through, %'],
  ])('%s has its unit on axis %s', (name, axis, title) => {
    expect(axisTitle(draw(name), axis)).toBe(title);
  });

  it.each(['03-place-time', '04-bottlenecks', '06-buffers', '07-first-time-through'])(
    '%s has bars from zero',
    (name) => {
      expect((draw(name).configuration.options?.scales?.['x'] as { beginAtZero?: boolean }).beginAtZero).toBe(
        true,
      );
    },
  );
});

describe('intervals', () => {
  it.each([
    '01-throughput-by-week',
    '02-wip-by-site',
    '04-bottlenecks',
    '06-buffers',
    '07-first-time-through',
  ])('%s draws them and says of which level they are', (name) => {
    const spans = datasets(draw(name)).filter(({ label }) => label?.includes('95 % interval'));
    expect(spans.length).toBeGreaterThan(0);
    expect(spans.flatMap(({ data }) => data).some((value) => value !== null)).toBe(true);
  });

  it('of first-time-through are the ones in the results', () => {
    const spans = datasets(draw('07-first-time-through'))
      .find(({ label }) => label === 'right first time, %, 95 % interval')
      ?.data.filter((span) => span !== null);
    expect(spans).toEqual(
      [...results.inspections]
        .sort((a, b) => siteRank(a.site) - siteRank(b.site))
        .map(({ ftt }) => [(ftt.low ?? NaN) * 100, (ftt.high ?? NaN) * 100]),
    );
  });

  it('are grey behind the lines at half and at nine in ten of the units, which say so', async () => {
    const { configuration, width, height } = draw('05-lead-time'),
      texts: string[] = [];
    await renderPng(configuration, width, height, (text) => texts.push(text));
    expect(texts).toEqual(expect.arrayContaining(['half: 30.2 days', 'nine in ten: 46.8 days']));
    expect(draw('05-lead-time').alt).toContain('Grey: 95 % interval of the lines, 40 builds');
  });
});

describe('pictures', () => {
  it('are left out where there is nothing to show', () => {
    const bare: Results = {
      ...results,
      constraint: null,
      buffers: [],
      inspections: [],
      bottlenecks: [],
      stations: [],
      changeovers: [],
      leadTime: { ...results.leadTime, counts: [0, 0], edges: [0, 1, 2] },
    };
    expect(
      Object.entries(CHARTS.simulate)
        .filter(([, drawChart]) => drawChart(bare) === null)
        .map(([name]) => name)
        .sort(),
    ).toEqual([
      '03-place-time',
      '04-bottlenecks',
      '05-lead-time',
      '06-buffers',
      '07-first-time-through',
      '10-changeovers',
      '15-losses',
      '16-trials',
    ]);
  });

  const longNames = (index: number): string =>
    `final assembly station for the rear body, left side and roof module number ${index + 1}`;
  it.each([
    ['3 stations', sampleResults({ stations: 3, weeks: 12 })],
    ['60 stations with names of 75 letters', sampleResults({ stations: 60, weeks: 110, names: longNames })],
    ['1 replication', sampleResults({ stations: 5, weeks: 30, replications: 1 })],
  ])(
    'have the right size, ink, and a clean margin that nothing is clipped at: %s',
    async (_, sample) => {
      for (const [name, drawChart] of Object.entries(CHARTS.simulate)) {
        const chart = drawChart(sample);
        if (chart === null) throw new Error(`expected ${name} to be drawn`);
        const png = await renderPng(chart.configuration, chart.width, chart.height);
        // the PNG signature, W3C PNG specification 5.2
        expect([...png.subarray(0, 8)], name).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
        const pixels = readPng(png);
        expect([pixels.width, pixels.height], name).toEqual([2 * chart.width, 2 * chart.height]);
        expect(pixels.ink, name).toBeGreaterThan(0.02);
        expect(pixels.frameIsWhite(8), `${name}: something touches the margin`).toBe(true);
      }
    },
    120_000,
  );

  it('carry a text for those who do not see them: the finding and how it is drawn', () => {
    for (const name of Object.keys(CHARTS.simulate)) {
      const chart = draw(name);
      expect(chart.alt.startsWith(`${chart.finding}. Drawn: `), name).toBe(true);
    }
  });
});

function siteRank(site: string): number {
  return [...new Set(results.inspections.map((each) => each.site))].indexOf(site);
}
