import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FORMS, mapLayout } from '../../../src/report/map/layout.js';
import {
  markedBuffers,
  markedFactors,
  markedReach,
  markedReliefs,
  markedWhatIfs,
} from '../../../src/report/map/marked.js';
import { type Seen, seenAtRate, seenIn } from '../../../src/report/map/seen.js';
import { PALETTE } from '../../../src/report/style.js';
import type { BufferResults } from '../../../src/study/buffers/results.js';
import type { CompareResults } from '../../../src/study/compare/results.js';
import type { FactorsResults } from '../../../src/study/factors/results.js';
import type { RateResults } from '../../../src/study/rate/results.js';
import type { ReachResults } from '../../../src/study/reach/results.js';
import type { ReliefsResults } from '../../../src/study/reliefs/results.js';
import type { Results } from '../../../src/study/simulate/results.js';
import { HOLDS, NO_PRICES, NOT_REACHED, SAMPLE } from '../samples/reach.js';
import { faultsOf, mappedFile, textsOf } from './looked.js';

const demo = mappedFile('scenarios/rescue-tender.yaml'),
  json = (name: string): unknown => JSON.parse(readFileSync(`reports/${name}/results.json`, 'utf8')),
  reliefs = json('reliefs') as ReliefsResults,
  buffers = json('buffers') as BufferResults,
  compare = json('compare') as CompareResults,
  factors = json('factors') as FactorsResults,
  rate = json('rate') as RateResults,
  reach = json('reach') as ReachResults;
const BOOTH = { kind: 'station', name: 'colour booth', site: 'coachworks' } as const;
const changed = new Map(
  compare.whatIfs.map(({ name }, i) => [name, { things: i === 0 ? [BOOTH] : [], isMore: i !== 0 }]),
);

const drawingOf = (seen: Seen, form: keyof typeof FORMS = 'screen') =>
  mapLayout(demo.scenario, demo.route, FORMS[form], seen);
const said = (seen: Seen): string =>
  textsOf(drawingOf(seen).groups)
    .map(({ text }) => text)
    .join(' ');
/** Shapes of stops that are filled as by units. */
const filled = (seen: Seen): number =>
  drawingOf(seen)
    .groups.filter(({ kind }) => kind === 'stop' || kind === 'lane')
    .flatMap(({ shapes }) => shapes)
    .filter((shape) => shape.kind !== 'text' && shape.fill === PALETTE.blue).length;
const frames = (seen: Seen): number =>
  drawingOf(seen)
    .groups.flatMap(({ shapes }) => shapes)
    .filter((shape) => shape.kind === 'rect' && shape.dash !== undefined).length;

const STUDIES: Readonly<Record<string, Seen>> = {
  reliefs: markedReliefs(reliefs),
  buffers: markedBuffers(buffers),
  compare: markedWhatIfs(compare, changed),
  factors: markedFactors(factors, [{ things: [BOOTH], isMore: false }]),
  rate: seenAtRate(rate),
  reach: markedReach(reach),
};

describe('the map of a study', () => {
  it.each(Object.entries(STUDIES))('of %s has nothing over another in any form', (_, seen) => {
    for (const form of ['screen', 'phone', 'paper'] as const)
      expect(faultsOf(drawingOf(seen, form))).toEqual([]);
  });

  it.each(['reliefs', 'buffers', 'compare', 'factors', 'reach'])(
    'of %s fills no square and says so',
    (study) => {
      const seen = STUDIES[study] ?? markedReliefs(reliefs);
      expect(filled(seen)).toBe(0);
      expect(said(seen)).toContain('squares and rings are empty');
    },
  );

  it('of reliefs marks changes that surely bring more, and says that there are none where none does', () => {
    expect(said(markedReliefs(reliefs))).toMatch(/1: one place more at colour\s+booth, \+0\.26 a day/);
    const none = reliefs.reliefs.map((each) => ({ ...each, gain: { ...each.gain, low: -0.01 } }));
    const seen = markedReliefs({ ...reliefs, reliefs: none });
    expect(seen.marks).toEqual([]);
    expect(frames(seen)).toBe(0);
    expect(said(seen)).toContain('no change that was tried surely brings more');
  });

  it('of reliefs marks nothing whose gain had a part in choosing it', () => {
    const old = reliefs.reliefs.map((each) => ({ ...each, isFresh: false }));
    expect(markedReliefs({ ...reliefs, reliefs: old }).marks).toEqual([]);
  });

  it('of buffers marks each spot with its number, and calls no layout chosen that does not reach the target', () => {
    expect(said(markedBuffers(buffers))).toContain('2 spaces chosen, today 14');
    expect(markedBuffers(buffers).marks).toHaveLength(buffers.spots.length);
    const missed = { ...buffers, answer: { ...buffers.answer, verdict: 'out of reach' as const } };
    expect(said(markedBuffers(missed))).not.toContain('chosen');
  });

  it('of compare marks only what can be pointed at', () => {
    const { marks } = markedWhatIfs(compare, changed);
    expect(marks).toEqual([{ thing: BOOTH, text: 'second colour booth: +0.27 a day' }]);
    const alsoMore = new Map([['second colour booth', { things: [BOOTH], isMore: true }]]);
    expect(markedWhatIfs(compare, alsoMore).marks[0]?.text).toBe(
      'second colour booth (and elsewhere): +0.27 a day',
    );
  });

  it('of compare gives no figure to a difference that is not settled', () => {
    const [first] = compare.whatIfs;
    const whatIfs = [
      {
        ...first,
        compared: first.compared.map((each) => ({
          ...each,
          verdict: 'not settled' as const,
          words: 'not settled',
        })),
      },
    ];
    expect(markedWhatIfs({ ...compare, whatIfs }, changed).marks[0]?.text).toBe(
      'second colour booth: not settled',
    );
  });

  it('of reach marks what is bought where it stands, step by step, and nothing where it holds as it is', () => {
    const { marks, head } = markedReach(SAMPLE);
    expect(head).toMatch(/^As it is it ships 3\.43 a day; .* after which it ships 3\.918 a day$/);
    expect(marks[0]).toEqual({ thing: BOOTH, text: 'step 1: second colour booth, 420,000 EUR, +0.31 a day' });
    expect(marks[2]).toMatchObject({ thing: { kind: 'crew', name: 'bench builders' } });
    expect(markedReach(NOT_REACHED).marks[1]?.text).toBe(
      'step 2: one polish bay more, 36,000 EUR, no gain seen',
    );
    expect(markedReach(NO_PRICES).marks[0]?.text).toBe('step 1: second colour booth, +0.31 a day');
    expect(markedReach(HOLDS).marks).toEqual([]);
    expect(said(markedReach(HOLDS))).toContain('nothing has to be changed');
    // What cannot be pointed at, or is half of the route, is named in the head.
    const many = Array.from({ length: 13 }, (_, i) => ({ ...BOOTH, name: `station ${i}` }));
    for (const things of [[], many]) {
      const possible = SAMPLE.possible.map((each, i) => (i === 0 ? { ...each, things } : each)),
        seen = markedReach({ ...SAMPLE, possible });
      expect(seen.marks).toHaveLength(2);
      expect(seen.head).toMatch(/; not marked: second colour booth$/);
    }
  });

  it('of rate names what stops it at the rate at which it was looked for', () => {
    expect(said(seenAtRate(rate))).toMatch(/at 3\.85 a day the station colour booth stops it/);
    const { constraint } = rate;
    if (constraint === null) throw new Error('expected a constraint');
    const none = seenAtRate({ ...rate, constraint: { ...constraint, culprit: null, judged: null } });
    expect(said(none)).not.toContain('stops it');
    expect(filled(none)).toBe(0);
  });
});

describe('what is told of a place', () => {
  const about = (seen: Seen | undefined, name: string): string =>
    mapLayout(demo.scenario, demo.route, FORMS.screen, seen).groups.find(
      ({ kind, about: words }) => (kind === 'stop' || kind === 'lane') && words.startsWith(`${name}\n`),
    )?.about ?? '';
  const seen = seenIn(json('rescue-tender') as Results);

  it('is what is done, places and spaces; after a run use, what it waits for, units ahead', () => {
    const bare = about(undefined, 'colour booth');
    expect(bare).toContain('ground coat: 2 painters');
    expect(bare).toContain('1 place, 14 spaces ahead, spaces without limit for units sent back');
    expect(bare).not.toMatch(/in use|wait/);
    const run = about(seen, 'colour booth');
    expect(run).toMatch(/in use 81 % of the hours on shift, \d\.\d units in its places on average/);
    expect(run).toMatch(/not in use: short of crew \d+ %, blocked \d+ %/);
    expect(run).toMatch(/7\.5 units wait ahead on average, no space free \d+ % of the time/);
    expect(run).toContain('stops it');
  });

  it('is of a lane its trucks, and how long a unit waits for one', () => {
    expect(about(seen, 'coachworks to final plant')).toMatch(
      /2 trucks, 3 units each.*\n.*\ntrucks busy \d+ % of the time, .*\na unit waits [\d.]+ h for its truck\n.* for loading/,
    );
  });

  it('has for every place of the strip its number in the order of the route, once', () => {
    for (const form of Object.values(FORMS)) {
      const told = mapLayout(demo.scenario, demo.route, form, seen).groups.filter(
        ({ about: words, place }) => words !== '' && place !== undefined,
      );
      const places = told.map(({ place }) => place ?? NaN);
      expect(places.toSorted((a, b) => a - b)).toEqual([...places.keys()]);
    }
  });
});
