import type { PlaceState } from '../study/sections/stations.js';

/** Okabe & Ito (2008), a palette that people with each kind of colour vision can tell apart. */
export const PALETTE = {
  black: '#000000',
  orange: '#E69F00',
  sky: '#56B4E9',
  green: '#009E73',
  yellow: '#F0E442',
  blue: '#0072B2',
  vermillion: '#D55E00',
  purple: '#CC79A7',
} as const;

/** Text: contrast on white 17 and 7 to 1 (WCAG 2.2 asks for 4.5). */
export const INK = '#1a1a1a',
  MUTED = '#565656';
/** Lines that help the eye and carry no value. */
export const GRID = '#e2e2e2';
/** Edge of the colours that are too pale on white (orange, sky, yellow: below 3 to 1). */
export const DARK_EDGE = '#333333';

/** Text sizes, CSS pixels. */
export const SIZE = { title: 18, text: 13, small: 12 } as const;
/**
 * How pictures are laid out. In PNG files with their titles in them, `width` CSS pixels wide; the page has
 * the titles beside them, is as wide as the reader's screen, and shows fewer rows of long pictures at first.
 * `isCut` is set when a picture leaves rows out.
 */
export const LAYOUT = { width: 1080, hasTitles: true, mostRows: 120, isCut: false };
/** As on a phone: names stand above bars, not beside them, and lines are named under the picture. */
export const isNarrow = (): boolean => LAYOUT.width < 600;

export type Hatch = 'plain' | 'rising' | 'falling' | 'upright' | 'level' | 'dots' | 'crossed' | 'grid';
export interface Fill {
  readonly colour: string;
  readonly hatch: Hatch;
  readonly hatchColour: string;
  readonly edge: string;
}

const plain = (colour: string, edge: string = colour): Fill => ({
  colour,
  hatch: 'plain',
  hatchColour: colour,
  edge,
});
const hatched = (colour: string, hatch: Hatch, hatchColour: string, edge: string): Fill => ({
  colour,
  hatch,
  hatchColour,
  edge,
});

/**
 * What a place does, in drawing order. Families share an idea: time with progress is blue and plain; the
 * four shortages are warm and dark-hatched; the two flow states are purple, full of it when blocked and
 * nearly empty when starved.
 */
export const STATE_FILLS: Readonly<Record<PlaceState, Fill>> = {
  working: plain(PALETTE.blue),
  unattended: plain(PALETTE.sky, DARK_EDGE),
  changeover: hatched(PALETTE.green, 'upright', '#ffffff', PALETTE.green),
  'short of crew': hatched(PALETTE.orange, 'rising', DARK_EDGE, DARK_EDGE),
  'short of parts': hatched(PALETTE.yellow, 'dots', DARK_EDGE, DARK_EDGE),
  'short of carrier': hatched(PALETTE.vermillion, 'crossed', '#ffffff', PALETTE.vermillion),
  'short of equipment': hatched(PALETTE.orange, 'grid', DARK_EDGE, DARK_EDGE),
  blocked: hatched(PALETTE.purple, 'falling', INK, INK),
  starved: hatched('#ffffff', 'level', PALETTE.purple, '#8f5375'),
  down: plain(PALETTE.black),
  'off shift': plain('#dedede', '#808080'),
};
export const STATE_ORDER = Object.keys(STATE_FILLS) as readonly PlaceState[];

/** What is lost and what is gained on the way from one rate to another. */
export const LOST = hatched(PALETTE.vermillion, 'falling', '#ffffff', PALETTE.vermillion),
  GAINED = plain(PALETTE.blue);

const OTHERS = plain('#dedede', '#808080');
const grey = (hatch: Hatch, ground = '#ffffff'): Fill => hatched(ground, hatch, MUTED, MUTED);
/**
 * Values of an option, in the planner's order: by hatch alone, since a colour would contradict a value that
 * is the name of one. None is as dark as a changeover. The last one stands for all further values.
 */
export const VALUE_FILLS: readonly Fill[] = [
  grey('rising'),
  grey('dots'),
  grey('level'),
  grey('crossed'),
  grey('upright'),
  grey('falling'),
  grey('dots', '#dedede'),
  OTHERS,
];

/** The fill of the value at that place in the planner's order. */
export const valueFill = (value: number): Fill => VALUE_FILLS[value] ?? OTHERS;

/** Things that share a bar, the largest first: colour and hatch differ together. The last: all others. */
export const SHARE_FILLS: readonly Fill[] = [
  plain(PALETTE.sky, DARK_EDGE),
  hatched('#ffffff', 'rising', PALETTE.vermillion, PALETTE.vermillion),
  hatched(PALETTE.yellow, 'dots', DARK_EDGE, DARK_EDGE),
  hatched(PALETTE.green, 'upright', '#ffffff', PALETTE.green),
  hatched('#ffffff', 'level', PALETTE.blue, PALETTE.blue),
  hatched(PALETTE.orange, 'falling', DARK_EDGE, DARK_EDGE),
  hatched(PALETTE.purple, 'crossed', '#ffffff', DARK_EDGE),
  OTHERS,
];
export const shareFill = (place: number): Fill => SHARE_FILLS[place] ?? OTHERS;

/** Lines of a time chart: colour and dash differ together. Sites and lanes take them in turn. */
export const LINES: readonly { readonly colour: string; readonly dash: readonly number[] }[] = [
  { colour: PALETTE.blue, dash: [] },
  { colour: PALETTE.vermillion, dash: [8, 3] },
  { colour: '#007a59', dash: [2, 3] },
  { colour: '#a04d7d', dash: [12, 3, 2, 3] },
  { colour: PALETTE.black, dash: [5, 5] },
  { colour: '#8a6000', dash: [16, 4] },
  { colour: '#33719a', dash: [3, 6] },
  { colour: '#6b6b6b', dash: [8, 3, 2, 3, 2, 3] },
];

/** A colour of the palette with an opacity, for interval bands. */
export function faded(colour: string, opacity: number): string {
  return (
    colour +
    Math.round(opacity * 255)
      .toString(16)
      .padStart(2, '0')
  );
}
