import type { Finding } from './problem.js';
import type { CalendarSpec, ClockSpan, Scenario } from './scenario.js';

export const DAY = 1440;
export const WEEK = 7 * DAY;

/** Minutes; an end at or before the start is on the next day. */
export const lengthOf = ({ startMin, endMin }: ClockSpan): number =>
  endMin > startMin ? endMin - startMin : endMin + DAY - startMin;

/** Shifts that overlap, breaks outside the shifts, calendars without working time. */
export function calendarFindings(scenario: Scenario): Finding[] {
  return Object.entries(scenario.calendars).flatMap(([name, calendar]) => {
    const path = ['calendars', name];
    const found: Finding[] = [];
    const overlap = overlapping(calendar);
    if (overlap !== undefined)
      found.push({
        path: [...path, 'hours'],
        wanted: 'shifts that do not overlap, also not with the shift of the next day',
        seen: overlap.map(sayClock).join(' and '),
      });
    calendar.breaks.forEach((pause, i) => {
      if (
        ![calendar, ...calendar.overtime].some(({ hours }) =>
          hours.some((shift) => offsetIn(shift, pause) !== undefined),
        )
      )
        found.push({
          path: [...path, 'breaks', i],
          wanted: 'a break inside a shift',
          seen: `"${sayClock(pause)}"`,
        });
    });
    calendar.hours.forEach((shift) => {
      if (workingMinutes(shift, calendar.breaks) === 0)
        found.push({
          path: [...path, 'breaks'],
          wanted: 'breaks that leave working time in each shift',
          seen: `none left in ${sayClock(shift)}`,
        });
    });
    return found;
  });
}

/** Minutes from the start of the shift to the break, if the break lies inside. */
export function offsetIn(shift: ClockSpan, pause: ClockSpan): number | undefined {
  const offset = (pause.startMin - shift.startMin + DAY) % DAY;
  return offset + lengthOf(pause) <= lengthOf(shift) ? offset : undefined;
}

function workingMinutes(shift: ClockSpan, breaks: readonly ClockSpan[]): number {
  const off = new Uint8Array(lengthOf(shift));
  for (const pause of breaks) {
    const offset = offsetIn(shift, pause);
    if (offset !== undefined) off.fill(1, offset, offset + lengthOf(pause));
  }
  return off.reduce((free, minute) => free + 1 - minute, 0);
}

/** The first two shifts of a week that overlap. */
function overlapping({ hours, on }: CalendarSpec): ClockSpan[] | undefined {
  const week = on.flatMap((day) =>
    hours.map((shift) => ({
      shift,
      start: (day - 1) * DAY + shift.startMin,
      end: (day - 1) * DAY + shift.startMin + lengthOf(shift),
    })),
  );
  week.sort((a, b) => a.start - b.start);
  for (const [i, one] of week.entries()) {
    const next = week[i + 1] ?? { ...week[0]!, start: week[0]!.start + WEEK };
    if (one.end > next.start) return [one.shift, next.shift];
  }
  return undefined;
}

function sayClock({ startMin, endMin }: ClockSpan): string {
  const clock = (min: number): string =>
    `${String(Math.floor(min / 60)).padStart(2, '0')}:${String(min % 60).padStart(2, '0')}`;
  return `${clock(startMin)}-${clock(endMin)}`;
}
