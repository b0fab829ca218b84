import type { StationStep } from '../types/steps.js';
import type { CalendarSpec } from '../types/calendars.js';
import type { Finding } from '../types/problem.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { leastOf } from '../../random/moments.js';
import { teamCrewsAt } from '../plant/stretches.js';
import { lengthOf, offsetIn, WEEK } from '../calendar/calendars.js';
import { own, possibleValues, routesOf, siteOfStation, stepsOf } from './placed.js';

import type { Scenario } from '../types/scenario.js';

/**
 * Work that no week has room for: station and crew never in together, or a step in one shift that is longer
 * than any.
 */
export function shiftFindings(scenario: Scenario): Finding[] {
  const siteOf = siteOfStation(scenario);
  const known = new Map<string, number>();
  const longestOf = (calendars: readonly string[]): number => {
    const key = JSON.stringify(calendars);
    const longest = known.get(key) ?? longestTogether(calendars.map((name) => scenario.calendars[name]!));
    known.set(key, longest);
    return longest;
  };
  return routesOf(scenario).flatMap((route) =>
    stepsOf(route).flatMap(({ path, step }): Finding[] => {
      const site = siteOf.get(step.at);
      const calendars = site === undefined ? [] : calendarsOf(scenario, site, step);
      if (calendars.length === 0 || (step.work === undefined && step.passes === undefined)) return [];
      const longest = longestOf(calendars);
      // A single calendar without working time is reported as such.
      if (longest === 0 && calendars.length === 1) return [];
      if (longest === 0)
        return [
          {
            path: [...path, 'crew'],
            wanted: 'a station and crews that are in at the same time in some hour of the week',
            seen: 'none',
          },
        ];
      const least = step.oneShift ? leastWork(scenario, step) : 0;
      return least > longest
        ? [
            {
              path: [...path, 'in one shift'],
              wanted: `work of at most ${longest} min, the longest shift less its breaks`,
              seen: `at least ${Math.round(least * 100) / 100} min`,
            },
          ]
        : [];
    }),
  );
}

/** Most working minutes of one shift in which all are in. */
function longestTogether(calendars: readonly CalendarSpec[]): number {
  const together = calendars.map(weekOf).reduce((a, b) => a.map((minute, i) => minute & b[i]!));
  return Math.min(...calendars.map((calendar) => longestShift(calendar, together)));
}

/** Names of the calendars of the station and its crews, each once; who is always in has none. */
function calendarsOf(scenario: Scenario, siteName: string, step: StationStep): string[] {
  const site = scenario.sites[siteName]!;
  const station = site.stations[step.at]!;
  const names = [...Object.keys(step.crew), ...teamCrewsAt(scenario, step.name)].flatMap((name) => {
    const crew = own(site.crews, name);
    return crew === undefined ? [] : [crew.calendar ?? site.calendar];
  });
  if (!station.unattended) names.push(station.calendar ?? site.calendar);
  return [...new Set(names)].filter(
    (name) => name !== undefined && own(scenario.calendars, name) !== undefined,
  ) as string[];
}

/** Each minute of a week without holidays: 1 working, 0 not. */
function weekOf({ hours, breaks, on }: CalendarSpec): Uint8Array {
  const week = new Uint8Array(WEEK);
  const fill = (value: number, start: number, length: number): void => {
    for (let i = 0; i < length; i++) week[(start + i) % WEEK] = value;
  };
  for (const day of on) {
    for (const shift of hours) {
      const start = (day - 1) * MINUTES_PER_DAY + shift.startMin;
      fill(1, start, lengthOf(shift));
      for (const pause of breaks) {
        const offset = offsetIn(shift, pause);
        if (offset !== undefined) fill(0, start + offset, lengthOf(pause));
      }
    }
  }
  return week;
}

/** Most working minutes (of `together`) in a shift of the calendar. */
function longestShift({ hours, on }: CalendarSpec, together: Uint8Array): number {
  const lengths = on.flatMap((day) =>
    hours.map((shift) => {
      let minutes = 0;
      for (let i = 0; i < lengthOf(shift); i++)
        minutes += together[((day - 1) * MINUTES_PER_DAY + shift.startMin + i) % WEEK]!;
      return minutes;
    }),
  );
  return Math.max(...lengths);
}

/** Least work time in minutes of the variety that takes longest. */
function leastWork(scenario: Scenario, step: StationStep): number {
  const once =
    step.passes === undefined
      ? step.work === undefined
        ? 0
        : leastOf(step.work)
      : step.passes.count * leastOf(step.passes.work);
  const factors = Object.entries(step.workFactor).map(([option, factor]) => {
    const values = possibleValues(scenario.programme.options, option, step.when);
    return values.length === 0 ? 1 : Math.max(...values.map((value) => own(factor, value) ?? 1));
  });
  return factors.reduce((time, factor) => time * factor, once);
}
