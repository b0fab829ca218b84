import type { SKRSContext2D } from '@napi-rs/canvas';
import type { ChangeoverResult, StripStay } from '../../../study/sections/changeovers.js';
import type { Results } from '../../../study/simulate/results.js';
import { font, textWidth } from '../../canvas.js';
import { withInterval } from '../../format.js';
import { paint } from '../../hatch.js';
import { GRID, INK, MUTED, SIZE, VALUE_FILLS, type Fill } from '../../style.js';
import { fit } from '../../text.js';
import { chart, type Chart } from '../chart.js';
import { drawing } from '../marks.js';

const MOST_STATIONS = 3,
  MOST_PLACES = 4;
/** Heights, CSS pixels: name and key of a station; run lengths over a place, its blocks, the gap below. */
const HEAD = 24,
  KEY = 26,
  RUNS = 20,
  BLOCKS = 34,
  GAP = 12,
  AXIS = 34;
/** Room for the numbers of places, where a station has several. */
const LABEL_ROOM = 64;

type Strip = ChangeoverResult & { readonly strip: NonNullable<ChangeoverResult['strip']> };

/**
 * Stations with changeovers over a week: whose turn it was on each place, the changeovers, and the units of
 * one value in a row.
 */
export function changeovers(results: Results): Chart | null {
  const all = results.changeovers.filter((each): each is Strip => each.strip !== null);
  const shown = all.slice(0, MOST_STATIONS),
    [first] = shown;
  if (first === undefined) return null;
  const left = all.length - shown.length,
    { strip } = first,
    cut = shown.some(({ places }) => places > MOST_PLACES);
  const labelRoom = shown.some(({ places }) => places > 1) ? LABEL_ROOM : 0;
  const heightOf = ({ places }: Strip): number =>
    HEAD + KEY + Math.min(places, MOST_PLACES) * (RUNS + BLOCKS + GAP);
  return chart({
    finding: `${first.name}: ${figuresOf(first)}`,
    how:
      `Replication ${strip.replication}, ${strip.days[0]} to ${strip.days.at(-1)}: the week with ` +
      `the most changeovers at ${first.name}. Each block is a unit on a place, marked by its ` +
      `${first.option}; black: changeover. ` +
      'Above: units of one value in a row; at the edges of the picture they may be more. Figures ' +
      'are of all replications.' +
      (cut ? ` The first ${MOST_PLACES} places of a station are shown.` : '') +
      (left > 0 ? ` ${left} more, less loaded, in results.json.` : ''),
    bodyHeight: AXIS + shown.reduce((sum, each) => sum + heightOf(each), 0),
    type: 'scatter',
    data: { datasets: [] },
    scales: {
      x: {
        type: 'linear',
        min: 0,
        max: strip.hours,
        border: { display: false },
        grid: { color: GRID, drawTicks: false },
        afterBuildTicks: (axis: { ticks: { value: number }[] }) => {
          axis.ticks = strip.days.map((_, i) => ({ value: 24 * i }));
        },
        ticks: {
          align: 'start',
          color: MUTED,
          padding: 6,
          maxRotation: 0,
          autoSkip: false,
          font: { size: SIZE.small },
          callback: (_: unknown, i: number) => dayName(strip.days[i] ?? ''),
        },
      } as never,
      y: {
        type: 'linear',
        min: 0,
        max: 1,
        grid: { display: false },
        border: { display: false },
        ticks: { display: false },
        afterFit: (scale: { width: number }) => {
          scale.width = labelRoom;
        },
      } as never,
    },
    plugins: [
      drawing('strips', (context, { chartArea, scales }) => {
        const x = scales['x'];
        if (x === undefined) return;
        let top = chartArea.top;
        for (const each of shown) {
          drawStation(context, each, shown.length > 1, {
            left: chartArea.left - labelRoom,
            right: chartArea.right,
            top,
            x: (hours) => x.getPixelForValue(Math.max(0, Math.min(strip.hours, hours))),
          });
          top += heightOf(each);
        }
      }),
    ],
  });
}

const figuresOf = ({ per100Units, hoursPerWeek }: Strip): string =>
  `${withInterval(per100Units, 'changeovers')} in 100 units, ${withInterval(hoursPerWeek, 'h')} a week`;

interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly x: (hours: number) => number;
}

function drawStation(context: SKRSContext2D, station: Strip, hasFigures: boolean, frame: Frame): void {
  const { name, places, strip } = station,
    fills = station.values.map((_, value) => VALUE_FILLS[Math.min(value, VALUE_FILLS.length - 1)]!);
  const figures = hasFigures ? figuresOf(station) : '';
  context.fillStyle = '#ffffff';
  context.fillRect(frame.left, frame.top, frame.right - frame.left, HEAD + KEY);
  context.textBaseline = 'middle';
  const room = frame.right - frame.left - textWidth(figures, SIZE.small) - 14,
    title = fit(name, room, SIZE.text, '600');
  write(context, title, frame.left, frame.top + HEAD / 2, INK, font(SIZE.text, '600'));
  write(
    context,
    figures,
    frame.left + textWidth(title, SIZE.text, '600') + 14,
    frame.top + HEAD / 2,
    MUTED,
    font(SIZE.small),
  );
  drawKey(context, station, fills, frame);
  for (let place = 1; place <= Math.min(places, MOST_PLACES); place++) {
    const top = frame.top + HEAD + KEY + (place - 1) * (RUNS + BLOCKS + GAP);
    if (places > 1)
      write(context, `place ${place}`, frame.left, top + RUNS + BLOCKS / 2, INK, font(SIZE.small));
    drawPlace(
      context,
      strip.stays.filter((stay) => stay.place === place),
      station,
      fills,
      { ...frame, top },
    );
  }
}

/** The values, each with its fill; those that share the last one are told together. */
function drawKey(
  context: SKRSContext2D,
  { values, option }: Strip,
  fills: readonly Fill[],
  { left, right, top }: Frame,
): void {
  const y = top + HEAD + KEY / 2 - 2,
    last = VALUE_FILLS.length - 1;
  const entries = values.slice(0, last).map((text, value): [string, Fill] => [text, fills[value]!]);
  if (values.length > last) entries.push([values.slice(last).join(', '), fills.at(-1)!]);
  write(context, `${option}:`, left, y, MUTED, font(SIZE.small));
  let x = left + textWidth(`${option}:`, SIZE.small) + 8;
  for (const [text, fill] of [...entries, ['changeover', CHANGE] as [string, Fill]]) {
    if (x + 60 > right) return;
    box(context, x, y - 7, 22, 14, fill);
    const shown = fit(text, Math.min(170, right - x - 30), SIZE.small);
    write(context, shown, x + 28, y, INK, font(SIZE.small));
    x += 28 + textWidth(shown, SIZE.small) + 16;
  }
}

const CHANGE: Fill = { colour: INK, hatch: 'plain', hatchColour: INK, edge: INK };

function drawPlace(
  context: SKRSContext2D,
  stays: readonly StripStay[],
  { values, strip }: Strip,
  fills: readonly Fill[],
  { top, x }: Frame,
): void {
  const blocks = top + RUNS,
    end = (stay: StripStay): number => x(stay.to ?? strip.hours);
  for (const stay of stays)
    box(context, x(stay.from), blocks, end(stay) - x(stay.from), BLOCKS, fills[stay.value]!);
  for (const { changeFrom, changeTo } of stays) {
    if (changeFrom === null || (changeTo ?? Infinity) <= 0) continue;
    const from = x(changeFrom),
      to = x(changeTo ?? strip.hours);
    box(context, from, blocks - 2, Math.max(2, to - from), BLOCKS + 4, CHANGE);
  }
  context.strokeStyle = context.fillStyle = INK;
  context.lineWidth = 1;
  for (const run of runsOf(stays)) {
    const from = x(run[0]!.from) + 1,
      to = end(run.at(-1)!) - 1,
      middle = (from + to) / 2;
    if (to - from < 4) continue;
    context.beginPath();
    context.moveTo(from, blocks - 3);
    context.lineTo(from, blocks - 6);
    context.lineTo(to, blocks - 6);
    context.lineTo(to, blocks - 3);
    context.stroke();
    const named = [`${values[run[0]!.value]} ${run.length}`, String(run.length)].find(
      (text) => textWidth(text, SIZE.small) <= to - from + 2,
    );
    if (named === undefined) continue;
    context.textAlign = 'center';
    write(context, named, middle, blocks - 13, INK, font(SIZE.small));
    context.textAlign = 'start';
  }
}

/** Stays in a row with one value. */
export function runsOf(stays: readonly StripStay[]): StripStay[][] {
  const runs: StripStay[][] = [];
  for (const stay of stays) {
    const run = runs.at(-1);
    if (run?.[0]!.value === stay.value) run.push(stay);
    else runs.push([stay]);
  }
  return runs;
}

function box(context: SKRSContext2D, x: number, y: number, width: number, height: number, fill: Fill): void {
  if (width <= 0) return;
  context.fillStyle = paint(fill);
  context.fillRect(x, y, width, height);
  context.strokeStyle = fill.edge;
  context.lineWidth = 0.8;
  context.strokeRect(x, y, width, height);
}

function write(
  context: SKRSContext2D,
  text: string,
  x: number,
  y: number,
  colour: string,
  face: string,
): void {
  context.font = face;
  context.fillStyle = colour;
  context.fillText(text, x, y);
}

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
/** `Mon 2027-03-01` */
function dayName(date: string): string {
  return date === '' ? '' : `${WEEKDAYS[new Date(`${date}T12:00:00Z`).getUTCDay()]} ${date}`;
}
