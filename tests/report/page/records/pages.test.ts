import { beforeAll, describe, expect, it } from 'vitest';
import { CHARTS } from '../../../../src/report/charts/of-study.js';
import { type PageContent, renderPage } from '../../../../src/report/page/page.js';
import { forecastPage } from '../../../../src/report/page/records/forecast.js';
import { validatePage } from '../../../../src/report/page/records/validate.js';
import type { ForecastResults } from '../../../../src/study/forecast/forecast.js';
import type { ValidateResults } from '../../../../src/study/validate/results.js';
import { asRead, textRows } from '../../samples/read.js';
import { ahead, validated } from '../../samples/records.js';

let slow: ValidateResults, due: ForecastResults;
const html: Record<string, string> = {};
const written = (study: 'validate' | 'forecast', content: PageContent, results: unknown): string => {
  const pictures = Object.entries(CHARTS[study]).flatMap(([name, draw]) => {
    const chart = (draw as (of: unknown) => { finding: string; how: string; alt: string } | null)(results);
    return chart === null ? [] : [{ name, ...chart }];
  });
  return asRead(renderPage(content, pictures, { results: '{}', script: '' }));
};
beforeAll(async () => {
  slow = await validated({ weld: '200 min' }, '<b>shop</b>');
  due = await ahead('30 h');
  html['validate'] = written('validate', validatePage(slow), slow);
  html['forecast'] = written('forecast', forecastPage(due), due);
});

describe.each(['validate', 'forecast'])('the page of %s', (study) => {
  it('has no more than 25 words in bold or large anywhere', () => {
    const bold = [...html[study].matchAll(/<(h1|h2|h3|summary|th)\b[^>]*>(.*?)<\/\1>/gs)].map(
      ([, , text = '']) => text,
    );
    expect(bold.length).toBeGreaterThan(15);
    expect(bold.filter((text) => text.trim().split(/\s+/).length > 25)).toEqual([]);
  });
  it('has no ISO date in its sentences, and links to every section', () => {
    const sentences = html[study].replace(
      /<script.*?<\/script>|<table>.*?<caption>|<\/caption>.*?<\/table>|<dl class="facts">.*?<\/dl>|aria-label="[^"]*"/gs,
      '',
    );
    expect(sentences).toContain('2027');
    expect(/.{30}\b\d{4}-\d\d-\d\d.{10}/.exec(sentences)?.[0]).toBeUndefined();
    const [, side = ''] = /<nav class="side"[^>]*>(.*?)<\/nav>/s.exec(html[study]) ?? [];
    expect([...side.matchAll(/href="#([^"]+)"/g)].map(([, id]) => id)).toEqual(
      [...html[study].matchAll(/<h[12] id="([^"]+)"/g)].map(([, id]) => id),
    );
  });
  it('explains the words of its own, and not what a rate that holds is', () => {
    const words = html[study].slice(html[study].indexOf('<h2 id="words">'));
    expect(words).toContain('<dt>log</dt>');
    expect(words).toContain(study === 'validate' ? '<dt>in its band, agrees</dt>' : '<dt>likely late</dt>');
    expect(words).not.toContain('<dt>holds,');
    expect(words).not.toContain('95 % sure');
  });
  it('names its file and log, and carries no mark-up of a name', () => {
    expect(html[study]).toContain('<dt>Log</dt><dd>made.csv</dd>');
    expect(html[study]).not.toContain('<b>shop');
  });
});

describe('the tables', () => {
  const rowsOf = ({ tables }: PageContent, id: string): string[][] =>
    textRows(tables.find((each) => each.id === id) ?? { rows: [] });
  it('of validate have every use, cause and measure as they were judged', () => {
    const page = validatePage(slow);
    expect(rowsOf(page, 'uses')).toHaveLength(slow.uses.length);
    expect(rowsOf(page, 'causes')[0]?.[0]).toBe(slow.causes[0]?.words);
    const shown = slow.measures.filter(({ topic }) => topic !== 'people');
    expect(rowsOf(page, 'measures').map((row) => row[5])).toEqual(
      shown.map(({ agrees }) => (agrees === null ? 'not judged' : agrees ? 'yes' : 'no')),
    );
    expect(
      rowsOf(page, 'measures').find(([at, what]) => at === 'weld' && what === 'working minutes')?.[5],
    ).toBe('no');
    expect(page.tables.map(({ id }) => id)).not.toContain('odd-rows');
    const odd = {
        ...({ kind: 'duplicate', rule: 'left out', count: 9 } as const),
        lines: [2, 4],
        example: 'A',
        told: 'twice',
      },
      log = { ...slow.log, rows: 90, used: 81, oddities: [odd] };
    expect(rowsOf(validatePage({ ...slow, log }), 'odd-rows')).toEqual([
      ['Duplicate', '9', 'left out', '2, 4 ..', 'Twice', 'A'],
    ]);
  });
  it('of forecast have every order, and each unit in one place', () => {
    const page = forecastPage(due);
    expect(rowsOf(page, 'orders').map(([unit]) => unit)).toEqual(due.orders.map(({ unit }) => unit));
    const units = rowsOf(page, 'standing').map(([, count]) => Number(count));
    expect(units.reduce((sum, each) => sum + each, 0)).toBe(due.orders.length);
  });
});
