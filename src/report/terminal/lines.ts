import { fitColumns } from '../shorten.js';

/** Greatest width of what a command prints, characters. */
const WIDTH = 100;

/** Text broken at spaces into lines of at most the width, later ones indented. */
export function lines(text: string, indent = ''): string[] {
  const broken: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    if (line !== '' && line.length + 1 + word.length > WIDTH) {
      broken.push(line);
      line = indent + word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return [...broken, line];
}

/** Pieces of one or more lines below one another; what is wider than the width loses its middle. */
export function joined(pieces: readonly string[]): string {
  return pieces
    .flatMap((piece) => piece.split('\n'))
    .map((line) => fitColumns(line, WIDTH))
    .join('\n');
}
