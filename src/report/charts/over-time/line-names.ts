import type { Plugin } from 'chart.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { font, textWidth } from '../../canvas.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { INK, isNarrow, MUTED, SIZE } from '../../style.js';
import { wrap } from '../../text.js';

/** A line with its name at its right end; `note` stands small under the name, null in the values is a gap. */
export interface NamedLine {
  readonly name: string;
  readonly note: string;
  readonly values: readonly (Estimate | number | null)[];
  readonly colour: string;
  readonly dash: readonly number[];
  readonly width?: number;
  /** Where they are on the axis; without it at 0, 1, 2 .. */
  readonly at?: readonly number[];
}

const KEY_ROOM = 185,
  SWATCH = 26;

/** Room that the names at the right take, CSS pixels. */
export function nameRoom(lines: readonly NamedLine[]): number {
  return isNarrow() ? 8 : 16 + SWATCH + Math.max(...lines.map(textRoom));
}

/** Names at the right end of the lines, with a sample of each line, spread so that none covers another. */
export function lineNames(lines: readonly NamedLine[]): Plugin {
  return drawing('line names', (context, chart) => {
    const y = axisOf(chart, 'y'),
      { right, top, bottom } = chart.chartArea;
    const isShown = ({ name }: NamedLine): boolean =>
      chart.data.datasets.every(({ label }, i) => label !== name || chart.isDatasetVisible(i));
    const blocks = (isNarrow() ? [] : lines)
      .filter(isShown)
      .map((line) => {
        const { names, notes } = texts(line);
        const last = line.values.map(middle).findLast((value) => value !== null) ?? 0;
        return {
          ...line,
          names,
          notes,
          wanted: y.getPixelForValue(last) - 8,
          height: 16 * names.length + 15 * notes.length + 8,
        };
      })
      .sort((a, b) => a.wanted - b.wanted);
    const x = right + 10;
    context.textBaseline = 'middle';
    for (const { colour, width, dash, names, notes, at } of spread(blocks, top - 6, bottom + 6)) {
      let row = at + 8;
      context.strokeStyle = colour;
      context.lineWidth = width ?? 2;
      context.setLineDash([...dash]);
      polyline(context, [x, row], [x + SWATCH, row]);
      for (const [lines, face, ink, step] of [
        [names, font(SIZE.text, '600'), INK, 16],
        [notes, font(SIZE.small), MUTED, 15],
      ] as const) {
        context.font = face;
        context.fillStyle = ink;
        for (const text of lines) {
          context.fillText(text, x + SWATCH + 6, row);
          row += step;
        }
      }
    }
  });
}

/**
 * Blocks in order with their tops `at`, as near as may be to where each is wanted, none over another, all
 * within [top, bottom] if they fit.
 */
export function spread<Block extends { readonly wanted: number; readonly height: number }>(
  blocks: readonly Block[],
  top: number,
  bottom: number,
): (Block & { readonly at: number })[] {
  let free = top;
  const pushedDown = blocks.map((block) => {
    const at = Math.max(free, block.wanted);
    free = at + block.height;
    return { ...block, at };
  });
  let limit = bottom;
  return pushedDown
    .toReversed()
    .map((block) => {
      limit = Math.max(Math.min(block.at, limit - block.height), top);
      return { ...block, at: limit };
    })
    .toReversed();
}

/** What is drawn of a value: the mean of an estimate. */
export function middle(value: Estimate | number | null): number | null {
  return typeof value === 'object' ? (value?.mean ?? null) : value;
}

function texts({ name, note }: NamedLine): { names: string[]; notes: string[] } {
  return { names: wrap(name, KEY_ROOM, SIZE.text, '600'), notes: wrap(note, KEY_ROOM, SIZE.small) };
}

function textRoom(line: NamedLine): number {
  const { names, notes } = texts(line);
  return Math.ceil(
    Math.max(
      ...names.map((text) => textWidth(text, SIZE.text, '600')),
      ...notes.map((text) => textWidth(text, SIZE.small)),
    ),
  );
}
