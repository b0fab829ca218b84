import { leastOf } from '../../random/distribution.js';
import { lengthOf, WEEK, weekOf, weekShifts } from '../calendar/days.js';
import { allSteps, type StationedStep } from '../lookup/placed.js';
import { teamsAt, teamsOf } from '../plant/teams.js';
import { possibleValues } from '../steps/conditions.js';
import type { CalendarSpec } from '../types/calendars.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import type { StationStep } from '../types/steps.js';
import { own, remembered } from '../values/raw.js';

/**
 * Work that no week has room for: station, crew and equipment never in together, or a step in one shift that
 * is longer than any.
 */
export function* shiftFindings(scenario: Scenario): Iterable<Finding> {
  const teams = teamsOf(scenario),
    known = new Map<string, number>();
  for (const placed of allSteps(scenario)) {
    const { path, step } = placed,
      calendars = calendarsOf(scenario, placed, teams);
    if (calendars.length === 0 || (step.work === undefined && step.passes === undefined)) continue;
    const longest = remembered(known, JSON.stringify(calendars), () =>
      longestTogether(calendars.flatMap((name) => scenario.calendars[name] ?? [])),
    );
    const least = step.oneShift ? leastWork(scenario, step) : 0;
    if (longest > 0 && least > longest)
      yield {
        path: [...path, 'in one shift'],
        wanted: `work of at most ${longest} min, the longest shift less its breaks`,
        seen: `at least ${Math.round(least * 100) / 100} min`,
      };
    // A single calendar without working time is reported as such.
    if (longest === 0 && calendars.length > 1)
      yield {
        path: [...path, claimedBy(step)[0]],
        wanted: `${TOGETHER[claimedBy(step).join()]} that are in at the same time in some hour of the week`,
        seen: 'none',
      };
  }
}

const TOGETHER: Readonly<Record<string, string>> = {
  crew: 'a station and crews',
  equipment: 'a station and equipment',
  'crew,equipment': 'a station, crews and equipment',
};

/** The keys of a step by which it claims, that of people first where there is one or they are of a team. */
function claimedBy({ crew, equipment = {} }: StationStep): ['crew' | 'equipment', ...string[]] {
  if (Object.keys(equipment).length === 0) return ['crew'];
  return Object.keys(crew).length === 0 ? ['equipment'] : ['crew', 'equipment'];
}

/** Most working minutes of one shift in which all are in. */
function longestTogether(calendars: readonly CalendarSpec[]): number {
  const together = calendars.map(weekOf).reduce((a, b) => a.map((minute, i) => minute & (b[i] ?? 0)));
  return Math.min(...calendars.map((calendar) => longestShift(calendar, together)));
}

/** Names of the calendars of the station, its crews and equipment, each once; what is always in has none. */
function calendarsOf(
  { calendars }: Scenario,
  { step, where }: StationedStep,
  teams: ReturnType<typeof teamsOf>,
): string[] {
  if (where === undefined) return [];
  const { site, station } = where,
    crews = [...Object.keys(step.crew), ...teamsAt(teams, step.name).map(({ kind }) => kind.crew)];
  const claimed = [
    ...crews.flatMap((name) => own(site.crews, name) ?? []),
    ...Object.keys(step.equipment ?? {}).flatMap((name) => own(site.equipment ?? {}, name) ?? []),
    ...(station.unattended ? [] : [station]),
  ];
  const names = claimed.flatMap(({ calendar }) => calendar ?? site.calendar ?? []);
  return [...new Set(names)].filter((name) => Object.hasOwn(calendars, name));
}

/** Most working minutes (of `together`) in a shift of the calendar. */
function longestShift(calendar: CalendarSpec, together: Uint8Array): number {
  const lengths = weekShifts(calendar).map(({ shift, start }) => {
    let minutes = 0;
    for (let i = 0; i < lengthOf(shift); i++) minutes += together[(start + i) % WEEK] ?? 0;
    return minutes;
  });
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
