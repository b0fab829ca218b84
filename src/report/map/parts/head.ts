import { count } from '../../../study/format.js';
import { INK, MUTED } from '../../style.js';
import { wrap } from '../../text.js';
import type { Group, Shape } from '../shapes.js';
import { duration, hoursText, releaseText } from '../words.js';
import type { World } from '../world.js';
import { acrossFrame, text } from './frame.js';
import { drawGlyph, glyphLength, type Standing } from './glyphs.js';
import { BAR, useBar } from './labels.js';

/** Texts below one another, no wider than the drawing. */
function paragraph(
  world: World,
  words: readonly (readonly [string, number, '600' | 'normal', string])[],
  top: number,
): { shapes: Shape[]; height: number } {
  const { form } = world,
    shapes: Shape[] = [];
  let y = top;
  for (const [line, size, weight, colour] of words)
    for (const each of wrap(line, form.width - 2 * form.margin, size, weight)) {
      y += Math.round(1.32 * size);
      shapes.push(text(form.margin, y, each, { size, weight, colour }));
    }
  return { shapes, height: y - top + 6 };
}

/** Name of the scenario, what is released, what a run has shown. */
export function title(world: World, top: number): { group: Group; height: number } {
  const { scenario, seen, form } = world,
    { shapes, height } = paragraph(
      world,
      [
        [scenario.name, form.nameSize + 6, '600', INK],
        [releaseText(scenario.programme), form.smallSize + 1, 'normal', MUTED],
        ...(seen === undefined
          ? []
          : ([
              [
                seen.answer +
                  (seen.stops === undefined ? '' : `; ${seen.stops.text}`) +
                  ` (${count(seen.replications, 'replication')})`,
                form.smallSize + 1,
                '600',
                INK,
              ],
            ] as const)),
      ],
      top,
    );
  return { group: { kind: 'words', about: '', shapes }, height };
}

/** What does not stand on a line, and what the signs mean. */
export function notes(world: World, top: number): { groups: Group[]; height: number } {
  const { scenario, route, form, seen } = world,
    size = form.smallSize;
  const lines = [
    ...Object.entries(scenario.carriers).map(
      ([name, { count: all, from, to }]) => `${all} ${name}: each stays with a unit from ${from} to ${to}`,
    ),
    ...Object.entries(scenario.teams).map(
      ([name, { crew, people, from, to }]) => `${name}: ${people} ${crew}, the same from ${from} to ${to}`,
    ),
    ...Object.entries(scenario.pulseLines).map(
      ([name, { stations, taktMin }]) =>
        `${name}: ${stations.join(', ')} move on together, every ${duration(taktMin)}`,
    ),
    ...otherPlants(world),
    ...(route.idle.stations.length > 0
      ? [`On no route: ${route.idle.stations.map(({ name, site }) => `${name} (${site})`).join(', ')}`]
      : []),
    ...(route.idle.lanes.length > 0 ? [`Lanes on no route: ${route.idle.lanes.join(', ')}`] : []),
    ...(route.idle.supplies.length > 0
      ? [`Supplies that no step takes: ${route.idle.supplies.join(', ')}`]
      : []),
  ];
  const stays = paragraph(
      world,
      lines.map((line) => [line, size, 'normal', INK] as const),
      top,
    ),
    key = legend(world, top + (lines.length > 0 ? stays.height : 0)),
    source = paragraph(
      world,
      [
        [
          seen === undefined
            ? 'Shares that pass and are sent back are by arithmetic.'
            : `Use and units in places are those of ${seen.weeks}, units that wait those of the whole run, ` +
              'on average; shares that pass are those of first visits.',
          size,
          'normal',
          MUTED,
        ],
      ],
      top + (lines.length > 0 ? stays.height : 0) + key.height,
    );
  return {
    groups: [{ kind: 'words', about: '', shapes: [...stays.shapes, ...key.shapes, ...source.shapes] }],
    height: (lines.length > 0 ? stays.height : 0) + key.height + source.height,
  };
}

/** The signs of the map in a row, broken where it ends. */
function legend({ form, seen }: World, top: number): { shapes: Shape[]; height: number } {
  const size = form.smallSize,
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
  const signs: readonly (readonly [string, Partial<Standing>])[] = [
    ['a station: a ring a place', { places: 2 }],
    ['waiting spaces ahead', { spaces: 3 }],
    ['more than ten: their number, any: no limit', { spaces: 14 }],
    ['spaces for units sent back', { reworkSpaces: 2 }],
    ['looks for faults, so many pass', { isTest: true }],
    ...(seen === undefined
      ? []
      : ([['one unit stands here on average, and half of one', { spaces: 2, inSpaces: 1.5 }]] as const)),
  ];
  let x = form.margin,
    y = top + 12;
  const put = (width: number, words: string, draw: (left: number, middle: number) => Shape[]): void => {
    const label = text(0, 0, words, { size, colour: MUTED }),
      whole = width + 6 + label.width + 18;
    if (x > form.margin && x + whole > form.width - form.margin) {
      x = form.margin;
      y += 24;
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
  if (seen !== undefined)
    put(BAR, 'in use, of the hours on shift', (left, middle) => useBar(left, middle - 3, 0.6));
  return { shapes, height: y - top + 16 };
}

/** Plants that the unit's own way does not come to. */
function otherPlants({ scenario, route }: World): string[] {
  const onWay = new Set(route.main.entries.flatMap((each) => (each.kind === 'stop' ? [each.site] : [])));
  return Object.entries(scenario.sites).flatMap(([name, { zone, calendar, crews }]) =>
    onWay.has(name)
      ? []
      : [
          `${name} (${zone}; ${hoursText(scenario.calendars[calendar ?? ''])}): ` +
            (Object.entries(crews)
              .map(([crew, { headcount }]) => `${crew} ${headcount}`)
              .join(', ') || 'no crews'),
        ],
  );
}
