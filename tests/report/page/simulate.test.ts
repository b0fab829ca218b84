import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { type Picture, renderPage, SAFETY_CAUTION } from '../../../src/report/page/page.js';
import { simulatePage } from '../../../src/report/page/studies/simulate.js';
import { pageTables } from '../../../src/report/page/tables.js';
import type { Results } from '../../../src/study/simulate/results.js';
import { asRead, textRows } from '../samples/read.js';
import { sampleResults } from '../samples/results.js';

const page = (from: Results, pictures: readonly Picture[]): string =>
  asRead(renderPage(simulatePage(from), pictures, CARRIED));
/** In place of the results and the script of pictures. */
const CARRIED = { results: '{"study":"simulate"}', script: 'void 0;' };
const picture = (name: string, finding: string) => ({
  name,
  finding,
  how: 'units by week',
  alt: `${finding}. Drawn: units by week`,
});
const results = sampleResults({ stations: 12 });
const html = page(results, [picture('01-a', 'Ships 3.38 a day'), picture('02-b', 'WIP averages 61.4')]);

describe('the page', () => {
  it('begins with question, answer, how sure, what stops it, what to do, by when, the weakest guess, and one picture', () => {
    const order = [
      `${results.scenario.name}.`,
      'Can it ship 4 a working day',
      '<h1 id="answer">',
      'None of 40 simulated builds ships 4 a day; average 3.29 to 3.47<span class="soft"> (95 % sure).</span>',
      'What stops it</dt>',
      'What to do</dt>',
      'By when</dt>',
      '<a href="#rests">Weakest guess</a>',
      'aria-label="Ships 3.38 a day.',
      'Intervals cover chance, not wrong inputs.',
      '<nav class="side"',
      '<h2 id="more">',
      'By 14 April 2028, at even odds.',
      '<!-- levers -->',
      'Where the capacity goes</h2>',
      'What it rests on</h2>',
      '<!-- map -->',
      'Does it hold?</h2>',
      'aria-label="WIP averages 61.4.',
      'All that was found</h2>',
      results.answer.sentence,
      '<h2 id="tables">',
      '<h2 id="made">',
      '<h2 id="words">',
      '<h2 id="caution">',
    ].map((text) => html.indexOf(text));
    expect(order.filter((at) => at < 0)).toEqual([]);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('has at most twelve words in its answer, and no more in bold ahead of the pictures', () => {
    const answer = /<h1 id="answer">([^<]*)</.exec(html)?.[1] ?? '';
    expect(answer.split(/\s+/).length).toBeLessThanOrEqual(12);
    expect(html.slice(0, html.indexOf('<figure'))).not.toMatch(/<(strong|b)>/);
  });

  it('ends no line within a figure: its spaces do not break', () => {
    const whole = renderPage(simulatePage(results), [], CARRIED);
    expect(whole).toContain('95\u00a0%\u00a0CI 3.29\u00a0to\u00a03.47');
    expect(whole).not.toMatch(/\d %|% CI/);
  });

  it('names scenario, digest, seed, version and replications', () => {
    for (const text of [
      results.scenario.name,
      results.scenario.digest,
      '<dd>spring</dd>',
      'rateproof 0.1.0, results version 1',
      '<dd>40 builds of the whole programme</dd>',
    ])
      expect(html).toContain(text);
  });

  it('says what it rests on and defers to local codes and licensed practice', () => {
    expect(html).toContain('Every number in this scenario is invented.');
    expect(html).toContain(SAFETY_CAUTION);
    expect(SAFETY_CAUTION).toMatch(
      /[Pp]aint booths.*ovens.*lifting.*road tests.*overtime.*local codes.*licensed practice/,
    );
  });

  it('needs no other file and no network: it carries its results and its script, and fetches nothing', () => {
    for (const [, source] of html.matchAll(/(?:src|href)="([^"]*)"/g)) expect(source).toMatch(/^#/);
    expect(html).not.toMatch(/https?:|@import/);
    expect(html).toContain("default-src 'none'");
    const packed = /id="results">([^<]*)</.exec(html)?.[1] ?? '';
    expect(gunzipSync(Buffer.from(packed, 'base64')).toString()).toBe(CARRIED.results);
    expect(html).toContain(`<script>${CARRIED.script}</script>`);
  });

  it('is accessible: language, one h1, a text for every picture, scopes and captions in every table', () => {
    expect(html).toContain('<html lang="en">');
    expect(html.match(/<h1/g)).toHaveLength(1);
    const images = html.match(/<div class="ground" [^>]*>/g) ?? [];
    expect(images).toHaveLength(2);
    for (const image of images) expect(image).toMatch(/ role="img" tabindex="0" aria-label="[^"]{5,}"/);
    const tables = html.split('<table>').slice(1);
    expect(tables).toHaveLength(pageTables(results).length);
    for (const table of tables)
      expect(table).toMatch(
        /^\s*<caption>[^<]+<\/caption>\s*<thead><tr><th scope="col">[\s\S]*?<th scope="row">/,
      );
    expect(html).toContain('name="viewport"');
    expect(html).toContain('@media print');
  });

  it('links to ids that exist, each once', () => {
    for (const [, id] of html.matchAll(/href="#([^"]+)"/g))
      expect(html.split(`id="${id}"`), id).toHaveLength(2);
  });

  it('escapes names, so that a name is never run', () => {
    const evil = '<img src=x onerror=alert(1)>"\'&</td><script>alert(2)</script>';
    const sample = sampleResults({ stations: 4, names: (index) => `${evil} ${index}` });
    const text = page(
      {
        ...sample,
        scenario: { ...sample.scenario, name: evil, note: evil, file: evil, digest: evil },
        seed: evil,
        answer: { ...sample.answer, sentence: evil },
        findings: [{ kind: 'gridlock', text: evil, replications: 1 }],
        crews: [{ ...sample.crews[0], name: evil }],
        lanes: [{ ...sample.lanes[0], name: evil }],
        feeders: [{ ...sample.feeders[0], name: evil }],
      },
      [picture('01-a', evil)],
    );
    expect(text).not.toContain('<img ');
    expect(text.match(/<script/g)).toHaveLength(3);
    expect(text).not.toContain(evil);
    expect(text.split('&lt;script&gt;').length).toBeGreaterThan(20);
  });

  it('says so where there is no date, no finding and no interval', () => {
    const one = sampleResults({ stations: 3, replications: 1 });
    const text = page({ ...one, constraint: null, findings: [], lastUnit: [] }, []);
    for (const each of [
      'Nothing that stops the build was found.',
      'The programme has no last unit',
      'no interval, 1 replication',
    ])
      expect(text).toContain(each);
    expect(text).not.toContain('<figure');
  });
});

describe('tables of the page', () => {
  it('have a cell for every head, and a state column for each of the ten states', () => {
    const tables = pageTables(results);
    for (const { id, head, rows } of tables)
      for (const row of rows) expect(row, id).toHaveLength(head.length);
    expect(tables.find(({ id }) => id === 'stations')?.head).toEqual(
      expect.arrayContaining(['working, %', 'off shift, %', 'working over the whole run, %']),
    );
    expect(tables.find(({ id }) => id === 'stations')?.head).toHaveLength(3 + 10 + 2);
  });

  it('list assumptions, guesses first, up to a number of rows, and say how many there are', () => {
    const said = Array.from({ length: 250 }, (_, i) => ({
      path: `route[${i}].work`,
      words: `the work of step ${i}`,
      value: '20 min',
      basis: i === 249 ? ('guess' as const) : ('estimate' as const),
      note: i === 0 ? 'asked' : null,
    }));
    const text = page({ ...results, assumptions: said }, []);
    const own = pageTables({ ...results, assumptions: said }).find(({ id }) => id === 'assumptions')!;
    expect(textRows(own).slice(0, 2)).toEqual([
      ['the work of step 249', '20 min', 'guess', '', 'route[249].work'],
      ['the work of step 0', '20 min', 'estimate', 'asked', 'route[0].work'],
    ]);
    expect(own.rows).toHaveLength(200);
    expect(own.note).toBe(
      'Values of which the scenario says where they come from: 0 measured, 249 estimated, 1 guessed; guesses first. The first 200 of 250 values; all are in results.json.',
    );
    expect(text).toContain(
      'The scenario states the source of 250 values: 0 measured, 249 estimated, 1 guessed.',
    );
    expect(html).not.toContain('Assumptions');
  });

  it('are left out when empty', () => {
    expect(
      pageTables({
        ...results,
        feeders: [],
        supplies: [],
        costs: null,
        lanes: [],
        carriers: [],
        teams: [],
        defects: [],
        escapes: [],
        holds: [],
        comparisons: [],
        rework: [],
        failures: [],
        outages: [],
        recoveries: [],
        pulseLines: [],
      }).map(({ id }) => id),
    ).toEqual([
      'overall',
      'trials',
      'losses',
      'waiting',
      'bottlenecks',
      'momentary',
      'wip',
      'stations',
      'changeovers',
      'crews',
      'inspections',
      'buffers',
    ]);
  });
});
