import type { Distribution } from '../../random/distribution.js';
import type { Changeover, Failure, Site, Station, Supply } from '../types/plant.js';
import type { Scenario } from '../types/scenario.js';
import type { Feeder, Find, RouteEntry, StationStep } from '../types/steps.js';
import { withTimes } from '../values/time-by-option.js';

/** Whether a time is of work, of a way (transport, return, delivery), or how long a failure lasts. */
export type Kind = 'work' | 'way' | 'stop';

/** What a time is of: its kind, and every name by which it can be meant. */
export interface Named {
  readonly kind: Kind;
  readonly names: readonly string[];
}

type Change = (time: Distribution, named: Named) => Distribution;

/**
 * The scenario with each time that says how long something takes changed. Those that say how often something
 * comes, arrivals and the time between failures, are left alone, and so are fixed limits (takts, longest
 * waits, timetables).
 */
export function mapTimes(scenario: Scenario, change: Change): Scenario {
  const siteOf = new Map(
    Object.entries(scenario.sites).flatMap(([site, { stations }]) =>
      Object.keys(stations).map((name) => [name, site] as const),
    ),
  );
  const route = (entries: readonly RouteEntry[], feeder: readonly string[]): readonly RouteEntry[] =>
    list(entries, (entry) => (entry.kind === 'lane' ? entry : stepWith(entry, feeder, siteOf, change)));
  return {
    ...scenario,
    sites: mapped(scenario.sites, (site, name) => siteWith(site, name, change)),
    lanes: mapped(scenario.lanes, (lane, name) => {
      const way = { kind: 'way', names: [name] } as const;
      return kept(lane, {
        load: change(lane.load, way),
        drive: change(lane.drive, way),
        unload: change(lane.unload, way),
        return: change(lane.return, way),
      });
    }),
    carriers: mapped(scenario.carriers, (carriers, name) =>
      kept(carriers, { return: change(carriers.return, { kind: 'way', names: [name] }) }),
    ),
    supplies: mapped(scenario.supplies, (supply, name) => supplyWith(supply, name, change)),
    feeders: mapped(
      scenario.feeders,
      (feeder, name): Feeder => kept(feeder, { route: route(feeder.route, [name]) }),
    ),
    route: route(scenario.route, []),
  };
}

/** Everything that a time can be meant by, for the message to whoever misspelt one. */
export const namesIn = (scenario: Scenario): Set<string> => {
  const names = new Set<string>();
  mapTimes(scenario, (time, named) => {
    for (const name of named.names) names.add(name);
    return time;
  });
  for (const [site, { stations }] of Object.entries(scenario.sites))
    for (const name of [site, ...Object.keys(stations)]) names.add(name);
  return names;
};

function siteWith(site: Site, name: string, change: Change): Site {
  return kept(site, {
    stations: mapped(site.stations, (station, own): Station => {
      const names = [own, name],
        { changeover, failures } = station;
      return kept(station, {
        changeover: changeover === undefined ? undefined : changeoverWith(changeover, names, change),
        failures: failuresWith(failures, names, change),
      });
    }),
    equipment:
      site.equipment &&
      mapped(site.equipment, (equipment, own) =>
        kept(equipment, { failures: failuresWith(equipment.failures, [own, name], change) }),
      ),
  });
}

const failuresWith = (
  failures: readonly Failure[],
  names: readonly string[],
  change: Change,
): readonly Failure[] =>
  list(failures, (failure) => kept(failure, { repair: change(failure.repair, { kind: 'stop', names }) }));

function changeoverWith(changeover: Changeover, names: readonly string[], change: Change): Changeover {
  const work = (time: Distribution): Distribution => change(time, { kind: 'work', names });
  return kept(changeover, {
    work: work(changeover.work),
    fromTo: mapped(changeover.fromTo, (to) => mapped(to, work)),
  });
}

function supplyWith(supply: Supply, name: string, change: Change): Supply {
  const way = { kind: 'way', names: [name] } as const,
    { order, late } = supply;
  return kept(supply, {
    order: order.kind === 'reorder' ? kept(order, { leadTime: change(order.leadTime, way) }) : order,
    late: late === undefined ? undefined : kept(late, { by: change(late.by, way) }),
  });
}

function stepWith(
  step: StationStep,
  feeder: readonly string[],
  siteOf: ReadonlyMap<string, string>,
  change: Change,
): StationStep {
  const site = siteOf.get(step.at),
    names = [step.name, step.at, ...(site === undefined ? [] : [site]), ...feeder];
  const work = (time: Distribution): Distribution => change(time, { kind: 'work', names }),
    perhaps = (time: Distribution | undefined) => (time === undefined ? undefined : work(time));
  const find = (found: Find): Find => {
    const { then } = found;
    return then.kind === 'repair' || then.kind === 'carry'
      ? kept(found, { then: kept(then, { work: withTimes(then.work, work) }) })
      : found;
  };
  const { equipment, passes, fails, hold, comparesWith, sideBySide } = step;
  return kept(step, {
    equipment:
      equipment &&
      mapped(equipment, (need) => kept(need, { first: perhaps(need.first), last: perhaps(need.last) })),
    work: perhaps(step.work),
    passes:
      passes === undefined
        ? undefined
        : kept(passes, { work: work(passes.work), settle: perhaps(passes.settle) }),
    process: perhaps(step.process),
    finds: mapped(step.finds, find),
    fails: fails === undefined ? undefined : find(fails),
    hold: hold?.mend === undefined ? hold : kept(hold, { mend: withTimes(hold.mend, work) }),
    comparesWith:
      comparesWith === undefined ? undefined : kept(comparesWith, { differs: perhaps(comparesWith.differs) }),
    sideBySide:
      sideBySide === undefined
        ? undefined
        : list(sideBySide, (inner) => stepWith(inner, feeder, siteOf, change)),
  });
}

const mapped = <Value>(
  map: Readonly<Record<string, Value>>,
  change: (value: Value, name: string) => Value,
): Readonly<Record<string, Value>> =>
  kept(map, Object.fromEntries(Object.entries(map).map(([name, value]) => [name, change(value, name)])));

/** A thing itself where nothing of it was changed, so that the map shows what was. */
function kept<Thing extends object>(thing: Thing, changed: Partial<Thing>): Thing {
  const isSame = Object.entries(changed).every(([key, value]) => thing[key as keyof Thing] === value);
  return isSame ? thing : { ...thing, ...changed };
}

const list = <Value extends object>(
  values: readonly Value[],
  change: (value: Value) => Value,
): readonly Value[] => {
  const changed = values.map(change);
  return changed.every((value, i) => value === values[i]) ? values : changed;
};
