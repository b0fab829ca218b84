import { describe, expect, it } from 'vitest';
import { renderPng } from '../../../src/report/canvas.js';
import { CHARTS } from '../../../src/report/charts/of-study.js';
import { csv } from '../../../src/report/files/folder/csv.js';
import { rateFiles, ratesData } from '../../../src/report/files/rate.js';
import { linesOf } from '../../../src/report/first/first.js';
import { rateFirst } from '../../../src/report/first/rate.js';
import { rateTable } from '../../../src/report/terminal/rate.js';
import type { RatePoint, RateResults, RateVerdict } from '../../../src/study/rate/results.js';
import type { Estimate } from '../../../src/study/statistics/estimate.js';
import { proportion } from '../../../src/study/statistics/proportion.js';
import { asRead } from '../samples/read.js';
import { sampleResults } from '../samples/results.js';

const around = (mean: number, half: number): Estimate => ({
  mean,
  low: mean - half,
  high: mean + half,
  level: 0.95,
  n: 30,
});
const stop = (name: string, kind: string, count: number) => ({
  name,
  kind,
  site: 'hall',
  share: proportion(count, 30, 0.95),
});
const point = (perDay: number, verdict: RateVerdict, keep: number, stops: RatePoint['stops']): RatePoint => ({
  perDay,
  verdict,
  why: verdict === 'holds' ? '29 of 30 builds keep up' : 'only 3 of 30 builds keep up',
  replications: 30,
  asked: Math.round(perDay * 130),
  keptUp: proportion(keep, 30, 0.95),
  canShip: { least: perDay < 4 ? 3.42 : null, most: perDay < 4 ? 3.46 : null },
  gridlocks: 0,
  shippedPerDay: around(Math.min(perDay, 3.4), 0.02),
  wip: around(10 * perDay, 0.5),
  leadDays: around(4 * perDay, 0.3),
  stops,
});
/** Invented. */
const SAMPLE: RateResults = {
  format: 'rateproof results',
  version: 1,
  program: '0.0.0',
  study: 'rate',
  scenario: { name: 'Sample, three a day', note: 'Invented', file: 'sample.yaml', digest: 'ab'.repeat(32) },
  seed: '1',
  replications: 30,
  mostReplications: 120,
  level: 0.95,
  rateUnit: { per: 'day', workingDays: 1 },
  sure: 0.8,
  shortfallAllowed: 0.02,
  grid: { from: 3, to: 4, step: 0.1 },
  window: { from: '2027-05-03', to: '2027-10-31', weeks: 26, settleWeeks: 6, isLonger: false, unusual: [] },
  counting: { loads: [], isWhole: true, upsetUnits: 0 },
  plannedPerDay: 4,
  arithmetic: { perDay: 3.9, name: 'booth', kind: 'station' },
  answer: {
    sentence: '3.4 a day is the highest rate that holds.',
    highestPerDay: 3.4,
    abovePerDay: 3.5,
    contradictions: [],
    spread: { share: 0.9, low: 3.3, high: 3.5 },
  },
  points: [
    point(3, 'holds', 30, [stop('booth', 'station', 30)]),
    point(3.4, 'holds', 29, [stop('booth', 'station', 30)]),
    point(3.5, 'not settled', 24, [stop('booth', 'station', 20), stop('ferry', 'lane', 10)]),
    point(4, 'does not hold', 0, [stop('ferry', 'lane', 30)]),
  ],
  changes: [{ fromPerDay: 3.5, toPerDay: 4, before: 'booth', after: 'ferry' }],
  constraint: { perDay: 3.5, ...sampleResults({ stations: 3, weeks: 20 }).constraint! },
  weakest: null,
  lastUnit: [],
  plannedEnd: null,
  ramp: {
    outcome: 'from a week on',
    sentence: 'Ramp: 3.4 a day may be asked from week 5 of the programme on, 2027-03-29, not before.',
    perDay: 3.4,
    begins: '2027-03-29',
    week: 4,
    settleWeeks: 2,
    tried: [
      {
        week: 4,
        begins: '2027-03-29',
        verdict: 'holds',
        why: '30 of 30 builds keep up',
        replications: 30,
        keptUp: proportion(30, 30, 0.95),
      },
    ],
  },
};

describe('the report of a rate study', () => {
  it('prints the answer, the ramp and a row a rate in at most 100 columns', () => {
    const lines = rateTable(SAMPLE).split('\n');
    const first = rateFirst(SAMPLE),
      text = lines.join(' ').replaceAll(/ +/g, ' ');
    expect(lines.slice(0, 2)).toEqual([first.answer, '']);
    for (const { name, brief, more } of linesOf(first))
      expect(text).toContain(`${name}: ${brief} ${more}`.trim());
    expect(lines).toContain('In full: 3.4 a day is the highest rate that holds.');
    expect(lines.filter((line) => line.length > 100)).toEqual([]);
    expect(lines).toContainEqual(
      expect.stringMatching(
        /^ +3\.5 {2}not settled +24 of 30 +3\.40 ±0\.02 +3\.42 +14\.0 ±0\.3 +booth, 20 of 30$/,
      ),
    );
  });

  it('has a picture for each of its questions, whose titles are what was found', () => {
    const titles = Object.values(CHARTS.rate).map((draw) => draw(SAMPLE)?.finding.replaceAll('\u00a0', ' '));
    expect(titles).toEqual([
      '3.4 a day is the highest rate that holds; the plan asks for 4',
      '3.38 a day shipped of 4.2 that averages allow; largest loss: short of crew, 0.75',
      'At 3.5 a day the station top coat booth 6 stops it: one place more at top coat booth 6 brings 0.31 a day',
      'At 3.4 a day a unit takes 13.6 days, and 34.0 units are inside',
      'What is used most goes from "booth" to "ferry" between 3.5 and 4 a day',
    ]);
  });

  it('prints what stops the lowest rate that does not hold, and where its capacity goes', () => {
    const lines = rateTable(SAMPLE).split('\n');
    expect(lines).toContainEqual(
      expect.stringMatching(
        /^What stops it: Above that, the station top coat booth 6\. Tried at 3\.5 a day: one place /,
      ),
    );
    expect(lines).toContainEqual(
      expect.stringMatching(/^one place more at top coat booth 6 +0\.31 {2}0\.27 to 0\.35$/),
    );
    expect(lines).toContainEqual(expect.stringMatching(/^ {2}short of crew +-0\.75 {2}-0\.78 to -0\.72$/));
    expect(rateTable({ ...SAMPLE, constraint: null })).not.toContain('averages allow');
  });

  it('draws the plan of the rate with its name, beside what averages allow', async () => {
    const { configuration, width, height } = CHARTS.rate['01-throughput-against-rate'](SAMPLE),
      texts: string[] = [];
    await renderPng(configuration, width, height, (text) => texts.push(text));
    expect(texts).toEqual(expect.arrayContaining(['plan: 4', 'averages allow 3.9: booth']));
  });

  it('has no picture of what is used most where it is one thing at every rate', () => {
    const points = SAMPLE.points.map((each) => ({ ...each, stops: [stop('booth', 'station', 30)] }));
    expect(CHARTS.rate['03-used-most']({ ...SAMPLE, points })).toBeNull();
    // Nearly one thing at all rates but one is something to look at.
    const [first, ...rest] = points;
    const changed = [...rest, { ...first, stops: [stop('booth', 'station', 20), stop('ferry', 'lane', 10)] }];
    expect(CHARTS.rate['03-used-most']({ ...SAMPLE, points: changed })).not.toBeNull();
  });

  it('gives the shares of what is used most to the bars of each rate, adding to 100 %', () => {
    const { data } = CHARTS.rate['03-used-most'](SAMPLE)!.configuration,
      bars = data.datasets.map((each) => each.data as number[]);
    expect(data.datasets.map(({ label }) => label)).toEqual(['booth', 'ferry']);
    for (let rate = 0; rate < 4; rate++)
      expect(bars.reduce((sum, bar) => sum + bar[rate], 0)).toBeCloseTo(100, 9);
  });

  it('writes results, pictures, a page and the rates, which say the same', async () => {
    const files = await rateFiles(SAMPLE);
    expect([...files.keys()]).toEqual([
      'results.json',
      ...Object.keys(CHARTS.rate).map((name) => `${name}.png`),
      'report.html',
      'rates.csv',
      'losses.csv',
      'trials.csv',
      'report.xlsx',
    ]);
    const html = asRead(files.get('report.html'));
    for (const text of [
      SAMPLE.answer.sentence,
      // In a sentence a day stands in words.
      SAMPLE.ramp.sentence.replace('2027-03-29', '29 March 2027'),
      'At 3.5 a day the station top coat booth 6 stops it: with one place more',
      'What stops it at 3.5 a day: one more of each',
      'What is used most at 3.5 a day',
      'What is used most, by rate',
      'When the last phase may begin',
      '29 of 30 builds keep up',
    ])
      expect(html).toContain(text);
    const [head, first] = csv(ratesData(SAMPLE)).split('\n');
    expect(first.split(',')).toHaveLength(head.split(',').length);
    expect(csv(ratesData(SAMPLE))).toContain('4,does not hold,only 3 of 30 builds keep up,30,520,0,0,');
  });

  it('draws a study of a single rate that does not hold, without a constraint', async () => {
    const single: RateResults = {
      ...SAMPLE,
      grid: { from: 4, to: 4, step: 0.1 },
      arithmetic: null,
      changes: [],
      constraint: null,
      answer: { ...SAMPLE.answer, highestPerDay: null, abovePerDay: 4 },
      points: [point(4, 'does not hold', 0, [])],
    };
    expect((await rateFiles(single)).size).toBe(7);
    expect(rateTable(single)).toContain('nothing');
  });
});
