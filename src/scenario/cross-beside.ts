import { teamPeopleAt } from './cross-carriers.js';
import { own, routesOf, siteOfStation, stepsOf, type PlacedStep } from './cross-routes.js';
import type { Finding } from './problem.js';
import type { Scenario, Station } from './scenario.js';

/** Steps side by side that cannot be, and steps that want more people than may work in one place. */
export function besideFindings(scenario: Scenario): Finding[] {
  const siteOf = siteOfStation(scenario);
  return routesOf(scenario).flatMap((route) =>
    stepsOf(route).flatMap((placed) => {
      const { at } = placed.step,
        site = siteOf.get(at),
        station = site === undefined ? undefined : own(scenario.sites[site]!.stations, at);
      if (station === undefined) return [];
      return [
        ...(placed.step.sideBySide === undefined ? [] : wrongGroup(scenario, placed, station)),
        ...crowded(scenario, placed, station.people),
      ];
    }),
  );
}

function wrongGroup(
  scenario: Scenario,
  { path, step }: PlacedStep,
  { lot: lots, failures }: Station,
): Finding[] {
  const lot =
    lots !== undefined
      ? [
          {
            path: [...path, 'at'],
            wanted: 'a station that takes units one by one',
            seen: `"${step.at}", which works on lots`,
          },
        ]
      : [];
  const wears = failures.some(({ by }) => by === 'operating time')
    ? [
        {
          path: [...path, 'at'],
          wanted:
            'a station that fails by calendar time or not at all; operating time is not counted for steps side by side',
          seen: `"${step.at}"`,
        },
      ]
    : [];
  const ownParts = step.sideBySide!.flatMap((each, i) =>
    Object.entries(each.parts).flatMap(([feeder, count]): Finding[] =>
      count === 'own' || own(scenario.feeders, feeder)?.kind === 'own'
        ? [
            {
              path: [...path, 'side by side', i, 'parts', feeder],
              wanted: 'own parts only at a step of its own',
              atKey: true,
            },
          ]
        : [],
    ),
  );
  return [...lot, ...wears, ...ownParts];
}

function crowded(scenario: Scenario, { path, step }: PlacedStep, people: number | undefined): Finding[] {
  if (people === undefined) return [];
  const asked = Object.values(step.crew).reduce((a, b) => a + b, 0),
    teams = teamPeopleAt(scenario, step.name);
  if (asked + teams <= people) return [];
  return [
    {
      path: asked > 0 ? [...path, 'crew'] : path,
      wanted: `no more people than the ${people} who can work in a place of "${step.at}"`,
      seen: teams > 0 ? `${asked} and ${teams} of teams` : String(asked),
    },
  ];
}
