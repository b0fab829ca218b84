import { INK, MUTED } from '../../style.js';
import type { Group, Shape } from '../shapes.js';
import { polyline } from '../shapes.js';
import { sentBackText, toldAt } from '../told.js';
import type { Section, World } from '../world.js';
import { type Arc, reachOf } from './backs.js';
import { balanced } from './breaks.js';
import { crossing } from './crossing.js';
import { downFrame, text } from './frame.js';
import { glyphLength } from './glyphs.js';
import { drawLabel, type Label, labelOf, NO_LABEL } from './labels.js';
import { drawLane, laneTold } from './lane.js';
import { plantHead } from './plant-head.js';
import { drawRun, GROUND, type Spread } from './run.js';
import { standingAt } from './standing.js';

const TRACK = 22,
  GUTTER = 26;

type Item =
  | { readonly kind: 'head'; readonly section: number }
  | { readonly kind: 'cell'; readonly section: number; readonly cell: number }
  | { readonly kind: 'lane'; readonly section: number; readonly cell: number };

/** The strip down the page, in as many columns as the form has, from `top` on. Tells its height. */
export function down(
  world: World,
  sections: readonly Section[],
  arcs: readonly Arc[],
  top: number,
): { groups: Group[]; height: number } {
  const { form, strip } = world,
    count = Math.max(1, form.columns),
    inner = (form.width - 2 * form.margin - (count - 1) * GUTTER) / count,
    own = arcs.filter(({ side }) => side < 0),
    arcSize = form.smallSize - 0.5,
    arcText = Math.max(0, ...own.map((arc) => text(0, 0, sentBackText(world, arc), { size: arcSize }).width)),
    reach =
      own.length === 0 ? 22 : reachOf({ isAcross: false }, -1, Math.max(...own.map(({ level }) => level))),
    wayAt = 6 + (own.length === 0 ? 0 : arcText + 5) + reach;
  const labelAt = sections.map((section) =>
    section.kind === 'lane'
      ? wayAt + 22
      : wayAt +
        18 +
        TRACK *
          Math.max(
            0,
            ...section.cells.map((cell) => strip.cells[cell]?.track ?? 0),
            ...passing(world, section.cells),
          ),
  );
  const items = sections.flatMap((section, i): Item[] =>
    section.kind === 'lane'
      ? [{ kind: 'lane', section: i, cell: section.cell }]
      : [
          { kind: 'head', section: i },
          ...section.cells.map((cell) => ({ kind: 'cell' as const, section: i, cell })),
        ],
  );
  const siteOf = (section: number): string => {
    const found = sections[section];
    return found?.kind === 'plant' ? found.site : '';
  };
  const labels = items.map((item): Label => {
    const width = inner - (labelAt[item.section] ?? 0) - 4;
    if (item.kind === 'head') return NO_LABEL;
    const told =
      item.kind === 'lane' ? laneTold(world, item.cell) : toldAt(world, item.cell, siteOf(item.section));
    return labelOf(world, told, Math.max(60, width));
  });
  const head = (section: number, x: number, y: number) => {
    const found = sections[section];
    return plantHead(
      world,
      siteOf(section),
      found?.kind === 'plant' && found.isAgain,
      x + 8,
      y + 4,
      inner - 16,
    );
  };
  const arcsAt = (cell: number): Arc[] => own.filter(({ fromCell }) => fromCell === cell);
  const heights = items.map((item, i): number => {
    const label = labels[i]?.height ?? 0;
    if (item.kind === 'head') return head(item.section, 0, 0).height + 8;
    if (item.kind === 'lane') return Math.max(form.isDense ? 62 : 78, label + 14);
    const standing = standingAt(world, item.cell),
      glyph = standing === undefined ? 24 : glyphLength({ isAcross: false }, standing);
    return Math.max(label, glyph, arcsAt(item.cell).length * 12) + (form.isDense ? 5 : 8);
  });
  const costs = items.map((item, i) =>
    item.kind === 'head'
      ? 0
      : items[i - 1]?.kind === 'head'
        ? Infinity
        : item.kind === 'lane'
          ? 0.2
          : crossing(strip, arcs, item.cell),
  );
  const starts = balanced(heights, costs, count),
    groups: Group[] = [];
  let height = 0;
  starts.forEach((start, column) => {
    const end = starts[column + 1] ?? items.length,
      x = form.margin + column * (inner + GUTTER),
      frame = downFrame(x + wayAt);
    let y = top;
    for (let i = start; i < end; ) {
      const item = items[i];
      if (item === undefined) break;
      const itemHeight = heights[i] ?? 0;
      if (item.kind === 'lane') {
        const label = labels[i],
          at = labelAt[item.section] ?? 0;
        groups.push(drawLane(world, item.cell, frame, y + 2, y + itemHeight - 2));
        if (label !== undefined)
          groups.push({
            kind: 'words',
            about: '',
            shapes: drawLabel(label, x + at, y + (itemHeight - label.height) / 2, 'start').shapes,
          });
        y += itemHeight;
        i++;
        continue;
      }
      // What follows of the same plant in this column.
      const from = y,
        ground: Shape[] = [],
        rows: Group[] = [],
        spreads = new Map<number, Spread>(),
        section = item.section,
        texts: { cell: number; label: Label; top: number }[] = [];
      for (; i < end && items[i]?.section === section; i++) {
        const row = items[i],
          rowHeight = heights[i] ?? 0;
        if (row?.kind === 'head')
          rows.push({ kind: 'plant', about: siteOf(section), shapes: head(section, x, y).shapes });
        else if (row !== undefined) {
          const standing = standingAt(world, row.cell),
            glyph = standing === undefined ? rowHeight : glyphLength(frame, standing),
            label = labels[i] ?? NO_LABEL;
          spreads.set(row.cell, { from: y, to: y + rowHeight, glyph: y + (rowHeight - glyph) / 2 });
          texts.push({ cell: row.cell, label, top: y + (rowHeight - label.height) / 2 });
        }
        y += rowHeight;
      }
      ground.push({ kind: 'rect', x, y: from, width: inner, height: y + 4 - from, fill: GROUND });
      groups.push({ kind: 'ground', about: '', shapes: ground }, ...rows);
      if (spreads.size > 0) {
        const first = Math.min(...[...spreads.values()].map((each) => each.from)),
          drawn = drawRun(
            world,
            { frame, first, last: y + 3, spreads, trackAt: (track) => track * TRACK },
            arcs,
          ),
          words: Group[] = [];
        const leads: Shape[] = [];
        for (const { cell, label, top: labelTop } of texts) {
          const at = x + (labelAt[section] ?? 0),
            { shapes, stubs, frame: box } = drawLabel(label, at, labelTop, 'start'),
            c = (strip.cells[cell]?.track ?? 0) * TRACK,
            middle = drawn.marks.get(cell)?.middle ?? labelTop;
          for (const stub of stubs) leads.push(lead(x + wayAt + c, stub, at - 3, true));
          if (box !== undefined) leads.push(lead(x + wayAt + c + 12, (box.top + box.bottom) / 2, at, false));
          const mine = arcsAt(cell);
          mine.forEach((arc, k) =>
            shapes.push(
              text(
                x + wayAt - reach - 4,
                middle + 3.5 + 12 * (k - (mine.length - 1) / 2),
                sentBackText(world, arc),
                {
                  size: arcSize,
                  anchor: 'end',
                  colour: MUTED,
                },
              ),
            ),
          );
          words.push({ kind: 'words', about: '', shapes });
        }
        groups.push({ kind: 'line', about: '', shapes: leads }, ...drawn.groups, ...words);
      }
      y += 10;
    }
    height = Math.max(height, y - top);
  });
  return { groups, height };
}

/** A thin line from a text to its mark: of a supply with a dot at the line. */
function lead(from: number, y: number, to: number, isStub: boolean): Shape {
  return {
    kind: 'path',
    d: isStub
      ? `${polyline([
          [to, y],
          [from + 12, y],
        ])} M${from + 17} ${y - 3} L${from + 12} ${y} L${from + 17} ${y + 3}`
      : polyline([
          [from, y],
          [to, y],
        ]),
    stroke: INK,
    strokeWidth: isStub ? 1 : 1.5,
    fill: 'none',
  };
}

/** Tracks of side lines that run by. */
function passing({ strip }: World, cells: readonly number[]): number[] {
  const first = cells[0] ?? 0,
    last = cells.at(-1) ?? 0;
  return strip.sides
    .filter(
      ({ leaves, joins, cells: own }) =>
        own.length > 0 &&
        leaves <= last &&
        Math.max(joins, ...own) >= first &&
        (leaves >= 0 ? leaves : (own[0] ?? 0)) <= last,
    )
    .map(({ track }) => track);
}
