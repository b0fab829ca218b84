import type { Model } from '../../flow/model/model.js';
import { CREW } from '../../flow/model/resources.js';
import { at } from '../lookup/columns.js';
import { type PlacedStation, stationsOf } from '../lookup/placed.js';
import type { Team } from '../types/plant.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name } from '../values/keys.js';
import { own } from '../values/raw.js';
import { whole } from '../values/scalars.js';
import { type PlacedStretch, placedStretches, stretchKeys } from './stretches.js';

export const teamSchema = keys(
  {
    crew: name('the name of a crew').describe('The crew, at the site of the steps. Example: technicians'),
    people: whole(1).describe('How many of its people stay with one unit. Example: 2'),
    ...stretchKeys,
  },
  'a team: a map with the keys crew, people, from and to, such as { crew: technicians, people: ' +
    '2, from: fit battery, to: hand over }',
);

type PlacedTeam = PlacedStretch<Team>;
type Stations = ReadonlyMap<string, PlacedStation>;

const teamsOf = (scenario: Scenario): PlacedTeam[] => placedStretches(scenario, 'teams', scenario.teams);
const isWith = ({ steps }: PlacedTeam, step: string): boolean =>
  steps.some((each) => each.step.name === step);
/** The teams that are with a unit at a step. */
export const teamsAt = (scenario: Scenario, step: string): Team[] =>
  teamsOf(scenario)
    .filter((team) => isWith(team, step))
    .map(({ kind }) => kind);

/** Teams that would have to travel, more people than there are. */
export function teamFindings(scenario: Scenario): Finding[] {
  const stations = stationsOf(scenario),
    all = teamsOf(scenario);
  return all.flatMap((team) => [...travels(team, stations), ...tooMany(team, all, stations)]);
}

/** People of a site stay there. */
function travels({ path, route, steps }: PlacedTeam, stations: Stations): Finding[] {
  const [first] = steps,
    last = steps.at(-1);
  if (route === undefined || first === undefined || last === undefined) return [];
  const home = stations.get(first.step.at)?.siteName;
  const wanted = `steps in site ${home}, where the crew is, without a lane between`;
  for (const entry of route.entries.slice(first.index, last.index + 1)) {
    if (entry.kind === 'lane')
      return [{ path: [...path, 'to'], wanted, seen: `"${last.step.name}", behind lane "${entry.lane}"` }];
    const site = stations.get(entry.at)?.siteName;
    if (site !== home && site !== undefined)
      return [{ path: [...path, 'to'], wanted, seen: `"${entry.name}", in site ${site}` }];
  }
  return [];
}

/** All teams of one crew that are with a unit at a step, and the people of the step, are there together. */
function tooMany(
  { name, path, kind, steps }: PlacedTeam,
  all: readonly PlacedTeam[],
  stations: Stations,
): Finding[] {
  const { crew, people } = kind,
    [first] = steps,
    home = first === undefined ? undefined : stations.get(first.step.at)?.site;
  if (home !== undefined && own(home.crews, crew)?.shifts !== undefined) {
    return [
      {
        path: [...path, 'crew'],
        wanted:
          'a crew that is the same on every shift: a team stays with its unit from one shift to the next',
        seen: `"${crew}", with headcounts, absence or hand-over of its own`,
      },
    ];
  }
  for (const { step } of steps) {
    const placed = stations.get(step.at),
      headcount = placed === undefined ? undefined : own(placed.site.crews, crew)?.headcount;
    if (placed === undefined || headcount === undefined) continue;
    const beside = all
      .filter((each) => each.name !== name && each.kind.crew === crew && isWith(each, step.name))
      .reduce((sum, each) => sum + each.kind.people, own(step.crew, crew) ?? 0);
    if (people + beside <= headcount) continue;
    const rest = beside > 0 ? ` less the ${beside} that step "${step.name}" needs as well` : '';
    return [
      {
        path: [...path, 'people'],
        wanted:
          `at most ${Math.max(0, headcount - beside)}, the headcount of ${crew} in site ` +
          `${placed.siteName}${rest}`,
        seen: String(people),
      },
    ];
  }
  return [];
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
