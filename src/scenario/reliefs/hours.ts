import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { CalendarSpec, ClockSpan } from '../types/calendars.js';
import type { Scenario } from '../types/scenario.js';
import { type Relief, withEntry } from './relief.js';
import { clock } from './transport.js';

const EXTRA_MIN = 60;

/**
 * One hour of overtime on each working day of each calendar that has a free hour behind or ahead of a shift.
 */
export function moreHours(scenario: Scenario): Relief[] {
  return Object.entries(scenario.calendars).flatMap(([name, spec]): Relief[] => {
    const hour = freeHour(spec);
    return hour === undefined
      ? []
      : [
          {
            kind: 'overtime',
            text:
              `one hour of overtime a day in "${name}" ` +
              `(${clock(hour.startMin)} to ${clock(hour.endMin)})`,
            of: { kind: 'hours', name, site: '' },
            change: (from) =>
              withEntry(from, 'calendars', name, (its) => ({
                ...its,
                overtime: [
                  ...its.overtime,
                  {
                    hours: [hour],
                    on: undefined,
                    from: undefined,
                    to: undefined,
                    note: undefined,
                    when: undefined,
                  },
                ],
              })),
          },
        ];
  });
}

/**
 * The hour behind the last shift, else behind another, else ahead of one, that no shift and no overtime of
 * the calendar holds.
 */
function freeHour({ hours, overtime }: CalendarSpec): ClockSpan | undefined {
  const shifts = [...hours].reverse(),
    taken = [...hours, ...overtime.flatMap((each) => each.hours)];
  const starts = [
    ...shifts.map(({ endMin }) => endMin),
    ...shifts.map(({ startMin }) => startMin - EXTRA_MIN),
  ].map((start) => (start + MINUTES_PER_DAY) % MINUTES_PER_DAY);
  const start = starts.find((each) => taken.every((span) => !overlap(each, span)));
  return start === undefined
    ? undefined
    : {
        startMin: start,
        endMin: start + EXTRA_MIN > MINUTES_PER_DAY ? start + EXTRA_MIN - MINUTES_PER_DAY : start + EXTRA_MIN,
      };
}

/** Whether the hour from `start` on shares time of the day with a span. */
function overlap(start: number, { startMin, endMin }: ClockSpan): boolean {
  const length = (endMin - startMin + MINUTES_PER_DAY) % MINUTES_PER_DAY || MINUTES_PER_DAY;
  return (
    (start - startMin + MINUTES_PER_DAY) % MINUTES_PER_DAY < length ||
    (startMin - start + MINUTES_PER_DAY) % MINUTES_PER_DAY < EXTRA_MIN
  );
}
