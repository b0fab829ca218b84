import { describe, expect, it } from 'vitest';
import { factorsFiles } from '../../../src/report/files/factors.js';
import { factorsFirst } from '../../../src/report/first/factors.js';
import { markedFactors } from '../../../src/report/map/marked.js';
import { factorsTable } from '../../../src/report/terminal/factors.js';
import { judged } from '../../../src/study/compare/verdict.js';
import type { FactorsResults } from '../../../src/study/factors/results.js';
import { FACTORS, studyOf, YAML } from '../../study/factors/made.js';
import { asRead } from '../samples/read.js';

/** With chance behind both steps. */
const CHANCE = YAML.replace('quantity: 4', 'quantity: 20')
    .replace('trim bench: {}', 'trim bench: {}, look bench: {}')
    .replace(' }]\n', ' }, { step: look, at: look bench, work: { low: 10 min, high: 90 min } }]\n'),
  results = await studyOf(FACTORS, CHANCE, 6);

describe('the report of an experiment', async () => {
  const files = await factorsFiles(results),
    page = asRead(files.get('report.html'));

  it('has pictures, a page, data and tables', () => {
    expect([...files.keys()].sort()).toEqual([
      '01-effects.png',
      '02-together.png',
      '03-effects-elsewhere.png',
      'combinations.csv',
      'effects.csv',
      'report.html',
      'report.xlsx',
      'results.json',
      'runs.csv',
    ]);
    for (const name of files.keys())
      if (name.endsWith('.png')) expect(page).toContain(`data-picture="${name.slice(0, -4)}"`);
  });

  it('has a row for each effect and measure, each combination and measure, each combination and replication', () => {
    const rows = (name: string): string[] => String(files.get(name)).trim().split('\n');
    expect(rows('effects.csv')).toHaveLength(1 + 3 * 6);
    expect(rows('effects.csv')[1]).toMatch(/^build from 2 h to 1 h,alone,build,2 h,1 h,A,,throughput,/);
    expect(rows('combinations.csv')).toHaveLength(1 + 4 * 6);
    expect(rows('combinations.csv')[0]).toMatch(/^build,trim,measure,/);
    expect(rows('runs.csv')).toHaveLength(1 + 4 * 6);
    for (const name of ['effects.csv', 'combinations.csv', 'runs.csv'])
      expect(new Set(rows(name).map((row) => row.replace(/"[^"]*"/g, '').split(',').length)).size).toBe(1);
  });

  it('tells levels, changes and the level of the intervals, and escapes names and notes', () => {
    expect(page).toContain('slow, &lt;and&gt; sure');
    expect(page).toContain('route[0].work');
    expect(page).toContain('so that all 36 effects and differences hold together with 95 % (Bonferroni)');
    expect(page).not.toContain('What is seen as one');
  });

  it('prints tables of at most 100 columns with the answer first', () => {
    const lines = factorsTable(results).split('\n');
    expect(lines[0]).toBe(factorsFirst(results).answer);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
    expect(lines.filter((line) => line.startsWith('  build with trim '))).toHaveLength(6);
    expect(lines.filter((line) => line.endsWith(' most'))).toHaveLength(1);
  });

  it('says of a part of the combinations what is seen as one, and marks the effects that are', async () => {
    const half = await studyOf(
        `design: half${FACTORS}  room: { change: sites.hall.stations.trim bench.buffer, levels: [0, 3] }\n`,
        CHANCE,
      ),
      text = factorsTable(half),
      read = asRead((await factorsFiles(half)).get('report.html'));
    expect(text).toContain('design: 2^(3-1), resolution III, C = AB; A build, B trim, C room');
    expect(text).toContain('seen as one: A + BC; B + AC; C + AB');
    expect(text).toContain('  build from 2 h to 1 h * ');
    expect(read).toContain('What is seen as one');
    expect(read).toContain('Box, Hunter &amp; Hunter 2005');
    expect(read).not.toContain('data-picture="02-together"');
  });
});

describe('the first screen of an experiment', () => {
  /** With other intervals of the throughput, for build and trim by themselves and together; a zone of 0.1. */
  const withEffects = (...of: readonly (readonly [number, number])[]): FactorsResults => ({
    ...results,
    // Effects alone: what each does to the scenario as it is, is another number.
    combinations: results.combinations.map((each) => ({ ...each, isBase: false })),
    effects: results.effects.map((effect, e) => ({
      ...effect,
      measures: effect.measures.map((each, m) => {
        if (m > 0) return each;
        const [low, high] = of[e],
          difference = { ...each.difference, mean: (low + high) / 2, low, high };
        return {
          ...each,
          difference,
          ...judged(difference, { better: 'more', zone: { share: 0.01, amount: 0.1 } }),
        };
      }),
    })),
  });
  const first = (...of: readonly (readonly [number, number])[]) => factorsFirst(withEffects(...of));

  it('names what matters most only where that is sure', () => {
    expect(first([0.3, 0.5], [0.1, 0.2], [0, 0.05]).answer).toBe(
      'Most: build from 2 h to 1 h, 0.40 a day more.',
    );
    expect(first([0.3, 0.5], [-0.4, 0.2], [0, 0.05]).answer).toBe('Largest seen: build, 0.40 a day more.');
    expect(first([-0.5, -0.3], [0.1, 0.2], [0, 0.05]).answer).toContain('0.40 a day less.');
    expect(first([-0.3, 0.5], [-0.4, 0.2], [0, 0.05]).answer).toBe(
      'None of them surely changes what it ships.',
    );
    expect(first([-0.3, 0.5], [-0.4, 0.2], [0.2, 0.4]).answer).toBe(
      'None by itself surely changes what it ships; two together do.',
    );
  });

  it('gives what matters most as it is with all else as today, and says what the picture is an average of', () => {
    const { answer, sure, picture } = factorsFirst({
      ...withEffects([0.3, 0.5], [0.1, 0.2], [0, 0.05]),
      combinations: results.combinations,
    });
    expect(answer).toBe('Most: build from 2 h to 1 h, 9 a day more.');
    expect(sure.brief).toMatch(/^That is .*, all else as today \(95 % sure, \d+ simulated builds\)\.$/);
    expect(sure.more).toMatch(/^Today it ships /);
    expect(picture.more).toContain('on average over the values of the other;');
  });

  it('says what two do beyond their sum, and what does not matter, only by whole intervals', () => {
    expect(first([0.3, 0.5], [0.1, 0.2], [0.2, 0.4]).toDo.more).toContain(
      'Build with trim: together 0.30 a day more (0.20 to 0.40) than their sum.',
    );
    expect(first([0.3, 0.5], [0.1, 0.2], [-0.2, 0.4]).toDo.more).not.toContain('their sum');
    expect(first([0.3, 0.5], [-0.05, 0.05], [0, 0.05]).toDo.more).toContain(
      'Makes no difference that matters: trim.',
    );
    expect(first([0.3, 0.5], [-0.05, 0.05], [0, 0.25]).toDo.more).not.toContain('no difference that matters');
  });

  it('tells dates and money of the best against what is, and whether another may ship as much', () => {
    const { toDo, when, question, about } = factorsFirst({
      ...results,
      best: { combination: 3, notBehind: [1], nearest: 1 },
    });
    expect(about).toBe('four units. “Invented data.”');
    expect(question).toBe('What changes most what it ships: build or trim?');
    expect(toDo.brief).toMatch(/^Begin with “build 1 h” \(price not given\): \d+ a day more\.$/);
    expect(toDo.more).toContain(' It has the fewest changes of those that may ship the most. ');
    expect(when.brief).toMatch(/^Last unit by \d+ \w+ \d{4} with it, /);
    expect(toDo.more).toContain('the price of the change not counted');
    expect(
      factorsFirst({ ...results, best: { combination: 0, notBehind: [], nearest: null } }),
    ).toMatchObject({
      toDo: {
        brief: 'Keep today’s build: it ships the most.',
        more: expect.stringMatching(/^Surely more than any other combination\./) as string,
      },
      when: { brief: '', more: '' },
    });
  });

  it('uses no word that stops a manager, and no interval of 99 %', () => {
    const told = factorsFirst(results);
    expect(JSON.stringify(told)).not.toMatch(
      /\bCI\b|99\.?\d* %|replication|\bpairs?\b|random|keeps? up|arithmetic|\bP\d\d\b/,
    );
    expect(told.about).toContain('“Invented data.”');
    expect(told.answer.split(/\s+/).length).toBeLessThanOrEqual(12);
  });
});

describe('the map of an experiment', () => {
  it('marks what a factor changes with its effect, and only names one that changes nearly everything', () => {
    const things = (many: number) =>
      Array.from({ length: many }, (_, i) => ({ kind: 'station' as const, name: `s${i}`, site: 'hall' }));
    const { head, marks } = markedFactors(results, [
      { things: things(1), isMore: false },
      { things: things(13), isMore: false },
    ]);
    expect(marks).toHaveLength(1);
    expect(marks[0].text).toMatch(/^build from 2 h to 1 h: \+/);
    expect(head).toContain('but for what changes too much to be marked (trim from 1 h to 2 h)');
  });
});
