import type { Finding, Path } from '../types/problem.js';

import type { Stretch, Team } from '../types/carriers.js';
import type { Scenario } from '../types/scenario.js';
import { mapOf } from '../whole/outline.js';
import type { Names, Outline, RawMap } from '../whole/outline.js';
import { own, routesOf, siteOfStation, stepsOf } from '../whole/placed.js';
import type { PlacedRoute, PlacedStep } from '../whole/placed.js';

/**
 * Names in carriers and teams. Whether their steps are of one route and in order is asked when all names are
 * known.
 */
export function lookAtStretches(
  raw: RawMap,
  outline: Outline,
  look: (path: Path, name: unknown, known: Names | undefined, what: string) => void,
): void {
  const stepNames = new Set(outline.routes.flatMap(({ steps }) => [...steps.keys()]));
  for (const section of ['carriers', 'teams']) {
    for (const [name, value] of Object.entries(mapOf(raw[section]))) {
      const stretch = mapOf(value),
        path = [section, name];
      for (const end of ['from', 'to']) look([...path, end], stretch[end], stepNames, 'step of this name');
      look([...path, 'hours'], stretch['hours'], outline.calendars, 'calendar of this name');
      const site = siteOfStep(outline, stretch['from']);
      if (site !== undefined)
        look(
          [...path, 'crew'],
          stretch['crew'],
          outline.crewsOf?.get(site),
          `crew of this name in site ${site}`,
        );
    }
  }
}

function siteOfStep({ routes, stations }: Outline, step: unknown): string | undefined {
  const found = routes
    .flatMap(({ entries }) => entries)
    .find(({ entry }) => typeof step === 'string' && entry['step'] === step);
  return stations?.get(String(found?.entry['at']));
}

/** A unit keeps what stays with it as bits of one number. */
const MOST = 31;

/**
 * Stretches that go backwards or over two routes, claims for a lot, teams that would have to travel, more
 * people than there are.
 */
export function carrierFindings(scenario: Scenario): Finding[] {
  const siteOf = siteOfStation(scenario);
  const all = [
    ...placed(scenario, 'carriers', scenario.carriers),
    ...placed(scenario, 'teams', scenario.teams),
  ];
  const count = Object.keys(scenario.carriers).length + Object.keys(scenario.teams).length;
  return [
    ...(count > MOST
      ? [
          {
            path: [Object.keys(scenario.teams).length > 0 ? 'teams' : 'carriers'],
            wanted: `at most ${MOST} kinds of carriers and teams together`,
            seen: String(count),
            atKey: true,
          },
        ]
      : []),
    ...all.flatMap((stretch) => wrongOrder(scenario, stretch)),
    ...all.flatMap((stretch) => fromLot(scenario, stretch, siteOf)),
    ...Object.entries(scenario.teams).flatMap(([name, team]) =>
      travels(name, all, siteOf, scenario).concat(tooMany(scenario, name, team, siteOf)),
    ),
  ];
}

/** Names of the crews of the teams that are with a unit at a step. */
export function teamCrewsAt(scenario: Scenario, step: string): string[] {
  return placed(scenario, 'teams', scenario.teams)
    .filter((stretch) => stretch.steps.some((each) => each.step.name === step))
    .map(({ name }) => scenario.teams[name]!.crew);
}

/** People of teams that are with a unit at a step. */
export function teamPeopleAt(scenario: Scenario, step: string): number {
  return placed(scenario, 'teams', scenario.teams).reduce(
    (sum, { name, steps }) =>
      steps.some((each) => each.step.name === step) ? sum + scenario.teams[name]!.people : sum,
    0,
  );
}

/** `steps` are those from..to; empty where they are not of one route and in order. */
interface PlacedStretch extends Stretch {
  readonly name: string;
  readonly path: Path;
  readonly route: PlacedRoute | undefined;
  readonly steps: readonly PlacedStep[];
}

function placed(
  scenario: Scenario,
  section: string,
  stretches: Readonly<Record<string, Stretch>>,
): PlacedStretch[] {
  const routes = routesOf(scenario);
  return Object.entries(stretches).map(([name, { from, to }]) => {
    const route = routes.find((each) => stepsOf(each).some(({ step }) => step.name === from));
    const steps = route === undefined ? [] : stepsOf(route),
      indexOf = (wanted: string): number => steps.find(({ step }) => step.name === wanted)?.index ?? -1;
    return {
      name,
      from,
      to,
      path: [section, name],
      route,
      steps: steps.filter(({ index }) => indexOf(from) <= index && index <= indexOf(to)),
    };
  });
}

function wrongOrder(scenario: Scenario, { from, to, path, route, steps }: PlacedStretch): Finding[] {
  if (route === undefined || steps.length > 0) return [];
  const elsewhere =
    !stepsOf(route).some(({ step }) => step.name === to) &&
    routesOf(scenario).some((other) => stepsOf(other).some(({ step }) => step.name === to));
  return [
    {
      path: [...path, 'to'],
      wanted: `"${from}" or a later step of the same route`,
      seen: `"${to}", which ${elsewhere ? 'is in another' : 'comes earlier'}`,
    },
  ];
}

function fromLot(
  scenario: Scenario,
  { path, steps: [first] }: PlacedStretch,
  siteOf: Map<string, string>,
): Finding[] {
  const site = first === undefined ? undefined : siteOf.get(first.step.at);
  if (site === undefined || own(scenario.sites[site]!.stations, first!.step.at)?.lot === undefined) return [];
  return [
    {
      path: [...path, 'from'],
      wanted: 'a step at a station that takes units one by one',
      seen: `"${first!.step.name}", at "${first!.step.at}", which works on lots`,
    },
  ];
}

/** People of a site stay there. */
function travels(
  name: string,
  all: readonly PlacedStretch[],
  siteOf: Map<string, string>,
  scenario: Scenario,
): Finding[] {
  const { path, route, steps } = all.find((each) => each.name === name && each.path[0] === 'teams')!,
    [first] = steps,
    last = steps.at(-1);
  if (first === undefined || last === undefined) return [];
  const home = siteOf.get(first.step.at);
  const wanted = `steps in site ${home}, where the crew is, without a lane between`;
  for (const entry of route!.entries.slice(first.index, last.index + 1)) {
    if (entry.kind === 'lane')
      return [{ path: [...path, 'to'], wanted, seen: `"${last.step.name}", behind lane "${entry.lane}"` }];
    const site = siteOf.get(entry.at);
    if (site !== home && site !== undefined && scenario.sites[site] !== undefined)
      return [{ path: [...path, 'to'], wanted, seen: `"${entry.name}", in site ${site}` }];
  }
  return [];
}

/**
 * The people of all teams of one crew that are with a unit at a step, and those of the step, are there
 * together.
 */
function tooMany(
  scenario: Scenario,
  name: string,
  { crew, people }: Team,
  siteOf: Map<string, string>,
): Finding[] {
  const all = placed(scenario, 'teams', scenario.teams),
    mine = all.find((each) => each.name === name)!,
    home = mine.steps[0] === undefined ? undefined : siteOf.get(mine.steps[0].step.at);
  if (home !== undefined && own(scenario.sites[home]!.crews, crew)?.shifts !== undefined) {
    return [
      {
        path: ['teams', name, 'crew'],
        wanted:
          'a crew that is the same on every shift: a team stays with its unit from one shift to the next',
        seen: `"${crew}", with headcounts, absence or hand-over of its own`,
      },
    ];
  }
  for (const { step } of mine.steps) {
    const site = siteOf.get(step.at),
      headcount = site === undefined ? undefined : own(scenario.sites[site]!.crews, crew)?.headcount;
    if (headcount === undefined) continue;
    const others = all.filter(
      (each) =>
        each.name !== name &&
        scenario.teams[each.name]!.crew === crew &&
        each.steps.some((other) => other.step.name === step.name),
    );
    const beside = others.reduce(
      (sum, each) => sum + scenario.teams[each.name]!.people,
      own(step.crew, crew) ?? 0,
    );
    if (people + beside <= headcount) continue;
    return [
      {
        path: ['teams', name, 'people'],
        wanted:
          `at most ${Math.max(0, headcount - beside)}, the headcount of ${crew} in site ` +
          `${site}${beside > 0 ? ` less the ${beside} that step "${step.name}" wants beside` : ''}`,
        seen: String(people),
      },
    ];
  }
  return [];
}
