import { piecesOf } from '../unbroken.js';

/** Greatest width of what a command prints where nothing is known of the terminal, characters. */
export const WIDTH = 100;

/** Width of a text, in characters (code points). */
export const widthOf = (text: string): number => Array.from(text).length;

/**
 * Text broken at spaces into lines of at most `width` characters, the first after `start`, later ones after
 * `indent`. Figures stay together; a piece that is longer than a line is broken at its spaces, else anywhere.
 * No letter is lost.
 */
export function lines(text: string, indent = '', width = WIDTH, start = ''): string[] {
  const broken: string[] = [],
    last = { line: start, isEmpty: true };
  const end = (): void => {
    broken.push(last.line);
    last.line = indent;
    last.isEmpty = true;
  };
  const add = (piece: string): void => {
    const longer = last.isEmpty ? last.line + piece : `${last.line} ${piece}`;
    if (widthOf(longer) <= width) {
      last.line = longer;
      last.isEmpty = false;
    } else if (!last.isEmpty) {
      end();
      add(piece);
    } else if (piece.includes(' ')) {
      piece.split(' ').forEach(add);
    } else {
      const letters = Array.from(piece),
        room = Math.max(1, width - widthOf(last.line));
      last.line += letters.slice(0, room).join('');
      end();
      add(letters.slice(room).join(''));
    }
  };
  piecesOf(text).forEach(add);
  return last.isEmpty && broken.length > 0 ? broken : [...broken, last.line];
}

/** A sentence, or a table that is laid out when its width is known. */
export type Piece = string | ((width: number) => string);

/**
 * Sentences and tables below one another, each no wider than the width. The first is the answer; what goes on
 * of the others is indented.
 */
export const joined = (pieces: readonly Piece[], width = WIDTH): string =>
  pieces
    .flatMap((piece, i) =>
      typeof piece === 'string' ? lines(piece, i === 0 ? '' : '  ', width) : [piece(width)],
    )
    .join('\n');
