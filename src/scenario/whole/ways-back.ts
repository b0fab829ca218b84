import { routesOf, sendBacksOf } from '../lookup/placed.js';
import { lanesBack, nameAt, type WayBack, waysBackOf } from '../lookup/ways-back.js';
import { meets, varietiesOf } from '../steps/conditions.js';
import type { Finding, Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { own, remembered } from '../values/raw.js';

/** Send-backs to another site: lanes must lead there, and those of the route from there to here again. */
export function* wayBackFindings(scenario: Scenario): Iterable<Finding> {
  const ways = waysBackOf(scenario),
    paths = new Set(ways.map(({ path }) => path)),
    first = new Map<string, WayBack>();
  for (const { path, by } of routesOf(scenario).flatMap(sendBacksOf))
    if (by !== undefined && !paths.has(path))
      yield {
        path: byOf(path),
        wanted: 'lanes only to a step at another site; to this one the unit goes without',
        seen: inQuotes(by),
      };
  for (const back of ways) {
    const wrong = back.by === undefined ? noLane(scenario, back) : wrongLane(scenario, back, back.by);
    if (wrong !== undefined) {
      yield wrong;
      continue;
    }
    const { path, routeId, from, to } = back,
      other = remembered(first, `${routeId} ${from} ${to}`, () => back),
      [way, known] = [lanesBack(scenario, back) ?? [], lanesBack(scenario, other) ?? []];
    if (way.join('\n') !== known.join('\n'))
      yield {
        path: back.by === undefined ? path : byOf(path),
        wanted: `the lanes of the other find that sends back from this step to the same: ${inQuotes(known)}`,
        seen: inQuotes(way),
      };
    yield* notAgain(scenario, back);
  }
}

const inQuotes = (lanes: readonly string[]): string => lanes.map((lane) => `"${lane}"`).join(', ');
const byOf = (path: Path): Path => [...path.slice(0, -1), 'by'];

function noLane(scenario: Scenario, back: WayBack): Finding | undefined {
  const { path, route, to, here, there } = back;
  if (lanesBack(scenario, back) !== undefined) return undefined;
  return {
    path,
    wanted:
      `a step in site ${here}, where the unit is, or a lane that leads back: one from ${here} to ` +
      `${there}, or several one after the other; none does`,
    seen: `"${nameAt(route, to)}", in site ${there}`,
  };
}

function wrongLane(
  { lanes }: Scenario,
  { path, here, there }: WayBack,
  by: readonly string[],
): Finding | undefined {
  let at = here;
  for (const name of by) {
    const lane = own(lanes, name);
    if (lane === undefined) return undefined;
    if (lane.from !== at)
      return {
        path: byOf(path),
        wanted: `a lane that starts in site ${at}, where the unit is then`,
        seen: `"${name}", from ${lane.from}`,
      };
    at = lane.to;
  }
  return at === there
    ? undefined
    : {
        path: byOf(path),
        wanted: `lanes that end in site ${there}, where the step is`,
        seen: `"${by.at(-1)}", to ${at}`,
      };
}

/** Units of which the route does not come to that site, and so does not lead from there to here again. */
function* notAgain(scenario: Scenario, { path, route, from, to, there }: WayBack): Iterable<Finding> {
  for (const variety of varietiesOf(scenario, route.entries)) {
    const way = route.entries.slice(to + 1, from + 1).filter(({ when }) => meets(when, variety));
    if (way.length === 0 || way.at(-1) !== route.entries[from]) continue;
    const lane = way.find((entry) => entry.kind === 'lane');
    if (lane !== undefined && own(scenario.lanes, lane.lane)?.from === there) continue;
    yield {
      path,
      wanted:
        `a step at a site from which the route leads here again for every unit; it leads ` +
        `${lane === undefined ? 'by no lane' : `by lane "${lane.lane}"`} for one with ` +
        Object.entries(variety)
          .map(([option, value]) => `${option}: ${value}`)
          .join(', '),
      seen: `"${nameAt(route, to)}", in site ${there}`,
    };
    return;
  }
}
