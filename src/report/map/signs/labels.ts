import { INK, MUTED } from '../../style.js';
import { fit, wrap } from '../../text.js';
import { NO_BREAK } from '../../unbroken.js';
import { px, type RectShape, type Shape, type TextShape } from '../shapes.js';
import type { Told } from '../told.js';
import type { World } from '../world.js';
import { text } from './frame.js';

/** One line of a label: a text, a bar of use, or both. */
export interface Line {
  readonly kind: Told['kind'];
  readonly text: string;
  readonly use: { readonly share: number; readonly text: string } | undefined;
  readonly size: number;
  readonly weight: 'normal' | '600';
  readonly width: number;
  readonly height: number;
  /** Lines of one frame share a number; -1: none. */
  readonly frame: number;
}
export interface Label {
  readonly lines: readonly Line[];
  /** A word of it is shortened. */
  readonly isCut: boolean;
  readonly width: number;
  readonly height: number;
}
export const NO_LABEL: Label = { lines: [], isCut: false, width: 0, height: 0 };

/** Lines of one name, of one step, and of all steps together, before the rest is left to the title. */
const MOST_LINES = 4,
  MOST_DENSE = 12;
/** A bar of use, and the room beside it; room within a frame. */
export const BAR = 34,
  BAR_GAP = 4,
  /** Of the text behind a bar that stands behind a name. */
  MOST_USE = 12;
export const FRAME = 5;

/** A label in lines no wider than `width`; dense: use stands behind the name, what is done in one text. */
export function labelOf({ form }: World, told: readonly Told[], width: number): Label {
  const lines = (form.isDense ? dense(told) : told).flatMap((each, i) =>
      linesOf(each, form, width).map((line): Line => ({ ...line, frame: isFramed(each) ? i : -1 })),
    ),
    name = lines.findLastIndex(({ kind }) => kind === 'name'),
    use = lines.findIndex(({ kind }) => kind === 'use');
  if (form.isDense && name >= 0 && use >= 0) {
    const [named, used] = [lines[name], lines[use]];
    if (named !== undefined && used !== undefined && named.width + 8 + used.width <= width) {
      lines[name] = { ...named, use: used.use, width: named.width + 8 + used.width };
      lines.splice(use, 1);
    }
  }
  const frames = new Set(lines.map(({ frame }) => frame).filter((frame) => frame >= 0)).size;
  return {
    lines,
    isCut: lines.some(({ text: line }) => line.includes('…')),
    width: Math.max(0, ...lines.map((line) => line.width + (isFramed(line) ? 2 * FRAME : 0))),
    height: lines.reduce((sum, line) => sum + line.height, 0) + frames * 2 * (FRAME + 1),
  };
}

const isFramed = ({ kind }: Pick<Told, 'kind'>): boolean => kind === 'stops' || kind === 'mark';

/** What is done and found at a stop as one text. */
function dense(told: readonly Told[]): Told[] {
  const isDone = ({ kind }: Told): boolean => kind === 'step' || kind === 'share',
    done = told.flatMap((each) => (isDone(each) ? [each.text] : (each.more ?? []))),
    others = told
      .filter((each) => !isDone(each))
      .map((each) => (each.more === undefined ? each : { ...each, more: undefined })),
    at = others.findIndex(({ kind }) => kind === 'name') + 1;
  return done.length === 0
    ? others
    : [...others.slice(0, at), { kind: 'step', text: done.join('; ') }, ...others.slice(at)];
}

/** What stays on one line. */
const TOGETHER = /\b(?:\d+ in \d+(?: pass)?|up to \d+|falls to [\d,]+|\d+ units|\d+ mended)/g,
  unparted = (figure: string): string => figure.replaceAll(' ', NO_BREAK);

function linesOf(told: Told, form: World['form'], width: number): Omit<Line, 'frame'>[] {
  const { kind, share, more } = told,
    size = kind === 'name' ? form.nameSize : form.smallSize,
    weight = kind === 'name' || kind === 'stops' ? '600' : 'normal',
    height = Math.round(size * 1.22),
    line = (words: string): Omit<Line, 'frame'> => ({
      kind,
      text: words,
      use: undefined,
      size,
      weight,
      width: text(0, 0, words, { size, weight }).width,
      height,
    });
  if (share !== undefined) {
    const whole = more === undefined ? told.text : `${told.text}, ${more}`,
      wide = BAR + BAR_GAP + line(whole).width,
      isWhole = wide <= width || more === undefined,
      shown = isWhole ? whole : told.text;
    return [
      { ...line(''), use: { share, text: shown }, width: BAR + BAR_GAP + line(shown).width },
      ...(isWhole ? [] : [{ ...line(more), kind: 'step' as const }]),
    ];
  }
  const room = width - (isFramed(told) ? 2 * FRAME : 0),
    broken = wrap(told.text.replace(TOGETHER, unparted), room, size, weight),
    most = isFramed(told) ? Infinity : form.isDense && kind === 'step' ? MOST_DENSE : MOST_LINES;
  // One arrow a supply.
  if (kind === 'stub')
    return broken.slice(0, most).map((each, i) => (i === 0 ? line(each) : { ...line(each), kind: 'step' }));
  if (broken.length <= most) return broken.map(line);
  return [...broken.slice(0, most - 1), fit(broken.slice(most - 1).join(' '), room, size, weight)].map(line);
}

/** What was drawn of a label, and what else leads to it. */
interface DrawnLabel {
  readonly shapes: Shape[];
  /** Heights at which supplies are written, and the right edges of these texts. */
  readonly stubs: readonly number[];
  readonly frames: readonly DrawnFrame[];
}

export interface DrawnFrame {
  readonly kind: Told['kind'];
  readonly top: number;
  readonly bottom: number;
}

/** The shapes of a label with its upper edge at `top`: from `x` on, or around it. */
export function drawLabel(label: Label, x: number, top: number, anchor: 'start' | 'middle'): DrawnLabel {
  const shapes: Shape[] = [],
    stubs: number[] = [],
    frames: DrawnFrame[] = [],
    left = anchor === 'start' ? x : x - label.width / 2;
  let y = top;
  label.lines.forEach((line, i) => {
    const isFirst = line.frame >= 0 && label.lines[i - 1]?.frame !== line.frame,
      isLast = line.frame >= 0 && label.lines[i + 1]?.frame !== line.frame;
    if (isFirst) {
      const height =
        label.lines.filter(({ frame }) => frame === line.frame).length * line.height + 2 * FRAME - 2;
      frames.push({ kind: line.kind, top: y + 1, bottom: y + 1 + height });
      shapes.push(frameOf(line.kind, left, y + 1, label.width, height));
      y += FRAME;
    }
    const base = y + 0.78 * line.height;
    if (line.text !== '') shapes.push(lineText(line, anchor === 'start' ? x : x, base, anchor));
    if (line.use !== undefined) {
      const before = line.text === '' ? 0 : text(0, 0, line.text, line).width + 8,
        at = (anchor === 'start' ? x : x - line.width / 2) + before;
      shapes.push(
        ...useBar(at, base - 6, line.use.share),
        text(at + BAR + BAR_GAP, base, line.use.text, { size: Math.min(line.size, MOST_USE), colour: MUTED }),
      );
    }
    if (line.kind === 'stub') stubs.push(y + line.height / 2);
    y += line.height + (isLast ? FRAME + 2 : 0);
  });
  return { shapes, stubs, frames };
}

function lineText(line: Line, x: number, base: number, anchor: 'start' | 'middle'): TextShape {
  const { kind, size, weight } = line,
    colour = ['name', 'stops', 'mark', 'side'].includes(kind) ? INK : MUTED;
  return text(x + (isFramed(line) && anchor === 'start' ? FRAME : 0), base, line.text, {
    size,
    weight,
    anchor,
    colour,
  });
}

/** A frame of something that a study changes is broken. */
export const BROKEN = { stroke: INK, strokeWidth: 1.1, dash: [5, 2.5] } as const;

/** The frame of what stops the build, or of what a study marks. */
export const frameOf = (
  kind: Told['kind'],
  x: number,
  y: number,
  width: number,
  height: number,
): RectShape => ({
  kind: 'rect',
  x: px(x),
  y: px(y),
  width: px(width),
  height: px(height),
  fill: '#ffffff',
  ...(kind === 'stops' ? { stroke: INK, strokeWidth: 1.5 } : BROKEN),
});

/** A share as the length of a thin bar in a frame of its whole. */
export const useBar = (x: number, y: number, share: number): Shape[] => [
  { kind: 'rect', x, y, width: BAR, height: 5, fill: '#ffffff', stroke: '#808080', strokeWidth: 0.8 },
  { kind: 'rect', x, y, width: Math.round(BAR * Math.min(1, share) * 10) / 10, height: 5, fill: INK },
];
