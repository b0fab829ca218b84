import type { Scenario } from '../scenario/scenario.js';
import { withEntry, type Relief } from './relief.js';

/** One person more in each crew, on every shift. */
export function morePeople(scenario: Scenario): Relief[] {
  return Object.entries(scenario.sites).flatMap(([site, { crews }]) =>
    Object.keys(crews).map(
      (crew): Relief => ({
        kind: 'person',
        text: `one person more in ${crew} (${site})`,
        change: (from) => ({
          ...from,
          sites: withEntry(from.sites, site, (its) => ({
            ...its,
            crews: withEntry(its.crews, crew, (people) => ({
              ...people,
              headcount: people.headcount + 1,
              ...(people.shifts !== undefined && {
                shifts: { ...people.shifts, headcounts: people.shifts.headcounts?.map((each) => each + 1) },
              }),
            })),
          })),
        }),
      }),
    ),
  );
}
