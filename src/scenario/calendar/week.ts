import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { CalendarSpec, ClockSpan } from '../types/calendars.js';

/** Minutes of a week. */
export const WEEK = 7 * MINUTES_PER_DAY;

/** Minutes; an end at or before the start is on the next day. */
export const lengthOf = ({ startMin, endMin }: ClockSpan): number =>
  endMin > startMin ? endMin - startMin : endMin + MINUTES_PER_DAY - startMin;

/** Minutes from the start of the shift to the break, if the break lies inside. */
export function offsetIn(shift: ClockSpan, pause: ClockSpan): number | undefined {
  const offset = (pause.startMin - shift.startMin + MINUTES_PER_DAY) % MINUTES_PER_DAY;
  return offset + lengthOf(pause) <= lengthOf(shift) ? offset : undefined;
}

type Hours = Pick<CalendarSpec, 'on' | 'hours' | 'breaks'>;

/** The shifts of a week, each by the minute of the week at which it starts. */
export const weekShifts = ({
  on,
  hours,
}: Pick<Hours, 'on' | 'hours'>): { shift: ClockSpan; start: number }[] =>
  on.flatMap((day) => hours.map((shift) => ({ shift, start: (day - 1) * MINUTES_PER_DAY + shift.startMin })));

/** Each minute of a week without holidays: 1 working, 0 not. */
export function weekOf({ on, hours, breaks }: Hours): Uint8Array {
  const week = new Uint8Array(WEEK);
  const fill = (value: number, start: number, length: number): void => {
    for (let i = 0; i < length; i++) week[(start + i) % WEEK] = value;
  };
  for (const { shift, start } of weekShifts({ on, hours })) {
    fill(1, start, lengthOf(shift));
    for (const pause of breaks) {
      const offset = offsetIn(shift, pause);
      if (offset !== undefined) fill(0, start + offset, lengthOf(pause));
    }
  }
  return week;
}
