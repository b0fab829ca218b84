import { textWidth } from '../canvas.js';
import { shorten } from '../shorten.js';
import { INK, LAYOUT, SIZE } from '../style.js';
import { wrap } from '../text.js';
import type { Axis } from './axes.js';

/** For names beside their bars, if that is no more than such a share of the picture. CSS pixels. */
const NAME_ROOM = 330,
  MOST_SHARE = 0.4;
/** Lines of a name at most, unless two would read alike; a picture that is wide enough needs two. */
const MOST_LINES = 3;
/** Height of a line beside bars, as the chart writes them, CSS pixels. */
const LINE = 1.2 * SIZE.text;

/** A name with what tells how heavy it is written: headings have no item. */
interface Named {
  readonly label: string;
  readonly item: unknown;
}
const weightOf = ({ item }: Named): 'normal' | '600' => (item === null ? '600' : 'normal');

/** Room for names beside bars, of `asked` CSS pixels where the picture is wide enough. */
export const roomBeside = (asked = NAME_ROOM): number => Math.min(asked, MOST_SHARE * LAYOUT.width);

/**
 * The lines in which each name is written, no wider than `room` CSS pixels: three at most, for which a very
 * long name loses its middle. Names that would then read alike stay whole, whatever room that takes.
 */
export function nameLines(rows: readonly Named[], room: number): string[][] {
  const lines = (text: string, row: Named): string[] => wrap(text, room, SIZE.text, weightOf(row)),
    short = rows.map((row) =>
      lines(
        shorten(row.label, (candidate) => lines(candidate, row).length <= MOST_LINES),
        row,
      ),
    ),
    read = short.map((each) => each.join(' '));
  return rows.map((row, i) => {
    if (!rows.some(({ label }, j) => label !== row.label && read[j] === read[i])) return short[i] ?? [];
    const whole = lines(row.label, row);
    // A word may be wider than the room by itself.
    return whole.join(' ').length < row.label.length ? [row.label] : whole;
  });
}

/** Lines of the name that has most. */
export const mostLines = (names: readonly (readonly string[])[]): number =>
  Math.max(1, ...names.map(({ length }) => length));

/** Height of a row that holds its name, CSS pixels. */
export const heightWithNames = (names: readonly (readonly string[])[], each: number): number =>
  mostLines(names) < 2 ? each : Math.max(each, Math.ceil(LINE * mostLines(names)) + 5);

/** The axis of names at the left, as wide as the names need; null: they stand elsewhere. */
export function nameAxis(
  rows: readonly Named[],
  names: readonly (readonly string[])[] | null,
  stacked: boolean,
): Axis {
  const widths = rows.flatMap((row, i) =>
      (names?.[i] ?? []).map((line) => textWidth(line, SIZE.text, weightOf(row))),
    ),
    room = names === null ? 4 : Math.max(0, ...widths) + 14;
  return {
    type: 'category',
    stacked,
    grid: { display: false },
    border: { display: false },
    ticks: {
      display: names !== null,
      autoSkip: false,
      crossAlign: 'far',
      color: INK,
      padding: 8,
      callback: (_: unknown, index: number) => [...(names?.[index] ?? [])],
      font: ({ index }: { index: number }) => ({
        size: SIZE.text,
        weight: rows[index]?.item === null ? 600 : 'normal',
      }),
    },
    afterFit: (scale: { width: number }) => {
      scale.width = room;
    },
  };
}
