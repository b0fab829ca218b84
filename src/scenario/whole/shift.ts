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
 * Work that no week has room for: station, crew and equipment never in together, a team that waits for its
 * shift where the station is shut in that, or a step in one shift that is longer than any.
 */
export function* shiftFindings(scenario: Scenario): Iterable<Finding> {
  const teams = teamsOf(scenario),
    known = new Map<string, number>(),
    told = new Set<string>();
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
    else if (longest > 0) yield* shutOut(scenario, placed, teams, calendars, told);
  }
}

/** Teams that find their step shut in the hours of every shift that has their people, or of their own. */
function* shutOut(
  scenario: Scenario,
  { step, where }: StationedStep,
  teams: ReturnType<typeof teamsOf>,
  names: readonly string[],
  told: Set<string>,
): Iterable<Finding> {
  const here = teamsAt(teams, step.name);
  for (const { name, path, kind } of here) {
    const crew = own(where?.site.crews ?? {}, kind.crew),
      calendar = own(scenario.calendars, crew?.calendar ?? where?.site.calendar ?? '');
    if (told.has(name) || crew?.shifts === undefined || calendar === undefined) continue;
    const { headcounts, handOver } = crew.shifts,
      others = names.flatMap((each) => scenario.calendars[each] ?? []),
      people = here.reduce(
        (sum, each) => (each.kind.crew === kind.crew ? sum + each.kind.people : sum),
        own(step.crew, kind.crew) ?? 0,
      );
    const shifts = calendar.hours.map((hours, shift) => ({
      count: headcounts?.[shift] ?? crew.headcount,
      number: shift + 1,
      isShut: longestTogether([{ ...calendar, hours: [hours] }, ...others]) === 0,
    }));
    const shut = shifts.find(({ count, isShut }) => count >= kind.people && isShut);
    if (handOver === 'wait' && shut !== undefined)
      yield {
        path: [...path, 'crew'],
        wanted:
          `hours of step "${step.name}" in every shift that can form ${name}, since a team stays in its ` +
          'shift; or hand over: next shift',
        seen: `none in shift ${shut.number} of ${kind.crew}`,
      };
    else if (people <= crew.headcount && shifts.every(({ count, isShut }) => isShut || count < people))
      yield {
        path: [...path, 'people'],
        wanted:
          `hours of step "${step.name}" in a shift of ${kind.crew} that has the ${people} ` + 'people for it',
        seen: 'none',
      };
    else continue;
    told.add(name);
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
