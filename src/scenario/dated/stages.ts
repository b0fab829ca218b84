import { CalendarBook } from '../calendar/book.js';
import { dayNumber } from '../calendar/date.js';
import type { WorkingDay } from '../calendar/days.js';
import { releaseSite } from '../programme/rates.js';
import { midnightOf, type RunSpan } from '../programme/span.js';
import type { Crew } from '../types/plant.js';
import type { Scenario } from '../types/scenario.js';
import { own } from '../values/raw.js';

/** A scenario that holds up to a time, minutes since the start. */
export interface TimedStage {
  readonly until: number;
  readonly scenario: Scenario;
}

/**
 * The scenario and how it is before, as one is compiled beside the other: the stages that end after the
 * start, with programme and outages (which have dates of their own) of the scenario. Where some stage says
 * of a crew what its shifts are, all do.
 */
export function stagesOf(
  scenario: Scenario,
  span: RunSpan,
): { readonly last: Scenario; readonly stages: readonly TimedStage[] } {
  const { before = [], programme, outages } = scenario,
    alone: Scenario = { ...scenario, before: undefined };
  const stages = before
    .map((stage) => ({
      until: midnightOf(dayNumber(stage.until), span),
      scenario: { ...stage.scenario, programme, outages, before: undefined },
    }))
    .filter(({ until }, i, all) => until > (all[i - 1]?.until ?? 0) && until > 0);
  if (stages.length === 0) return { last: alone, stages };
  const all = [alone, ...stages.map((stage) => stage.scenario)],
    last = withShifts(scenario, all);
  return {
    last,
    stages: stages.map(({ until, scenario: stage }) => ({ until, scenario: withShifts(stage, all) })),
  };
}

/**
 * Crews that are the same on every shift here but not in all of the scenarios get shifts with that number.
 */
function withShifts(scenario: Scenario, all: readonly Scenario[]): Scenario {
  const siteWithShifts = (name: string, crews: Readonly<Record<string, Crew>>): Record<string, Crew> =>
    Object.fromEntries(
      Object.entries(crews).map(([crew, spec]) => {
        const others = all.flatMap(({ sites }) => own(own(sites, name)?.crews ?? {}, crew)?.shifts ?? []),
          [other] = others;
        return [
          crew,
          spec.shifts !== undefined || other === undefined
            ? spec
            : { ...spec, shifts: { headcounts: undefined, absence: 0, handOver: other.handOver } },
        ];
      }),
    );
  return {
    ...scenario,
    sites: Object.fromEntries(
      Object.entries(scenario.sites).map(([name, site]) => [
        name,
        { ...site, crews: siteWithShifts(name, site.crews) },
      ]),
    ),
  };
}

/**
 * Working days of the first station's site, on which units are released and programmes counted: each by the
 * scenario that holds on its date.
 */
export function releaseWorkingDays(
  scenario: Scenario,
  span: RunSpan,
  book = new CalendarBook(scenario, span),
): readonly WorkingDay[] {
  const site = releaseSite(scenario),
    days = book.workingDays(site.calendar, site.zone);
  let since = -Infinity;
  const before: WorkingDay[] = [];
  for (const stage of scenario.before ?? []) {
    if (stage.until <= scenario.programme.start) continue;
    const until = dayNumber(stage.until),
      { calendar, zone } = releaseSite(stage.scenario);
    for (const day of new CalendarBook(stage.scenario, span).workingDays(calendar, zone))
      if (since <= day.day && day.day < until) before.push(day);
    since = Math.max(since, until);
  }
  return before.length === 0 ? days : [...before, ...days.filter(({ day }) => day >= since)];
}
