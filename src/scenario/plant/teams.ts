import type { Model } from '../../flow/model/model.js';
import { CREW } from '../../flow/model/resources.js';
import { at } from '../lookup/columns.js';
import type { Lookup } from '../lookup/outline.js';
import { type PlacedStation, stationsOf } from '../lookup/placed.js';
import type { Team } from '../types/plant.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name } from '../values/keys.js';
import { mapOf, own, placesAt, type RawMap } from '../values/raw.js';
import { whole } from '../values/scalars.js';
import { type PlacedStretch, placedStretches, stretchKeys } from './stretches.js';

export const teamSchema = keys(
  {
    crew: name('the name of a crew').describe(
      'The crew, at the site of the steps. Where it has other people on another shift, as many teams have ' +
        'people as there are people for; the others stay with their units and wait. Example: technicians',
    ),
    people: whole(1).describe('How many of its people stay with one unit. Example: 2'),
    ...stretchKeys,
  },
  'a team: a map with the keys crew, people, from and to, such as { crew: technicians, people: ' +
    '2, from: fit battery, to: hand over }',
);

/** Crews of teams, at the site of their first step. */
export function teamNames(raw: RawMap, { outline, look }: Lookup): void {
  const stationOf = new Map<unknown, unknown>();
  for (const { entry } of outline.routes.flatMap(({ entries }) => entries))
    if (typeof entry['step'] === 'string' && !stationOf.has(entry['step']))
      stationOf.set(entry['step'], entry['at']);
  for (const { path, value } of placesAt(raw, [], ['teams', '*'])) {
    const { from, crew } = mapOf(value),
      site = outline.stations?.get(String(stationOf.get(from)));
    if (site !== undefined)
      look([...path, 'crew'], crew, outline.crewsOf?.get(site), `crew of this name in site ${site}`);
  }
}

type PlacedTeam = PlacedStretch<Team>;

export const teamsOf = (scenario: Scenario): PlacedTeam[] =>
  placedStretches(scenario, 'teams', scenario.teams);
/** The teams that are with a unit at a step. */
export const teamsAt = (teams: readonly PlacedTeam[], step: string): PlacedTeam[] =>
  teams.filter(({ names }) => names.has(step));

/** Teams that would have to travel, more people than there are. */
export function* teamFindings(scenario: Scenario): Iterable<Finding> {
  const stations = stationsOf(scenario),
    all = teamsOf(scenario);
  for (const team of all) {
    yield* travels(team, stations);
    yield* tooMany(team, all);
  }
}

/** People of a site stay there. */
function* travels(
  { path, route, steps }: PlacedTeam,
  stations: ReadonlyMap<string, PlacedStation>,
): Iterable<Finding> {
  const [first] = steps,
    last = steps.at(-1);
  if (route === undefined || first === undefined || last === undefined) return;
  const home = first.where?.siteName;
  for (const entry of route.entries.slice(first.index, last.index + 1)) {
    const site = entry.kind === 'lane' ? undefined : stations.get(entry.at)?.siteName;
    if (entry.kind === 'step' && (site === undefined || site === home)) continue;
    yield {
      path: [...path, 'to'],
      wanted: `steps in site ${home}, where the crew is, without a lane between`,
      seen:
        entry.kind === 'lane'
          ? `"${last.step.name}", behind lane "${entry.lane}"`
          : `"${entry.name}", in site ${site}`,
    };
    return;
  }
}

/** All teams of one crew that are with a unit at a step, and the people of the step, are there together. */
function* tooMany(
  { name, path, kind: { crew, people }, steps }: PlacedTeam,
  all: readonly PlacedTeam[],
): Iterable<Finding> {
  for (const { step, where } of steps) {
    const its = where && own(where.site.crews, crew);
    if (its === undefined) continue;
    const beside = teamsAt(all, step.name)
      .filter((each) => each.name !== name && each.kind.crew === crew)
      .reduce((sum, each) => sum + each.kind.people, own(step.crew, crew) ?? 0);
    if (people + beside <= its.headcount) {
      const counts = its.shifts?.handOver === 'wait' ? (its.shifts.headcounts ?? []) : [],
        short = counts.find((count) => people <= count && count < people + beside);
      if (short === undefined) continue;
      yield {
        path: [...path, 'people'],
        wanted:
          `at least ${people + beside} people in each shift that can form the team, since it stays in its ` +
          `shift and step "${step.name}" needs ${beside} of ${crew} as well; or hand over: next shift`,
        seen: `a shift of ${short}`,
      };
      return;
    }
    const rest = beside > 0 ? ` less the ${beside} that step "${step.name}" needs as well` : '';
    yield {
      path: [...path, 'people'],
      wanted:
        `at most ${Math.max(0, its.headcount - beside)}, the headcount of ${crew} in site ` +
        `${where?.siteName}${rest}`,
      seen: String(people),
    };
    return;
  }
}

/**
 * Calendars of the teams that are with a unit at a step: the work of the step goes on in their hours only.
 */
export function teamCalendars(
  { companions, resources }: Pick<Model, 'companions' | 'resources'>,
  step: number,
): number[] {
  return [...companions.resource].flatMap((resource, s) =>
    resources.kind[resource] === CREW && at(companions.from, s) <= step && step <= at(companions.to, s)
      ? [at(resources.calendar, resource)]
      : [],
  );
}
