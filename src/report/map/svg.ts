import { shown } from '../../study/shown.js';
import { type Drawing, type Group, px, type Shape } from './shapes.js';

/** The fonts of the reader; the report's own are near enough to what was measured. */
const FONTS = 'Inter, system-ui, "Segoe UI", Roboto, "DejaVu Sans", sans-serif';

/**
 * A drawing as an SVG document of its own, that also may stand in a page: no script, no style sheet, nothing
 * from elsewhere. Where a reader's font is wider than the measured one, texts are drawn together. A drawing
 * for a page of paper is as large as that. `id` tells several in one page apart.
 */
export function mapSvg({ width, height, page, title, words, groups }: Drawing, id = 'map'): string {
  const size =
    page === undefined
      ? `width="${width}" height="${height}"`
      : `width="${px(page.width)}mm" height="${px(page.height)}mm"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" ${size} ` +
      `role="img" aria-labelledby="${id}-title ${id}-words" font-family="${safe(FONTS)}">`,
    `<title id="${id}-title">${safe(title)}</title>`,
    `<desc id="${id}-words">${safe(words)}</desc>`,
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    ...groups.map(groupText),
    '</svg>',
    '',
  ].join('\n');
}

function groupText({ kind, about, place, shapes }: Group): string {
  const title = about === '' ? '' : `<title>${safe(about)}</title>`;
  const at = place === undefined ? '' : ` data-place="${place}"`;
  return `<g class="map-${kind}"${at}>${title}${shapes.map(shapeText).join('')}</g>`;
}

function shapeText(shape: Shape): string {
  switch (shape.kind) {
    case 'rect': {
      const { x, y, width, height } = shape;
      return `<rect x="${x}" y="${y}" width="${width}" height="${height}"${look(shape)}/>`;
    }
    case 'path':
      return `<path d="${shape.d}"${look(shape)}/>`;
    case 'text': {
      const { x, y, size, weight, anchor, colour, width, text, isUpright = false } = shape;
      return (
        `<text x="${x}" y="${y}" font-size="${size}" fill="${colour}"` +
        (weight === '600' ? ' font-weight="600"' : '') +
        (anchor === 'start' ? '' : ` text-anchor="${anchor}"`) +
        (isUpright ? ` transform="rotate(-90 ${x} ${y})"` : '') +
        ` textLength="${width}" lengthAdjust="spacingAndGlyphs">${escaped(text)}</text>`
      );
    }
  }
}

function look({
  fill = 'none',
  stroke,
  strokeWidth = 1,
  dash,
}: {
  readonly fill?: string;
  readonly stroke?: string;
  readonly strokeWidth?: number;
  readonly dash?: readonly number[];
}): string {
  return (
    ` fill="${fill}"` +
    (stroke === undefined ? '' : ` stroke="${stroke}" stroke-width="${strokeWidth}"`) +
    (dash === undefined ? '' : ` stroke-dasharray="${dash.join(' ')}"`)
  );
}

const MARKS: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const escaped = (text: string): string =>
  text
    .replace(/[&<>"']/g, (mark) => MARKS[mark] ?? mark)
    // Marks that turn the direction of writing are for the reader of the picture, not for a terminal.
    .replace(/[\u2066-\u2069]/g, (mark) => `&#${mark.codePointAt(0)};`)
    // What XML cannot hold: half a pair, and what is no character.
    .replace(/\p{Surrogate}|[\ufffe\uffff]/gu, '\ufffd');
/** Text as it may stand in a document, or an attribute of one. */
export const safe = (text: string): string => escaped(shown(text));
