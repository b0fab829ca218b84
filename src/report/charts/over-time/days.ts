import { GRID, isNarrow, LAYOUT, MUTED, SIZE } from '../../style.js';
import { type Axis, ticksAt } from '../axes.js';

const MS_PER_MINUTE = 60_000,
  MS_PER_DAY = 1440 * MS_PER_MINUTE,
  /** Dates at most, on a phone, and room that one takes in a picture, CSS pixels. */
  MOST_TICKS = 10,
  FEW_TICKS = 3,
  TICK_ROOM = 95,
  HOUR = 1 / 24;

/** Day number of an ISO date, with its fraction where it has a clock time. */
export function momentOf(dateTime: string): number {
  return Date.parse(dateTime.length > 10 ? `${dateTime}Z` : `${dateTime}T00:00:00Z`) / MS_PER_DAY;
}

/**
 * An axis of day numbers with their dates: days or Mondays as far as there is room, hours for a short time
 * where `least` allows.
 * @param zero day from which values of the chart count days
 * @param most dates at most
 */
export function dayAxis(
  from: number,
  to: number,
  least: number,
  { zero = 0, most = mostDates() }: { zero?: number; most?: number } = {},
): Axis {
  const step =
    [HOUR / 4, HOUR, 2 * HOUR, 3 * HOUR, 6 * HOUR, 12 * HOUR, 1, 2, 7, 14, 28, 56, 112, 364].find(
      (days) => days >= least && (to - from) / days <= most,
    ) ?? 728;
  // Day 4 was a Monday. The last tick leaves room for its text.
  const first = step < 7 ? Math.ceil(from / step - 1e-6) * step : Math.ceil((from - 4) / 7) * 7 + 4,
    last = to - 0.03 * (to - from),
    ticks = Math.max(0, Math.floor((last - first) / step) + 1);
  return {
    type: 'linear',
    min: from - zero,
    max: to - zero,
    grid: { color: GRID, drawTicks: false },
    border: { display: false },
    afterBuildTicks: ticksAt(Array.from({ length: ticks }, (_, i) => first + i * step - zero)),
    ticks: {
      color: MUTED,
      padding: 6,
      maxRotation: 0,
      autoSkip: false,
      font: { size: SIZE.small },
      callback: (value: number | string) => tickText(Number(value) + zero),
    },
  };
}

const mostDates = (): number =>
  isNarrow() ? FEW_TICKS : Math.min(MOST_TICKS, Math.floor(LAYOUT.width / TICK_ROOM));

/** `2027-03-01` at midnight, `14:00` between. */
function tickText(day: number): string {
  const text = new Date(Math.round((day * MS_PER_DAY) / MS_PER_MINUTE) * MS_PER_MINUTE).toISOString();
  return text.slice(11, 16) === '00:00' ? text.slice(0, 10) : text.slice(11, 16);
}
