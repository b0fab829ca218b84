import { dayNumber, weekday } from '../../scenario/calendar/date.js';
import { calendarOf } from '../../scenario/lookup/placed.js';
import { releaseSite } from '../../scenario/programme/rates.js';
import type { Scenario } from '../../scenario/types/scenario.js';

/** Days that would be working days and are off, for one reason. */
export interface DaysOff {
  readonly kind: 'shutdown' | 'holiday';
  /** Its note, or its dates; and in which calendars where the first station's site works. */
  readonly what: string;
  /** Day numbers, see `calendar/date.ts`. */
  readonly days: ReadonlySet<number>;
}

interface Span {
  readonly from: string;
  readonly to: string;
  readonly kind: DaysOff['kind'];
  readonly note: string | undefined;
  readonly calendar: string;
}

/**
 * Holidays and shutdowns of the calendars of sites, stations, crews and lanes, in the order of their dates.
 * What has the same dates in several calendars is one, a shutdown before a holiday.
 */
export function daysOff(scenario: Scenario): DaysOff[] {
  const release = releaseSite(scenario).calendar,
    groups = new Map<string, Span[]>();
  for (const span of spansOff(scenario)) {
    const key = `${span.from} ${span.to}`;
    groups.set(key, [...(groups.get(key) ?? []), span]);
  }
  return [...groups.values()]
    .map((spans): DaysOff => {
      const { kind, note, from, to } = spans.find((each) => each.kind === 'shutdown') ?? spans[0],
        calendars = spans.map(({ calendar }) => calendar),
        dates = from === to ? from : `${from} to ${to}`,
        where = release !== undefined && calendars.includes(release) ? '' : ` in ${calendars.join(', ')}`;
      return {
        kind,
        what: (note === undefined ? dates : `"${note}"`) + where,
        days: new Set(spans.flatMap((span) => workingDaysOf(scenario, span))),
      };
    })
    .filter(({ days }) => days.size > 0)
    .sort((a, b) => Math.min(...a.days) - Math.min(...b.days));
}

function spansOff(scenario: Scenario): Span[] {
  return calendarsInUse(scenario).flatMap((calendar) => {
    const { holidays = [], shutdowns = [] } = calendarOf(scenario, calendar) ?? {};
    return [
      ...shutdowns.map((each) => ({ ...each, kind: 'shutdown' as const, calendar })),
      ...holidays.map((each) => ({ ...each, kind: 'holiday' as const, note: undefined, calendar })),
    ];
  });
}

function workingDaysOf(scenario: Scenario, { from, to, calendar }: Span): number[] {
  const on = calendarOf(scenario, calendar)?.on ?? [],
    first = dayNumber(from);
  return Array.from({ length: dayNumber(to) - first + 1 }, (_, i) => first + i).filter((day) =>
    on.includes(weekday(day)),
  );
}

/** Each once; of lanes, their driving hours. */
function calendarsInUse({ sites, lanes }: Scenario): string[] {
  const names = [
    ...Object.values(sites).flatMap(({ calendar, stations, crews }) => [
      calendar,
      ...[...Object.values(stations), ...Object.values(crews)].map((each) => each.calendar),
    ]),
    ...Object.values(lanes).map(({ hours }) => hours),
  ];
  return [...new Set(names)].filter((name) => name !== undefined);
}
