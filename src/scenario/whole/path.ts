import { type PlacedRoute, routesOf, stationsOf, stepsOf } from '../lookup/placed.js';
import { meets, type Variety, varietiesOf } from '../steps/conditions.js';
import type { Finding, Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { own } from '../values/raw.js';

type SiteOf = (station: string) => string | undefined;

/**
 * A unit cannot jump from site to site: between steps in different sites there must be a lane, and it must
 * start where the unit is.
 */
export function* pathFindings(scenario: Scenario): Iterable<Finding> {
  const stations = stationsOf(scenario),
    siteOf: SiteOf = (station) => stations.get(station)?.siteName;
  for (const route of routesOf(scenario)) {
    const found = new Map<string, Finding>(),
      ends = endsOf(scenario, route, siteOf);
    // Units of many varieties meet the same gap.
    for (const variety of varietiesOf(scenario, route.entries))
      for (const finding of walk(scenario, route, variety, siteOf, ends))
        found.set(JSON.stringify(finding), finding);
    yield* found.values();
  }
}

interface Ends {
  readonly start: string | undefined;
  readonly end: string | undefined;
}

/** Own parts start where they come off and must end where they rejoin. */
function endsOf(scenario: Scenario, route: PlacedRoute, siteOf: SiteOf): Ends {
  const { feeder, kind } = route;
  if (feeder === undefined || kind !== 'own') return { start: undefined, end: undefined };
  const main = stepsOf(routesOf(scenario)[0]).map(({ step }) => step);
  const site = (station: string | undefined): string | undefined =>
    station === undefined ? undefined : siteOf(station);
  return {
    start: site(main.find((step) => step.takesOff.includes(feeder))?.at),
    end: site(main.find((step) => own(step.parts, feeder) === 'own')?.at),
  };
}

function* walk(
  scenario: Scenario,
  route: PlacedRoute,
  variety: Variety,
  siteOf: SiteOf,
  ends: Ends,
): Iterable<Finding> {
  const whose = route.kind === 'unit' ? 'the unit is' : 'the part is';
  let here = ends.start;
  let last: Path = route.path;
  for (const [i, entry] of route.entries.entries()) {
    if (!meets(entry.when, variety)) continue;
    last = [...route.path, i];
    if (entry.kind === 'lane') {
      const lane = own(scenario.lanes, entry.lane);
      if (here !== undefined && lane !== undefined && lane.from !== here)
        yield {
          path: [...last, 'lane'],
          wanted: `a lane that starts in site ${here}, where ${whose}`,
          seen: `"${entry.lane}", from ${lane.from}`,
        };
      here = lane?.to;
    } else {
      const site = siteOf(entry.at);
      if (here !== undefined && site !== undefined && site !== here)
        yield {
          path: [...last, 'at'],
          wanted: `a station in site ${here}, where ${whose}, or a lane to site ${site} before this step`,
          seen: `"${entry.at}"`,
        };
      here = site;
    }
  }
  if (here !== undefined && ends.end !== undefined && here !== ends.end)
    yield {
      path: last,
      wanted: `an end in site ${ends.end}, where the part rejoins its unit; add a lane`,
      seen: `site ${here}`,
    };
}
