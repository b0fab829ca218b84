import { Unreadable } from '../unreadable.js';
import { joined } from './bytes.js';
import { Cells } from './cells.js';

/** What stands between the cells of a row. */
export type Separator = ',' | ';' | '\t';
const SEPARATORS: readonly Separator[] = [',', ';', '\t'];

/** Bytes in a row: behind so many a quote was never closed. */
const LONGEST_ROW = 1_000_000;

const QUOTE = 34,
  LINE_FEED = 10,
  NONE = new Uint8Array(0);

/**
 * Bytes in UTF-8 to rows of cells (RFC 4180, with any of three separators and either line end), part by part.
 * Cells in quotes may hold separators, line ends and doubled quotes; others lose the spaces around them. Blank
 * lines are no rows.
 */
export class RowSplitter {
  private rest: Uint8Array = NONE;
  /** Of the next row. */
  private line = 1;
  private separator: number | undefined;
  private readonly cells = new Cells();

  /**
   * @param row the first is the head; `line` counts from 1, as an editor shows it; the cells are those of the
   * next row once it has returned
   */
  constructor(private readonly row: (cells: Cells, line: number) => void) {}

  push(bytes: Uint8Array): void {
    this.split(joined(this.rest, bytes), false);
  }

  end(): void {
    if (this.rest.length > 0) this.split(this.rest, true);
  }

  private split(bytes: Uint8Array, isLast: boolean): void {
    let from = 0;
    while (from < bytes.length) {
      if (this.separator === undefined) {
        const feed = bytes.indexOf(LINE_FEED, from);
        if (feed < 0 && !isLast) break;
        this.separator = separatorOf(bytes.subarray(from, feed < 0 ? bytes.length : feed));
      }
      const next = this.plain(bytes, from, this.separator, isLast);
      if (next < 0) break;
      from = next;
    }
    this.rest = from < bytes.length ? bytes.slice(from) : NONE;
    if (this.rest.length > LONGEST_ROW) throw unclosed(this.line);
  }

  /** A row: where the next one begins; -1: its end is not there yet. One with quotes goes the longer way. */
  private plain(bytes: Uint8Array, from: number, separator: number, isLast: boolean): number {
    const { length } = bytes,
      { cells } = this;
    cells.begin(bytes);
    let at = from;
    for (let i = from; i < length; i++) {
      const code = bytes[i];
      if (code === separator) {
        cells.add(at, i);
        at = i + 1;
      } else if (code === LINE_FEED) {
        cells.add(at, i);
        this.tell(1);
        return i + 1;
      } else if (code === QUOTE) return this.quoted(bytes, from, separator, isLast);
    }
    if (!isLast) return -1;
    cells.add(at, length);
    this.tell(1);
    return length;
  }

  /** A row with quotes in it: where the next one begins; -1: its end is not there yet. */
  private quoted(bytes: Uint8Array, from: number, separator: number, isLast: boolean): number {
    const { cells } = this;
    cells.begin(bytes);
    let at = from,
      lines = 1;
    for (;;) {
      let tail: number;
      if (bytes[at] === QUOTE) {
        const end = quoteEnd(bytes, at);
        if (end < 0 || (end + 1 === bytes.length && !isLast)) {
          if (isLast) throw unclosed(this.line);
          return -1;
        }
        tail = cellEnd(bytes, end + 1, separator);
        const inside = cells.decode(at + 1, end);
        lines += inside.split('\n').length - 1;
        cells.addText(inside.replaceAll('""', '"') + cells.decode(end + 1, tail).trimEnd());
      } else {
        tail = cellEnd(bytes, at, separator);
        cells.add(at, tail);
      }
      if (tail >= bytes.length && !isLast) return -1;
      at = tail + 1;
      if (bytes[tail] === separator) continue;
      this.tell(lines);
      return at;
    }
  }

  private tell(lines: number): void {
    if (!this.cells.isBlank) this.row(this.cells, this.line);
    this.line += lines;
  }
}

/** The closing quote of a cell that begins with one; -1: it is not there. */
function quoteEnd(bytes: Uint8Array, from: number): number {
  for (let end = bytes.indexOf(QUOTE, from + 1); end >= 0; end = bytes.indexOf(QUOTE, end + 2))
    if (bytes[end + 1] !== QUOTE) return end;
  return -1;
}

/** Where the cell that begins at `from` ends: at a separator or the line end. */
function cellEnd(bytes: Uint8Array, from: number, separator: number): number {
  let at = from;
  while (at < bytes.length && bytes[at] !== separator && bytes[at] !== LINE_FEED) at++;
  return at;
}

/** The most frequent one in the head, outside of quotes; of equals the first. */
function separatorOf(head: Uint8Array): number {
  const bare = new TextDecoder().decode(head).replaceAll(/"[^"]*"/g, ''),
    counts = SEPARATORS.map((separator) => bare.split(separator).length);
  return (SEPARATORS[counts.indexOf(Math.max(...counts))] ?? ',').charCodeAt(0);
}

const unclosed = (line: number): Unreadable =>
  new Unreadable(
    `line ${line}: expected a closing quote, got none within ${LONGEST_ROW} bytes`,
    'close the quote, or double it ("") where it is part of the text',
  );
