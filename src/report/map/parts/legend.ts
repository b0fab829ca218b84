import { MUTED } from '../../style.js';
import type { Seen } from '../seen.js';
import type { Shape } from '../shapes.js';
import { type Bracket, drawBracket } from '../signs/brackets.js';
import { ringed } from '../signs/ends.js';
import { acrossFrame, text } from '../signs/frame.js';
import { drawGlyph, glyphLength, MOST_DRAWN, mostDrawn, type Standing } from '../signs/glyphs.js';
import { BAR, BROKEN, useBar } from '../signs/labels.js';
import { arrivalSpaces, standingAt } from '../standing.js';
import type { World } from '../world.js';

const BRACKETS: readonly (readonly [Bracket['kind'], string])[] = [
  ['carrier', 'goes with the unit and comes back'],
  ['team', 'the same people'],
  ['pulse line', 'units move on together'],
];

const LONG = 36;

function standingSign(counted: Seen['counted'] = 'nowhere'): [string, Partial<Standing>][] {
  const words = 'filled: a unit there on average, at work or held';
  if (counted === 'nowhere') return [];
  return [[words, counted === 'everywhere' ? { spaces: 2, inSpaces: 1.5 } : { places: 2, inPlaces: 1.5 }]];
}

/** The signs of the map in a row, broken where it ends. */
export function legend(world: World, top: number): { shapes: Shape[]; height: number } {
  const { form, seen, brackets, strip, scenario, route } = world,
    size = form.smallSize,
    shapes: Shape[] = [],
    frame = { isAcross: true },
    none: Standing = {
      places: 0,
      spaces: 0,
      reworkSpaces: 0,
      inPlaces: undefined,
      inSpaces: undefined,
      isTest: false,
      isInLine: false,
    };
  // Only those that stand on this map.
  const stands = strip.cells.flatMap((_, cell) => standingAt(world, cell) ?? []),
    spaces = [
      ...stands.flatMap((each) => [each.spaces, each.reworkSpaces]),
      ...Object.values(scenario.lanes).flatMap((lane) => [lane.bank ?? Infinity, arrivalSpaces(lane)]),
    ],
    isAcross = form.columns === 0,
    hasMany =
      spaces.some((many) => many > MOST_DRAWN) ||
      stands.some(
        ({ places, reworkSpaces }) => places > MOST_DRAWN || reworkSpaces > mostDrawn({ isAcross }, 'rework'),
      ),
    has = (is: boolean, words: string, sign: Partial<Standing>): [string, Partial<Standing>][] =>
      is ? [[words, sign]] : [];
  const signs: readonly (readonly [string, Partial<Standing>])[] = [
    ['a station: a ring a place', { places: 2 }],
    ...has(
      spaces.some((many) => many > 0 && many <= MOST_DRAWN),
      'waiting spaces ahead',
      { spaces: 3 },
    ),
    ...has(hasMany, 'a number in a box: so many; ∞: no limit', { spaces: 14 }),
    ...has(
      stands.some(({ reworkSpaces }) => reworkSpaces > 0),
      'waiting spaces for units sent back',
      { reworkSpaces: 2 },
    ),
    ...has(
      stands.some(({ isTest }) => isTest),
      'looks for faults: so many pass, nothing found',
      { isTest: true },
    ),
    ...standingSign(seen?.counted),
  ];
  let x = form.margin,
    y = top + 12;
  const put = (width: number, words: string, draw: (left: number, middle: number) => Shape[]): void => {
    const label = text(0, 0, words, { size, colour: MUTED }),
      whole = width + 6 + label.width + 18;
    if (x > form.margin && x + whole > form.width - form.margin) {
      x = form.margin;
      y += form.isDense ? 19 : 24;
    }
    shapes.push(...draw(x, y), text(x + width + 6, y + 3.5, words, { size, colour: MUTED }));
    x += whole;
  };
  for (const [words, sign] of signs) {
    const standing = { ...none, ...sign };
    put(
      glyphLength(frame, standing) + 2,
      words,
      (left, middle) =>
        drawGlyph(acrossFrame(middle + (standing.reworkSpaces > 0 ? -13 : 0)), left, 0, standing).shapes,
    );
  }
  if ([route.main, ...route.sides].some(({ backs }) => backs.length > 0))
    put(16, 'sent back, so many', (left, middle) => [
      {
        kind: 'path',
        d:
          `M${left + 15} ${middle - 4} Q${left + 15} ${middle + 4} ${left + 8} ${middle + 4} ` +
          `Q${left + 2} ${middle + 4} ${left + 2} ${middle - 3}`,
        stroke: MUTED,
        strokeWidth: 1.1,
        fill: 'none',
      },
      {
        kind: 'path',
        d: `M${left + 2} ${middle - 5} L${left - 1} ${middle} L${left + 5} ${middle} Z`,
        fill: MUTED,
      },
    ]);
  for (const [kind, words] of BRACKETS)
    if (brackets.some((each) => each.kind === kind))
      put(LONG + 6, words, (left, middle) =>
        drawBracket(
          acrossFrame(middle + 1),
          0,
          { kind },
          {
            from: left + 1,
            to: left + LONG,
            isBegin: true,
            isEnd: true,
            ticks: kind === 'pulse line' ? [left + 5, left + LONG / 2 + 0.5, left + LONG - 4] : [],
          },
        ),
      );
  if (seen !== undefined && seen.marks.length > 0)
    put(20, 'changed in this study', (left, middle) => [
      { kind: 'rect', x: left + 1, y: middle - 6, width: 18, height: 11, fill: '#ffffff', ...BROKEN },
    ]);
  if (seen !== undefined && seen.counted !== 'nowhere')
    put(BAR, 'at work, of the hours on shift of its places', (left, middle) => useBar(left, middle - 3, 0.6));
  if (isAcross && strip.cells.length > 0)
    put(19, 'the route goes on in the row that begins with this letter', (left, middle) =>
      ringed('A', left + 9.5, middle),
    );
  return { shapes, height: y - top + (form.isDense ? 12 : 16) };
}
