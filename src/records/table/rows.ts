import { Unreadable } from '../unreadable.js';

/** What stands between the cells of a row. */
export type Separator = ',' | ';' | '\t';
const SEPARATORS: readonly Separator[] = [',', ';', '\t'];

/** Characters in a row: behind so many a quote was never closed. */
const LONGEST_ROW = 1_000_000;

const QUOTE = '"';

/**
 * Text to rows of cells (RFC 4180, with any of three separators and either line end), part by part. Cells in
 * quotes may hold separators, line ends and doubled quotes; others lose the spaces around them. Blank lines
 * are no rows.
 */
export class RowSplitter {
  private rest = '';
  /** Of the next row. */
  private line = 1;
  private separator: Separator | undefined;

  /** @param row the first is the head; `line` counts from 1, as an editor shows it */
  constructor(private readonly row: (cells: string[], line: number) => void) {}

  push(text: string): void {
    this.split(this.rest === '' ? text : this.rest + text, false);
  }

  end(): void {
    if (this.rest !== '') this.split(this.rest, true);
  }

  private split(text: string, isLast: boolean): void {
    const hasQuotes = text.includes(QUOTE);
    let from = 0;
    while (from < text.length) {
      const feed = text.indexOf('\n', from),
        end = feed < 0 ? text.length : feed;
      if (feed < 0 && !isLast) break;
      this.separator ??= separatorOf(text.slice(from, end));
      const quote = hasQuotes ? text.indexOf(QUOTE, from) : -1;
      if (quote >= 0 && quote < end) {
        const next = this.quoted(text, from, isLast);
        if (next < 0) break;
        from = next;
        continue;
      }
      const to = end > from && text.charCodeAt(end - 1) === 13 ? end - 1 : end;
      if (to > from) this.tell(text.slice(from, to).split(this.separator).map(trimmed));
      this.line++;
      from = end + 1;
    }
    this.rest = from < text.length ? text.slice(from) : '';
    if (this.rest.length > LONGEST_ROW) throw unclosed(this.line);
  }

  /** A row with quotes in it: where the next one begins; -1: its end is not there yet. */
  private quoted(text: string, from: number, isLast: boolean): number {
    const { separator } = this,
      cells: string[] = [];
    let at = from,
      lines = 1;
    for (;;) {
      let cell: string;
      if (text[at] === QUOTE) {
        let end = at + 1,
          isDoubled = false;
        for (;;) {
          end = text.indexOf(QUOTE, end);
          if (end < 0) {
            if (isLast) throw unclosed(this.line);
            return -1;
          }
          if (end + 1 === text.length && !isLast) return -1;
          if (text[end + 1] !== QUOTE) break;
          isDoubled = true;
          end += 2;
        }
        cell = text.slice(at + 1, end);
        if (isDoubled) cell = cell.replaceAll('""', QUOTE);
        lines += cell.split('\n').length - 1;
        at = end + 1;
        const tail = cellEnd(text, at, separator);
        cell += text.slice(at, tail).trimEnd();
        at = tail;
      } else {
        const tail = cellEnd(text, at, separator);
        cell = trimmed(text.slice(at, tail));
        at = tail;
      }
      cells.push(cell);
      if (at >= text.length && !isLast) return -1;
      if (text[at] === separator) {
        at++;
        continue;
      }
      this.tell(cells);
      this.line += lines;
      return at + 1;
    }
  }

  private tell(cells: string[]): void {
    if (cells.length > 1 || cells[0] !== '') this.row(cells, this.line);
  }
}

/** Where the cell that begins at `from` ends: at a separator or the line end. */
function cellEnd(text: string, from: number, separator: string | undefined): number {
  let at = from;
  while (at < text.length && text[at] !== separator && text[at] !== '\n') at++;
  return at;
}

/** The most frequent one in the head, outside of quotes; of equals the first. */
function separatorOf(head: string): Separator {
  const bare = head.replaceAll(/"[^"]*"/g, ''),
    counts = SEPARATORS.map((separator) => bare.split(separator).length);
  return SEPARATORS[counts.indexOf(Math.max(...counts))] ?? ',';
}

function trimmed(cell: string): string {
  const { length } = cell;
  if (length === 0 || (cell.charCodeAt(0) > 32 && cell.charCodeAt(length - 1) > 32)) return cell;
  return cell.trim();
}

const unclosed = (line: number): Unreadable =>
  new Unreadable(
    `line ${line}: expected a closing quote, got none within ${LONGEST_ROW} characters`,
    'close the quote, or double it ("") where it is part of the text',
  );
