import { DAY, lengthOf, WEEK } from './cross-calendar.js';
import { own } from './cross-routes.js';
import type { Finding, Path } from './problem.js';
import type { CalendarSpec, ClockSpan, Scenario } from './scenario.js';
import type { Overtime } from './scenario-crews.js';

/** Headcounts that do not fit the shifts, overtime in the usual hours or twice, rules that know no due date. */
export function crewFindings(scenario: Scenario): Finding[] {
  return [
    ...shiftsFindings(scenario),
    ...Object.entries(scenario.calendars).flatMap(([name, calendar]) =>
      overtimeFindings(scenario, ['calendars', name, 'overtime'], calendar),
    ),
  ];
}

function shiftsFindings({ sites, calendars }: Scenario): Finding[] {
  return Object.entries(sites).flatMap(([site, { crews, calendar: usual }]) =>
    Object.entries(crews).flatMap(([name, { calendar = usual, shifts }]): Finding[] => {
      const path = ['sites', site, 'crews', name];
      if (shifts === undefined) return [];
      const { headcounts } = shifts,
        key = headcounts !== undefined ? 'headcount' : shifts.absence > 0 ? 'absence' : 'hand over';
      if (calendar === undefined)
        return [
          {
            path: [...path, key],
            wanted: 'a crew with a calendar, which says what its shifts are; give the crew or its site one',
            seen: 'none',
          },
        ];
      const hours = own(calendars, calendar)?.hours.length;
      if (hours === undefined || headcounts === undefined || headcounts.length === hours) return [];
      return [
        {
          path: [...path, 'headcount'],
          wanted: `one number, or ${hours}, one for each shift in the hours of calendar ${calendar}`,
          seen: `a list of ${headcounts.length}`,
        },
      ];
    }),
  );
}

function overtimeFindings({ programme }: Scenario, path: Path, calendar: CalendarSpec): Finding[] {
  const usual = minutesOf(calendar.on, calendar.hours);
  return calendar.overtime.flatMap((entry, i): Finding[] => {
    const here = minutesOf(entry.on ?? calendar.on, entry.hours),
      found: Finding[] = [];
    if (meet(here, usual))
      found.push({
        path: [...path, i, 'hours'],
        wanted: 'hours outside the shifts of the calendar',
        seen: 'some inside',
      });
    const before = calendar.overtime
      .slice(0, i)
      .findIndex(
        (other) => sameDates(entry, other) && meet(here, minutesOf(other.on ?? calendar.on, other.hours)),
      );
    if (before >= 0)
      found.push({
        path: [...path, i, 'hours'],
        wanted: `hours that no earlier entry of overtime has on the same days; entry ${before + 1} has some of them`,
        seen: 'the same hours',
      });
    if (entry.when !== undefined && programme.release.kind !== 'rate')
      found.push({
        path: [...path, i, 'when'],
        wanted: 'a programme with a `rate`, which says when units are due; leave the rule out or give a rate',
        seen: 'none',
      });
    return found;
  });
}

/** Minutes of a week: 1 in one of the spans on one of the days. */
function minutesOf(on: readonly number[], hours: readonly ClockSpan[]): Uint8Array {
  const week = new Uint8Array(WEEK);
  for (const day of on)
    for (const span of hours)
      for (let i = 0; i < lengthOf(span); i++) week[((day - 1) * DAY + span.startMin + i) % WEEK] = 1;
  return week;
}

const meet = (a: Uint8Array, b: Uint8Array): boolean => a.some((minute, i) => minute === 1 && b[i] === 1);

const sameDates = (a: Overtime, b: Overtime): boolean =>
  (a.from ?? '') <= (b.to ?? '9') && (b.from ?? '') <= (a.to ?? '9');
