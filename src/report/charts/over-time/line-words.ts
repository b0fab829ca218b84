import type { Chart as LiveChart, Plugin } from 'chart.js';
import { font, textWidth } from '../../canvas.js';
import { axisOf, drawing } from '../../drawing.js';
import { isNarrow, SIZE } from '../../style.js';
import { onWhite } from '../marks.js';
import { middle, type NamedLine } from './line-names.js';

/** Half a line of text, its distance from its line, and a distance from other lines that is enough. */
const HALF = 9,
  OFF = 14,
  FREE = 12,
  ENOUGH = 40;

type Points = readonly { readonly x: number; readonly y: number }[];
interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}
interface Spot {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/**
 * On a phone: the name of each line on it, where it is far from the others; a line that is nowhere far enough
 * is named by the key below the picture alone. `written` are other words.
 */
export function lineWords(
  lines: readonly NamedLine[],
  written: (chart: LiveChart) => readonly Box[] = () => [],
): Plugin {
  return drawing('line words', (context, chart) => {
    if (!isNarrow()) return;
    context.font = font(SIZE.small, '600');
    context.textBaseline = 'middle';
    const shown = lines.filter(({ name }) =>
        chart.data.datasets.every(({ label }, set) => label !== name || chart.isDatasetVisible(set)),
      ),
      drawn = shown.map((line) => pointsOf(line, chart)),
      taken: Spot[] = [],
      avoid = written(chart);
    for (const [i, { name, colour }] of shown.entries()) {
      const spot = farthest(drawn, i, textWidth(name, SIZE.small, '600') + 6, taken, avoid, chart);
      if (spot === null) continue;
      taken.push(spot);
      onWhite(context, name, spot.x + 3, spot.y, colour);
    }
  });
}

function pointsOf({ values, at }: NamedLine, chart: LiveChart): Points {
  const x = axisOf(chart, 'x'),
    y = axisOf(chart, 'y');
  return values.flatMap((value, i) => {
    const height = middle(value);
    return height === null ? [] : [{ x: x.getPixelForValue(at?.[i] ?? i), y: y.getPixelForValue(height) }];
  });
}

/** Where a name of that width stands over or under its line, as far as may be from lines and names. */
function farthest(
  drawn: readonly Points[],
  own: number,
  width: number,
  taken: readonly Spot[],
  avoid: readonly Box[],
  { chartArea: { left, right, top, bottom } }: LiveChart,
): Spot | null {
  let best: { free: number; spot: Spot } | null = null;
  for (const point of drawn[own] ?? []) {
    const x = Math.max(left, Math.min(right - width, point.x - width / 2));
    for (const y of [point.y - OFF, point.y + OFF]) {
      if (y - HALF < top || y + HALF > bottom) continue;
      const clear = (points: Points): number => distance(points, x - 6, x + width + 6, y);
      const isOverName = taken.some(
          (each) => each.x < x + width && each.x + each.width > x && Math.abs(each.y - y) < 2 * HALF,
        ),
        isOverMark = avoid.some(
          (box) => box.left < x + width && box.right > x && box.top < y + HALF && box.bottom > y - HALF,
        ),
        free = Math.min(...drawn.filter((_, i) => i !== own).map(clear), ENOUGH);
      if (isOverName || isOverMark || free < FREE || clear(drawn[own] ?? []) < HALF) continue;
      if (free > (best?.free ?? 0)) best = { free, spot: { x, y, width } };
    }
  }
  return best?.spot ?? null;
}

const STEP = 4;
/** How far a line is at least from a height, between two places of the axis; pixels. */
function distance(points: Points, from: number, to: number, y: number): number {
  let least = ENOUGH,
    before: number | null = null;
  for (let x = from; x <= to; x += STEP) {
    const height = heightAt(points, x);
    if (height === null) continue;
    // Steep lines cross between two looks.
    if (before !== null && (before - y) * (height - y) <= 0) return 0;
    least = Math.min(least, Math.abs(height - y));
    before = height;
  }
  return least;
}

function heightAt(points: Points, x: number): number | null {
  const next = points.findIndex((each) => each.x >= x),
    [a, b] = [points[next - 1], points[next]];
  if (a === undefined || b === undefined) return null;
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}
