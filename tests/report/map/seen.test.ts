import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FORMS, mapLayout } from '../../../src/report/map/layout.js';
import { seenIn } from '../../../src/report/map/seen.js';
import type { Shape } from '../../../src/report/map/shapes.js';
import { acrossFrame } from '../../../src/report/map/signs/frame.js';
import { drawGlyph, type Standing } from '../../../src/report/map/signs/glyphs.js';
import { PALETTE } from '../../../src/report/style.js';
import type { Thing } from '../../../src/study/reliefs/thing.js';
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
