import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FORMS, mapLayout } from '../../../src/report/map/layout.js';
import { seenIn } from '../../../src/report/map/seen.js';
import type { Shape } from '../../../src/report/map/shapes.js';
import { acrossFrame } from '../../../src/report/map/signs/frame.js';
import { drawGlyph, type Standing } from '../../../src/report/map/signs/glyphs.js';
import { PALETTE } from '../../../src/report/style.js';
import type { Thing } from '../../../src/scenario/reliefs/thing.js';
import type { Results } from '../../../src/study/simulate/results.js';
import { faultsOf, mappedFile, textsOf } from './looked.js';

const demo = mappedFile('scenarios/rescue-tender.yaml'),
  results = JSON.parse(readFileSync('reports/rescue-tender/results.json', 'utf8')) as Results;

/** The demo's results, as if another thing stopped it. */
function stoppedBy(thing: Thing): Results {
  const { constraint } = results;
  if (constraint?.culprit == null) throw new Error('expected results with a culprit');
  return {
    ...results,
    constraint: { ...constraint, culprit: { ...constraint.culprit, thing, what: `more of ${thing.name}` } },
  };
}

describe('what stops the build', () => {
  it.each([
    ['station', 'fault stand', 'coachworks', 2],
    ['room', 'prime booth', 'coachworks', 2],
    ['room', 'coachworks to final plant', 'coachworks', 2],
    ['step', 'lay floor', 'coachworks', 2],
    ['crew', 'painters', 'coachworks', 2],
    ['lane', 'frame shop to coachworks', '', 2],
    ['feeder', 'dashboards', '', 2],
    ['supply', 'power packs', 'final plant', 2],
    ['carrier', 'body dollies', '', 2],
    ['team', 'hand-over team', 'final plant', 2],
    ['hours', 'paint shifts', '', 1],
  ] as const)('where it is the %s %s is said so many times', (kind, name, site, times) => {
    for (const form of Object.values(FORMS)) {
      const drawing = mapLayout(demo.scenario, demo.route, form, seenIn(stoppedBy({ kind, name, site }))),
        said = textsOf(drawing.groups)
          .map(({ text }) => text)
          .join(' ');
      expect(said.match(/stops\s+it/g)).toHaveLength(times);
      expect(faultsOf(drawing)).toEqual([]);
    }
  });
});

describe('what the map says of a run', () => {
  const said = (form: keyof typeof FORMS, of = results): string =>
    textsOf(mapLayout(demo.scenario, demo.route, FORMS[form], seenIn(of)).groups)
      .map(({ text }) => text)
      .join(' ');
  const { constraint } = results,
    judged = constraint?.judged;
  if (constraint == null || judged == null) throw new Error('expected weeks that are judged');

  it.each(Object.keys(FORMS) as (keyof typeof FORMS)[])(
    'adds what stops it up to the whole of its hours, on a %s',
    (form) => {
      const told = /It is at work (\d+) %; else it ([^[]*?is down\s+\d+ %)/.exec(said(form)),
        shares = [told?.[1], ...(told?.[2]?.matchAll(/(\d+) %/g) ?? [])].map((each) =>
          Number(typeof each === 'string' ? each : each?.[1]),
        );
      expect(shares).toHaveLength(4);
      expect(Math.abs(shares.reduce((sum, each) => sum + each, 0) - 100)).toBeLessThanOrEqual(1);
    },
  );

  it('gives no such reason where what stops it is no station', () => {
    expect(
      textsOf(
        mapLayout(
          demo.scenario,
          demo.route,
          FORMS.screen,
          seenIn(stoppedBy({ kind: 'crew', name: 'painters', site: 'coachworks' })),
        ).groups,
      )
        .map(({ text }) => text)
        .join(' '),
    ).not.toContain('It is at work');
  });

  it('marks units that wait as of the whole run only where the rest is of other weeks', () => {
    expect(said('screen')).toMatch(/7\.5 units wait\*/);
    expect(said('screen')).toContain('* Units that wait: over the whole run.');
    const whole = said('screen', { ...results, constraint: { ...constraint, judged: null } });
    expect(whole).toMatch(/7\.5 units wait(?!\*)/);
    expect(whole).not.toContain('*');
  });

  it('says what becomes of those that do not pass, as seen, and that others are noted only where some may be', () => {
    const text = said('screen');
    expect(text).toMatch(/inspect finish 71 in 100 pass 23 mended\s+there/);
    expect(text).toMatch(/final inspection 88 in 100 pass 4 mended\s+there others go on, noted/);
    expect(text.match(/others go on, noted/g)).toHaveLength(1);
    const none = {
      ...results,
      inspections: results.inspections.map((each) => ({
        ...each,
        repairedPer100: { ...each.repairedPer100, mean: 0 },
        scrappedPer100: { ...each.scrappedPer100, mean: 2 },
      })),
    };
    expect(said('screen', none)).not.toMatch(/mended\s+there(?!,)/);
    expect(said('screen', none)).toContain('71 in 100 pass 2 scrapped');
  });

  it('says why rings are full where use is low, and only there', () => {
    expect(said('screen')).toMatch(/bake primer 4 % no room ahead\s+49 %/);
    expect(said('screen')).toMatch(/bake clear 6 % (?!no room)/);
  });

  it('has no digit that the interval does not bear', () => {
    expect(seenIn(results).head).toContain('3.44 a working day shipped');
  });
});

describe('what stands on average', () => {
  const none: Standing = {
    places: 0,
    spaces: 0,
    reworkSpaces: 0,
    inPlaces: undefined,
    inSpaces: undefined,
    isTest: false,
    isInLine: false,
  };
  const drawn = (standing: Partial<Standing>): Shape[] =>
    drawGlyph(acrossFrame(100), 50, 0, { ...none, ...standing }).shapes;
  const filled = (shapes: readonly Shape[]): Shape[] =>
    shapes.filter((shape) => shape.kind !== 'text' && shape.fill === PALETTE.blue);
  const widths = (shapes: readonly Shape[]): number[] =>
    shapes.map((shape) => (shape.kind === 'rect' ? shape.width : 0));

  it.each([
    [0, []],
    [0.2, []],
    [0.3, [3]],
    [1, [6]],
    [1.5, [6, 3]],
    [2.8, [6, 6, 6]],
    [9, [6, 6, 6, 6]],
  ])('%d units fill whole squares and half ones', (inSpaces, expected) => {
    expect(widths(filled(drawn({ spaces: 4, inSpaces })))).toEqual(expected);
  });

  it('fills one ring of three for one unit, and none where nothing was run', () => {
    expect(filled(drawn({ places: 3, inPlaces: 1 }))).toHaveLength(1);
    expect(filled(drawn({ places: 3 }))).toEqual([]);
  });

  it.each([
    [10, 10, 0],
    [11, 1, 1],
    [Infinity, 1, 1],
  ])('%d spaces are %d shapes and %d texts', (spaces, shapes, texts) => {
    const all = drawn({ spaces });
    expect(all.filter(({ kind }) => kind !== 'text')).toHaveLength(shapes);
    expect(all.filter(({ kind }) => kind === 'text')).toHaveLength(texts);
  });
});
