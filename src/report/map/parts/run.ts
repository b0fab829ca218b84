import { INK } from '../../style.js';
import { aboutCell } from '../about.js';
import { type Group, polyline, type Shape } from '../shapes.js';
import { type Arc, drawArc } from '../signs/backs.js';
import { block, type Frame } from '../signs/frame.js';
import { drawGlyph } from '../signs/glyphs.js';
import { drawStretch, WAY_STROKE } from '../signs/side-lines.js';
import { standingAt } from '../standing.js';
import { byText } from '../words.js';
import type { World } from '../world.js';

/** Where a cell lies along a strip, and where its spaces and marks begin. */
export interface Spread {
  readonly from: number;
  readonly to: number;
  readonly glyph: number;
}
/** A stretch of the strip that is drawn in one piece: cells that follow each other, in one plant. */
export interface Run {
  readonly frame: Frame;
  readonly first: number;
  readonly last: number;
  readonly spreads: ReadonlyMap<number, Spread>;
  /** Distance of a track from the way. */
  readonly trackAt: (track: number) => number;
}

/** Where the marks of a cell are, for what leads to them. */
export interface Mark {
  readonly middle: number;
  readonly end: number;
}

/** Lines, arcs, spaces and marks of a stretch, in drawing order. */
export function drawRun(
  world: World,
  run: Run,
  arcs: readonly Arc[],
): { readonly groups: Group[]; readonly marks: ReadonlyMap<number, Mark> } {
  const { frame, spreads, trackAt } = run,
    { cells } = world.strip,
    marks = new Map<number, Mark>(),
    stops: Group[] = [];
  for (const [cell, { from, to, glyph }] of spreads) {
    const here = cells[cell],
      standing = standingAt(world, cell);
    if (here === undefined) continue;
    const c = trackAt(here.track);
    if (standing === undefined || here.what.kind === 'trip') {
      marks.set(cell, { middle: (from + to) / 2, end: to });
      stops.push({
        kind: 'lane',
        about: aboutCell(world, cell),
        place: cell,
        shapes: drawRoadPiece(frame, from, to, c),
      });
      continue;
    }
    const { shapes, middle, end } = drawGlyph(frame, glyph, c, standing);
    marks.set(cell, { middle, end });
    stops.push({
      kind: 'stop',
      about: aboutCell(world, cell),
      place: cell,
      shapes,
    });
  }
  return {
    groups: [
      ...sideLines(world, run),
      { kind: 'line', about: '', shapes: drawWay(world, run) },
      ...arcs.flatMap((arc): Group[] => {
        const from = marks.get(arc.fromCell)?.middle,
          to = marks.get(arc.toCell)?.middle,
          [low, high] = rangeOf(run);
        if (arc.toCell > high || arc.fromCell < low) return [];
        const c = trackAt(cells[arc.fromCell]?.track ?? 0);
        return [
          {
            kind: 'back',
            about: `${arc.from} back to ${arc.to}${byText(arc.by)}`,
            shapes: drawArc(frame, c, arc, { from, to, first: run.first, last: run.last }),
          },
        ];
      }),
      ...stops,
    ],
    marks,
  };
}

const rangeOf = ({ spreads }: Run): [number, number] => [
  Math.min(...spreads.keys()),
  Math.max(...spreads.keys()),
];

function sideLines({ strip }: World, run: Run): Group[] {
  const { frame, spreads, trackAt, first, last } = run,
    [low, high] = rangeOf(run),
    trackOf = (cell: number): number => trackAt(strip.cells[cell]?.track ?? 0);
  return strip.sides.flatMap(({ line, track, cells, leaves, joins }): Group[] => {
    const begin = leaves >= 0 ? leaves : (cells[0] ?? -1),
      end = joins >= 0 ? joins : (cells.at(-1) ?? -1);
    if (cells.length === 0 || end < low || begin > high) return [];
    const start = spreads.get(begin),
      stop = spreads.get(end);
    return [
      {
        kind: 'side',
        about: line.name,
        shapes: drawStretch(frame, {
          track: trackAt(track),
          from: start === undefined ? first : leaves >= 0 ? start.to : start.from + 2,
          to: stop === undefined ? last : joins >= 0 ? stop.from : stop.to,
          leaves: start !== undefined && leaves >= 0 ? trackOf(leaves) : undefined,
          joins: stop !== undefined && joins >= 0 ? trackOf(joins) : undefined,
        }),
      },
    ];
  });
}

/** The unit's way: a bar where units begin, an arrow where they go on. */
function drawWay({ strip }: World, run: Run): Shape[] {
  const { frame, first, last } = run,
    [low] = rangeOf(run),
    own = strip.cells.findIndex(({ side }) => side === -1),
    isBegin = low <= own && run.spreads.has(own),
    start = isBegin ? (run.spreads.get(own)?.from ?? first) : first;
  const shapes: Shape[] = [
    {
      kind: 'path',
      d: polyline([frame.at(start, 0), frame.at(last - 4, 0)]),
      stroke: INK,
      strokeWidth: WAY_STROKE,
      fill: 'none',
    },
    {
      kind: 'path',
      d: polyline([frame.at(last, 0), frame.at(last - 7, 5), frame.at(last - 7, -5)], ' Z'),
      fill: INK,
    },
  ];
  if (isBegin) shapes.push(block(frame, start, 0, 3, 14, { fill: INK }));
  return shapes;
}

/** A lane of a side line: two edges of a road. */
const drawRoadPiece = (frame: Frame, from: number, to: number, c: number): Shape[] => [
  block(frame, (from + to) / 2, c, to - from - 6, 8, { fill: '#ffffff' }),
  ...[4, -4].map(
    (edge): Shape => ({
      kind: 'path',
      d: polyline([frame.at(from + 3, c + edge), frame.at(to - 3, c + edge)]),
      stroke: INK,
      strokeWidth: 1.2,
      fill: 'none',
    }),
  ),
];
