/** A drawing as plain data: CSS pixels from the upper left corner, later shapes over earlier ones. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** Size on paper, mm; undefined: it is for a screen. */
  readonly page: { readonly width: number; readonly height: number } | undefined;
  /** Its name, and all of it in words for those who do not see it. */
  readonly title: string;
  /** What it shows, for beside it. */
  readonly caption: string;
  readonly words: string;
  readonly groups: readonly Group[];
}

/** A part of a drawing, and how much of its height it takes. */
export interface Drawn {
  readonly groups: readonly Group[];
  readonly height: number;
}

/** Shapes of one thing. */
export interface Group {
  readonly kind: GroupKind;
  /** What it is, in full; empty where its texts say it. */
  readonly about: string;
  /** The place of the strip to which it belongs, in the order of the route. */
  readonly place?: number;
  readonly shapes: readonly Shape[];
}
export type GroupKind = 'ground' | 'line' | 'side' | 'back' | 'lane' | 'stop' | 'plant' | 'bracket' | 'words';

export type Shape = RectShape | PathShape | TextShape;
interface Stroke {
  readonly fill?: string;
  readonly stroke?: string;
  readonly strokeWidth?: number;
  readonly dash?: readonly number[];
}
export interface RectShape extends Stroke {
  readonly kind: 'rect';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
/** `d`: as in SVG, absolute M, L, Q, A and Z. */
export interface PathShape extends Stroke {
  readonly kind: 'path';
  readonly d: string;
}
/** One line of text; `x` is its start, its middle or its end, `y` its base line. Upright: read upwards. */
export interface TextShape {
  readonly kind: 'text';
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly weight: 'normal' | '600';
  readonly anchor: 'start' | 'middle' | 'end';
  readonly colour: string;
  /** As measured with the report's fonts. */
  readonly width: number;
  readonly isUpright?: boolean;
}

/** Colour of what a plant stands on. */
export const GROUND = '#f3f1ec';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The room that a line of text takes. */
export function textBox({ x, y, size, anchor, width, isUpright = false }: TextShape): Box {
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width,
    left = x - before;
  if (isUpright)
    return { left: x - 0.8 * size, top: y + before - width, right: x + 0.22 * size, bottom: y + before };
  return { left, top: y - 0.8 * size, right: left + width, bottom: y + 0.22 * size };
}

/** Coordinates without more digits than an eye sees. */
export const px = (value: number): number => Math.round(value * 100) / 100;

/** A path through points. */
export const polyline = (points: readonly (readonly [x: number, y: number])[], end = ''): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join(' ') + end;
