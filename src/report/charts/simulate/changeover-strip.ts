import type { SKRSContext2D } from '@napi-rs/canvas';
import type { ChangeoverResult, StripStay } from '../../../study/sections/changeovers.js';
import { font, textWidth } from '../../canvas.js';
import { polyline } from '../../drawing.js';
import { type Fill, INK, isNarrow, MUTED, SIZE, VALUE_FILLS, valueFill } from '../../style.js';
import { fit } from '../../text.js';
import { box, write } from '../marks.js';

/** A station with a week to show. */
export type Strip = ChangeoverResult & { readonly strip: NonNullable<ChangeoverResult['strip']> };

/** Where a station is drawn, CSS pixels; `x` of an hour of the week is within the plot. */
interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly x: (hours: number) => number;
}

export const MOST_PLACES = 4;
/** Heights, CSS pixels: name and key of a station; run lengths over a place, its blocks, the gap below. */
const HEAD = 24,
  KEY = 26,
  RUNS = 20,
  BLOCKS = 34,
  GAP = 12;
const SMALL = font(SIZE.small);
const CHANGE: Fill = { colour: INK, hatch: 'plain', hatchColour: INK, edge: INK };

/** On a phone the figures stand under the name. */
const headOf = (figures: string): number => (isNarrow() && figures !== '' ? 2 * HEAD - 6 : HEAD);

export const stationHeight = ({ places }: Strip, figures: string): number =>
  headOf(figures) + KEY + Math.min(places, MOST_PLACES) * (RUNS + BLOCKS + GAP);

/** The name of a station with `figures` beside it, a key of the values, and a strip for each place. */
export function drawStation(context: SKRSContext2D, station: Strip, figures: string, frame: Frame): void {
  const { name, places, strip } = station,
    { left, right, top } = frame,
    head = headOf(figures),
    isUnder = head > HEAD;
  context.fillStyle = '#ffffff';
  context.fillRect(left, top, right - left, head + KEY);
  context.textBaseline = 'middle';
  const room = right - left - (isUnder ? 0 : textWidth(figures, SIZE.small) + 14),
    title = fit(name, room, SIZE.text, '600'),
    x = isUnder ? left : left + textWidth(title, SIZE.text, '600') + 14;
  write(context, title, left, top + HEAD / 2, INK, font(SIZE.text, '600'));
  write(context, figures, x, top + head - HEAD / 2, MUTED, SMALL);
  drawKey(context, station, { ...frame, top: top + head });
  for (let place = 1; place <= Math.min(places, MOST_PLACES); place++) {
    const placeTop = top + head + KEY + (place - 1) * (RUNS + BLOCKS + GAP);
    if (places > 1) write(context, `place ${place}`, left, placeTop + RUNS + BLOCKS / 2, INK, SMALL);
    const stays = strip.stays.filter((stay) => stay.place === place);
    drawPlace(context, stays, station, { ...frame, top: placeTop });
  }
}

/** The values, each with its fill; those that share the last one are told together. */
function drawKey(context: SKRSContext2D, { values, option }: Strip, { left, right, top }: Frame): void {
  const y = top + KEY / 2 - 2,
    last = VALUE_FILLS.length - 1;
  const entries = values.slice(0, last).map((text, value): [string, Fill] => [text, valueFill(value)]);
  if (values.length > last) entries.push([values.slice(last).join(', '), valueFill(last)]);
  const head = isNarrow() ? '' : `${option}:`;
  write(context, head, left, y, MUTED, SMALL);
  let x = head === '' ? left : left + textWidth(head, SIZE.small) + 8;
  for (const [text, fill] of [...entries, ['changeover', CHANGE] as const]) {
    if (x + 60 > right) return;
    box(context, x, y - 7, 22, 14, fill);
    const shown = fit(text, Math.min(170, right - x - 30), SIZE.small);
    write(context, shown, x + 28, y, INK, SMALL);
    x += 28 + textWidth(shown, SIZE.small) + 16;
  }
}

/** The units on a place, the changeovers between them, and above them the length of each run of one value. */
function drawPlace(
  context: SKRSContext2D,
  stays: readonly StripStay[],
  { values, strip }: Strip,
  { top, x }: Frame,
): void {
  const blocks = top + RUNS,
    beginnings = distinctBeginnings(values),
    end = (stay: StripStay): number => x(stay.to ?? strip.hours);
  for (const stay of stays)
    box(context, x(stay.from), blocks, end(stay) - x(stay.from), BLOCKS, valueFill(stay.value));
  for (const [from, to] of stays.flatMap((stay) => piecesOf(stay, strip.hours)))
    box(context, x(from), blocks - 2, Math.max(2, x(to) - x(from)), BLOCKS + 4, CHANGE);
  context.strokeStyle = INK;
  context.lineWidth = 1;
  context.textAlign = 'center';
  for (const run of runsOf(stays)) {
    const [first] = run,
      from = x(first.from) + 1,
      to = end(run.at(-1) ?? first) - 1;
    if (to - from < 4) continue;
    polyline(context, [from, blocks - 3], [from, blocks - 6], [to, blocks - 6], [to, blocks - 3]);
    const named = [values[first.value], beginnings[first.value], '']
      .map((value = '') => `${value}${/\d$/.test(value) ? ':' : ''} ${run.length}`.trim())
      .find((text) => textWidth(text, SIZE.small) <= to - from + 2);
    if (named !== undefined) write(context, named, (from + to) / 2, blocks - 13, INK, SMALL);
  }
  context.textAlign = 'start';
}

/**
 * Of a changeover what was worked, and is within the week of so many hours: one that was begun late on a
 * shift did not go on all night.
 */
export function piecesOf(
  { changeFrom, changeTo, changePieces }: StripStay,
  hours: number,
): (readonly [from: number, to: number])[] {
  if (changeFrom === null) return [];
  const all = changePieces ?? [[changeFrom, changeTo ?? hours] as const];
  return all.filter(([from, to]) => to > 0 && from < hours);
}

/**
 * The shortest beginning of each name that no other name has: `r`, `wh` and `wi` of red, white and wine. A
 * number is not cut: `80` and `120` of 80 degrees and 120 degrees.
 */
export const distinctBeginnings = (names: readonly string[]): string[] =>
  names.map((name) => {
    const letters = Array.from(name),
      others = names.filter((other) => other !== name);
    const count = letters.findIndex((_, i) => {
      const head = letters.slice(0, i + 1).join('');
      return others.every((other) => !other.startsWith(head));
    });
    const head = count < 0 ? name : letters.slice(0, count + 1).join('');
    return /^\d+$/.test(head) ? (/^\d+/.exec(name)?.[0] ?? head) : head;
  });

/** Stays in a row with one value. */
export function runsOf(stays: readonly StripStay[]): [first: StripStay, ...rest: StripStay[]][] {
  const runs: [StripStay, ...StripStay[]][] = [];
  for (const stay of stays) {
    const run = runs.at(-1);
    if (run?.[0].value === stay.value) run.push(stay);
    else runs.push([stay]);
  }
  return runs;
}
