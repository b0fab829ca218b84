import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CHARTS } from '../../../src/report/charts/of-study.js';
import { valueTold } from '../../../src/report/first/figures.js';
import { definitionsFor } from '../../../src/report/page/definitions.js';
import { type PageContent, renderPage } from '../../../src/report/page/page.js';
import { captioned, isPlaced } from '../../../src/report/page/pictures.js';
import { prose } from '../../../src/report/page/prose.js';
import { buffersPage } from '../../../src/report/page/studies/buffers.js';
import { comparePage } from '../../../src/report/page/studies/compare.js';
import { factorsPage } from '../../../src/report/page/studies/factors.js';
import { ratePage } from '../../../src/report/page/studies/rate.js';
import { reachPage } from '../../../src/report/page/studies/reach.js';
import { reliefsPage } from '../../../src/report/page/studies/reliefs.js';
import { simulatePage } from '../../../src/report/page/studies/simulate.js';
import { asRead } from '../samples/read.js';

/** The pages of the demo, of invented data. */
const PAGES = {
  'rescue-tender': ['simulate', simulatePage],
  compare: ['compare', comparePage],
  factors: ['factors', factorsPage],
  rate: ['rate', ratePage],
  reliefs: ['reliefs', reliefsPage],
  buffers: ['buffers', buffersPage],
  reach: ['reach', reachPage],
} as unknown as Record<string, [keyof typeof CHARTS, (results: unknown) => PageContent]>;

const pageOf = (folder: string) => {
  const [study, page] = PAGES[folder],
    url = new URL(`../../../reports/${folder}/results.json`, import.meta.url),
    results = JSON.parse(readFileSync(url, 'utf8')) as never;
  const pictures = Object.entries(CHARTS[study]).flatMap(([name, draw]) => {
    const chart = (draw as (of: never) => { finding: string; how: string; alt: string } | null)(results);
    return chart === null ? [] : [{ name, ...chart }];
  });
  return asRead(renderPage(page(results), pictures, { results: '{}', script: '' }));
};

describe.each(Object.keys(PAGES))('the page of %s', (folder) => {
  const html = pageOf(folder);

  it('has no more than 25 words in bold or large anywhere', () => {
    const bold = [...html.matchAll(/<(h1|h2|h3|summary|thead|th)\b[^>]*>(.*?)<\/\1>/gs)].map(
      ([, , text = '']) => text,
    );
    expect(bold.length).toBeGreaterThan(15);
    const long = bold
      .flatMap((text) => text.split(/<[^>]*>/))
      .filter((text) => text.trim().split(/\s+/).length > 25);
    expect(long).toEqual([]);
  });

  it('has no ISO date or week in its sentences, which would break at a hyphen', () => {
    const sentences = html
      .replace(
        /<script.*?<\/script>|<table>.*?<caption>|<\/caption>.*?<\/table>|<dl class="facts">.*?<\/dl>/gs,
        '',
      )
      .replace(/"[^"]*"/g, '');
    expect(sentences).toContain('2027');
    expect(/.{30}\b\d{4}-(?:\d\d-\d\d|W\d\d).{10}/.exec(sentences)?.[0]).toBeUndefined();
  });

  it('says that its data are invented, that intervals say nothing of inputs, and why bases differ', () => {
    expect(html).toContain('Note in the scenario: Invented data.');
    expect(html).toMatch(/They say nothing of wrong inputs, nor/);
    expect(html).toContain('Other studies of this scenario try other numbers of builds');
  });

  it('explains words that it uses, and no others', () => {
    const words = html.slice(html.indexOf('<h2 id="words">'));
    expect(words).toContain('<dt>build, replication</dt>');
    if (folder === 'compare') expect(words).not.toContain('first-time-through');
  });

  it('has every picture once, and its contents lead to each section', () => {
    const names = [...html.matchAll(/data-picture="([^"]*)"/g)].map(([, name]) => name);
    expect(new Set(names).size).toBe(names.length);
    const [, side = ''] = /<nav class="side"[^>]*>(.*?)<\/nav>/s.exec(html) ?? [],
      links = [...side.matchAll(/href="#([^"]+)"/g)].map(([, id]) => id),
      heads = [...html.matchAll(/<h[12] id="([^"]+)"/g)].map(([, id]) => id);
    expect(links).toEqual(heads);
  });
});

it('has a place on the page for every picture of every study', () => {
  const names = Object.values(CHARTS).flatMap((charts) => Object.keys(charts));
  expect(names.filter((name) => !isPlaced(name))).toEqual([]);
});

describe('sentences of a page', () => {
  it('have days and weeks in words, but for names in quotes and names of files', () => {
    expect(asRead(prose('from 2027-11-22 to 2028-03-19, 2027-W49'))).toBe(
      'from 22 November 2027 to 19 March 2028, week 49 of 2027',
    );
    const names = '“plan 2027-03-01” and "2027-W49", plan-2027-03-01.yaml, 2027-13-45, a/2027-03-01';
    expect(prose(names)).toBe(names);
    expect(prose('2028-05-01')).not.toContain(' ');
  });

  it('say a value as one says it', () => {
    expect(valueTold('{ low: 30 min, likely: 75 min, high: 4 h }')).toBe('30 min to 4 h, most likely 75 min');
    expect(valueTold('{ exponential: { mean: 45 h } }')).toBe('45 h on average, exponential');
    expect(valueTold('6')).toBe('6');
    expect(valueTold('{ odd: [1, 2] }')).toBe('{ odd: [1, 2] }');
  });
});

describe('the title of a picture', () => {
  const titleOf = (finding: string) => {
    const { title, more } = captioned({ name: '01-a', finding, how: 'as drawn', alt: 'a' });
    return { title, more };
  };
  it('has its interval without the level, which stands with the numbers', () => {
    expect(titleOf('Ships 3.4 a day (95 % CI 3.3 to 3.5, 100 replications)').title).toBe(
      'Ships 3.4 a day (3.3 to 3.5)',
    );
    expect(captioned({ name: '01-a', finding: 'x (95 % CI 1 to 2)', how: 'h', alt: 'a' }).how).toBe(
      'x (95 % CI 1 to 2). h',
    );
  });
  it('ends at a semicolon or comma outside of brackets where it is long, with the rest below', () => {
    const long = `${'word '.repeat(20)}(a; b, c), ${'more '.repeat(9)}end`;
    expect(titleOf(long)).toEqual({
      title: `${'word '.repeat(20)}(a; b, c)`,
      more: `M${'more '.repeat(9).slice(1)}end.`,
    });
    expect(titleOf(`${'word '.repeat(24)}(in brackets of three), end`).more).toContain(
      '(in brackets of three), end.',
    );
  });
});

it('explains gridlock only where it is told', () => {
  const words = (text: string): string[] => definitionsFor([text]).map(({ word }) => word);
  expect(words('ends in gridlock')).toEqual(['gridlock']);
  expect(words('all of it holds together')).toEqual([]);
});
