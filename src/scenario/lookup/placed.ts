import type { CalendarSpec } from '../types/calendars.js';
import type { Site, Station } from '../types/plant.js';
import type { Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import type { Find, RouteEntry, StationStep } from '../types/steps.js';
import { once, own } from '../values/raw.js';

/** The route of the unit (`feeder` undefined) or of a feeder, with its place in the file. */
export interface PlacedRoute {
  readonly path: Path;
  readonly feeder: string | undefined;
  readonly kind: 'unit' | 'own' | 'stock';
  readonly entries: readonly RouteEntry[];
}
export interface PlacedStep {
  readonly path: Path;
  readonly route: PlacedRoute;
  readonly index: number;
  readonly step: StationStep;
}

type Routes = readonly [PlacedRoute, ...PlacedRoute[]];

/** The unit's route, then those of the feeders. */
export const routesOf = once(
  ({ route, feeders }: Scenario): Routes => [
    { path: ['route'], feeder: undefined, kind: 'unit', entries: route },
    ...Object.entries(feeders).map(
      ([name, f]): PlacedRoute => ({
        path: ['feeders', name, 'route'],
        feeder: name,
        kind: f.kind,
        entries: f.route,
      }),
    ),
  ],
);

/** A group of steps side by side is followed by its steps, at the same index. */
export const stepsOf = once((route: PlacedRoute): readonly PlacedStep[] =>
  route.entries.flatMap((step, index) => {
    const path = [...route.path, index];
    if (step.kind !== 'step') return [];
    const beside = (step.sideBySide ?? []).map((each, i) => ({
      path: [...path, 'side by side', i],
      route,
      index,
      step: each,
    }));
    return [{ path, route, index, step }, ...beside];
  }),
);

/** The same by name; of several with one name the first. */
export const stepsByName = once(
  (route: PlacedRoute): ReadonlyMap<string, PlacedStep> =>
    new Map(
      stepsOf(route)
        .map((placed) => [placed.step.name, placed] as const)
        .toReversed(),
    ),
);

/** A step of a route with its station. */
export interface StationedStep extends PlacedStep {
  readonly where: PlacedStation | undefined;
}

/** The steps of all routes. */
export const allSteps = once((scenario: Scenario): readonly StationedStep[] => {
  const stations = stationsOf(scenario);
  return routesOf(scenario).flatMap((route) =>
    stepsOf(route).map((placed) => ({ ...placed, where: stations.get(placed.step.at) })),
  );
});

/** Every unit visits it, in rework or not. */
export const isForAll = ({ when, sample, rework }: StationStep): boolean =>
  Object.keys(when).length === 0 && sample === undefined && rework === 'both';

interface PlacedFind {
  readonly path: Path;
  readonly kind: string | undefined;
  readonly find: Find;
}

/** What a step may find and how it may fail; `kind` is undefined for a failed test. */
export const findsOf = ({ path, step }: PlacedStep): PlacedFind[] => [
  ...Object.entries(step.finds).map(([kind, find]) => ({ path: [...path, 'finds', kind], kind, find })),
  ...(step.fails === undefined ? [] : [{ path: [...path, 'fails'], kind: undefined, find: step.fails }]),
];

/** A send-back within a route: from the step at index `from` to the one at `to`, at or before it. */
export interface SendBack {
  readonly path: Path;
  readonly from: number;
  readonly to: number;
  /** Lanes that it names. */
  readonly by: readonly string[] | undefined;
}

/** Send-backs whose target exists and is not ahead; others are reported with the names. */
export const sendBacksOf = once((route: PlacedRoute): readonly SendBack[] => {
  const place = new Map(stepsOf(route).map(({ step, index }) => [step.name, index]));
  return stepsOf(route).flatMap((placed) =>
    findsOf(placed).flatMap(({ path, find }) => {
      const { then } = find,
        to = then.kind === 'back' ? place.get(then.to) : undefined;
      return then.kind !== 'back' || to === undefined || to > placed.index
        ? []
        : [{ path: [...path, 'back to'], from: placed.index, to, by: then.by }];
    }),
  );
});

/**
 * For each entry of a route: the last one from which units are sent back to it or past it; -1 if none.
 */
export const furthestBack = once((route: PlacedRoute): readonly number[] => {
  const furthest = route.entries.map(() => -1);
  for (const { from, to } of sendBacksOf(route)) furthest[to] = Math.max(furthest[to] ?? -1, from);
  let last = -1;
  return furthest.map((from) => (last = Math.max(last, from)));
});

/** The calendar of this name; undefined for none, which is always open. */
export const calendarOf = ({ calendars }: Scenario, name: string | undefined): CalendarSpec | undefined =>
  name === undefined ? undefined : own(calendars, name);

/** A station with its site and its place in the file. */
export interface PlacedStation {
  readonly name: string;
  readonly path: Path;
  readonly siteName: string;
  readonly site: Site;
  readonly station: Station;
}

/** All stations, site by site; also such as share a name. */
export const allStations = (scenario: Scenario): PlacedStation[] =>
  Object.entries(scenario.sites).flatMap(([siteName, site]) =>
    Object.entries(site.stations).map(([name, station]) => ({
      name,
      path: ['sites', siteName, 'stations', name],
      siteName,
      site,
      station,
    })),
  );

/** The same by name. */
export const stationsOf = once(
  (scenario: Scenario): ReadonlyMap<string, PlacedStation> =>
    new Map(allStations(scenario).map((placed) => [placed.name, placed])),
);
