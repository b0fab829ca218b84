import type { Chart as LiveChart, Plugin } from 'chart.js';
import type { Results } from '../../../study/simulate/results.js';
import { font, textWidth } from '../../canvas.js';
import { axisOf, drawing } from '../../drawing.js';
import { MUTED, SIZE } from '../../style.js';
import { onWhite } from '../marks.js';
import { shadeTime } from './shade.js';

/** Weeks that are not like the others, why, and whether they are hatched. Buckets count from 0. */
export interface WeekMark {
  readonly from: number;
  readonly to: number;
  readonly words: string;
  readonly isPlain?: boolean;
}

const DAY = 86_400_000;
/** Of what ships without the outage; less in a week is its doing. */
const DIP = 0.75;

/** By working days alone: weeks without any, and with fewer than most have. */
export function shortWeeks(workingDays: readonly number[]): WeekMark[] {
  const usual = Math.max(...workingDays);
  return merged(workingDays.map((days) => (days === 0 ? 'no work' : days < usual ? 'short week' : '')));
}

/** Outages, shutdowns, holidays and short weeks of a programme, by name. */
export function weekMarks({ answer, outages, shutdowns, series }: Results): WeekMark[] {
  const { workingDays, starts, unit } = series,
    usual = Math.max(...workingDays),
    judged = new Map((answer.unusual?.weeks ?? []).map((week) => [week.bucket, week.causes]));
  return merged(
    workingDays.map((days, bucket) => {
      const causes = judged.get(bucket);
      if (causes !== undefined)
        return [...new Set(causes.map(({ kind, what }) => causeWords(kind, what)))].join(', ');
      if (unit !== 'week') return '';
      const first = Date.parse(starts[bucket] ?? ''),
        last = first + 7 * DAY;
      const isIn = ({ from, to }: { from: string; to: string }, more = 0): boolean =>
        Date.parse(from) < last && Date.parse(to) + more > first;
      const out = outages.filter((each) => isIn(each)).map(({ name }) => causeWords('outage', name)),
        shut = shutdowns.some((each) => isIn(each, DAY)) ? ['shutdown'] : [],
        words = [...new Set([...out, ...shut])].join(', ');
      return words !== '' || days >= usual ? words : days === 0 ? 'no work' : 'short week';
    }),
  );
}

/** Without the names of outages, for a picture without room for them. */
export const kindsOnly = (marks: readonly WeekMark[]): WeekMark[] =>
  marks.map((mark) => ({ ...mark, words: mark.words.replace(/outage: [^,]*/g, 'outage') }));

const causeWords = (kind: string, what: string): string =>
  kind === 'outage' ? `outage: ${what.replace(/^"|"$/g, '')}` : kind;

/**
 * Weeks behind an outage in which surely less leaves than leaves the same build without it: units in process
 * are out later than the outage.
 */
export function dipsAfter({ recoveries, series: { starts, unit } }: Results): WeekMark[] {
  const byDay = recoveries.find((each) => each.byDay !== null)?.byDay ?? null,
    from = recoveries.find((each) => each.byDay !== null)?.from.slice(0, 10) ?? '';
  if (byDay === null || unit !== 'week') return [];
  return merged(
    starts.map((start) => {
      const end = new Date(Date.parse(start) + 6 * DAY).toISOString().slice(0, 10),
        at = start <= from ? -1 : byDay.dates.indexOf(end),
        [withIt = 0, without = 0] = [byDay.shippedWith[at], byDay.shippedWithout[at]];
      return at >= 0 && (byDay.behindP10[at] ?? 0) > 0 && withIt < DIP * without ? 'after the outage' : '';
    }),
  ).map((mark) => ({ ...mark, isPlain: true }));
}

/** Weeks that follow each other for one reason are one mark; without words there is none. */
function merged(words: readonly string[]): WeekMark[] {
  const marks: WeekMark[] = [];
  for (const [bucket, each] of words.entries()) {
    const last = marks.at(-1);
    if (each === '') continue;
    if (last?.words === each && last.to === bucket - 1) marks.splice(-1, 1, { ...last, to: bucket });
    else marks.push({ from: bucket, to: bucket, words: each });
  }
  return marks;
}

/** `2027-W51 to 2027-W52 shutdown; 2028-W06 outage: lights renewed`. */
export const markedText = (marks: readonly WeekMark[], labels: readonly string[]): string =>
  marks
    .map(({ from, to, words }) => [...new Set([labels[from], labels[to]])].join(' to ').concat(` ${words}`))
    .join('; ');

/** The highest and the lowest value drawn of a week, and that of the first line; null without any. */
export type Reach = readonly [high: number, low: number, first: number] | null;

/** Words of a mark, upright, with the box that they fill; pixels. */
export interface WordsAt {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}
const HALF = 7,
  LEAST = 60;

/**
 * Where the words of marks stand: where there is more room, above or below the lines, or over the dip.
 * @param above what is left free at the top, CSS pixels
 */
export function wordsOf(
  marks: readonly WeekMark[],
  reach: readonly Reach[],
  above: number,
  chart: LiveChart,
): WordsAt[] {
  const x = axisOf(chart, 'x'),
    { bottom } = chart.chartArea,
    top = chart.chartArea.top + above,
    step = Math.abs(x.getPixelForValue(1) - x.getPixelForValue(0));
  return (step < 2 * HALF ? joined(marks) : marks).map(({ from, to, words, isPlain }) => {
    const [highest, lowest, first] = spanOf(reach.slice(from, to + 1), chart, top, bottom),
      isAbove = highest - top > bottom - lowest,
      room = isPlain === true ? first - top - 16 : (isAbove ? highest - top : bottom - lowest) - 16,
      [kind = ''] = words.split(':'),
      text = textWidth(words, SIZE.small) <= Math.max(room, LEAST) ? words : kind,
      foot = isPlain === true ? first - 22 : isAbove ? top + 8 + textWidth(text, SIZE.small) : bottom - 8,
      middle = (x.getPixelForValue(from) + x.getPixelForValue(to)) / 2;
    return {
      text,
      left: middle - HALF,
      right: middle + HALF,
      top: foot - textWidth(text, SIZE.small),
      bottom: foot,
    };
  });
}

/** Marks that lie so close that their words would meet are told together. */
function joined(marks: readonly WeekMark[]): WeekMark[] {
  const all: WeekMark[] = [];
  for (const mark of marks) {
    const last = all.at(-1);
    if (last !== undefined && mark.from - last.to === 1 && mark.isPlain === last.isPlain) {
      const words = [...new Set([...last.words.split(', '), ...mark.words.split(', ')])].join(', ');
      all.splice(-1, 1, { ...last, to: mark.to, words });
    } else all.push(mark);
  }
  return all;
}

/** Hatches the weeks and writes their words, behind the lines. */
export function markWeeks(marks: readonly WeekMark[], reach: readonly Reach[] = [], above = 0): Plugin {
  return drawing(
    'marked weeks',
    (context, chart) => {
      const x = axisOf(chart, 'x'),
        { left, right, top, bottom } = chart.chartArea;
      for (const { from, to, isPlain } of marks) {
        if (isPlain === true) continue;
        shadeTime(context, {
          left: Math.max(left, x.getPixelForValue(from - 0.5)),
          right: Math.min(right, x.getPixelForValue(to + 0.5)),
          top: top + above,
          bottom,
        });
      }
      context.font = font(SIZE.small);
      context.textBaseline = 'middle';
      for (const words of wordsOf(marks, reach, above, chart)) {
        context.save();
        context.translate((words.left + words.right) / 2, words.bottom);
        context.rotate(-Math.PI / 2);
        onWhite(context, words.text, 0, 0, MUTED);
        context.restore();
      }
    },
    'beforeDatasetsDraw',
  );
}

/** Where the lines of some weeks are highest and lowest, and the first of them; pixels. */
function spanOf(
  reach: readonly Reach[],
  chart: LiveChart,
  top: number,
  bottom: number,
): [highest: number, lowest: number, first: number] {
  const seen = reach.filter((each) => each !== null);
  if (reach.length === 0) return [top, top, top];
  if (seen.length === 0) return [bottom, bottom, bottom];
  const y = axisOf(chart, 'y'),
    at = (which: 0 | 1 | 2, best: (...all: number[]) => number): number =>
      y.getPixelForValue(best(...seen.map((each) => each[which])));
  return [at(0, Math.max), at(1, Math.min), at(2, Math.max)];
}
