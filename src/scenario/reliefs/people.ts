import { allSteps } from '../lookup/placed.js';
import { teamsOf } from '../plant/teams.js';
import type { Scenario } from '../types/scenario.js';
import { type Relief, withEntry } from './relief.js';

/**
 * One person more in each crew, on every shift, and one team more: as many people more in its crew as it
 * takes. A crew that steps do not ask for and that only forms teams gets no use out of a part of a team.
 */
export function morePeople(scenario: Scenario): Relief[] {
  return Object.entries(scenario.sites).flatMap(([site, { crews }]) =>
    Object.keys(crews).flatMap((crew): Relief[] => {
      const sizes = teamSizes(scenario, site, crew),
        isAsked = sizes.size === 0 || isAskedByStep(scenario, site, crew);
      const person: Relief = {
        kind: 'person',
        text: `one person more in ${crew} (${site})`,
        of: { kind: 'crew', name: crew, site },
        change: (from) => withPeople(from, site, crew, 1),
      };
      const teams = [...sizes].map(
        ([people, names]): Relief => ({
          kind: 'team',
          text:
            `one team more of ${names.join(' or ')} ` +
            `(${people === 1 ? 'one person' : `${people} people`} more in ${crew}, ${site})`,
          // Teams of one size out of one crew are short of the same people.
          of:
            names.length === 1
              ? { kind: 'team', name: names.join(), site }
              : { kind: 'crew', name: crew, site },
          change: (from) => withPeople(from, site, crew, people),
        }),
      );
      // A team of one is a person.
      return isAsked ? [person, ...teams.filter((_, i) => [...sizes.keys()][i] !== 1)] : teams;
    }),
  );
}

/** The teams that a crew forms: their names by how many people one takes. */
function teamSizes(scenario: Scenario, site: string, crew: string): ReadonlyMap<number, string[]> {
  const sizes = new Map<number, string[]>();
  for (const { name, kind, steps } of teamsOf(scenario))
    if (kind.crew === crew && steps[0]?.where?.siteName === site)
      sizes.set(kind.people, [...(sizes.get(kind.people) ?? []), name]);
  return sizes;
}

const isAskedByStep = (scenario: Scenario, site: string, crew: string): boolean =>
  allSteps(scenario).some(({ step, where }) => where?.siteName === site && Object.hasOwn(step.crew, crew));

const withPeople = (from: Scenario, site: string, crew: string, more: number): Scenario =>
  withEntry(from, 'sites', site, (its) =>
    withEntry(its, 'crews', crew, (people) => ({
      ...people,
      headcount: people.headcount + more,
      ...(people.shifts !== undefined && {
        shifts: { ...people.shifts, headcounts: people.shifts.headcounts?.map((each) => each + more) },
      }),
    })),
  );
