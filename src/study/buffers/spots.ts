import { UNLIMITED } from '../../flow/model/model.js';
import { crossFindings } from '../../scenario/checks.js';
import { stationsOf } from '../../scenario/lookup/placed.js';
import { lanesBack, waysBackOf } from '../../scenario/lookup/ways-back.js';
import { everywhere } from '../../scenario/made/everywhere.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { sum, sumOf } from '../statistics/sums.js';

/** Where waiting places can be: ahead of a station, ahead of loading a lane, after its unloading. */
export interface Spot {
  readonly name: string;
  readonly kind: 'buffer' | 'bank' | 'arrival bank';
  /** Station or lane. */
  readonly of: string;
  /** Places there in the scenario; Infinity: without a limit. */
  readonly present: number;
  /** Without it the scenario would not be one that can run. */
  readonly least: number;
}
/** Waiting places by spot. */
export type Layout = readonly number[];

export const placesOf = (layout: Layout): number => sum(layout);

/** Smaller is more even: of as many places in all, those spread over more spots. */
export const unevenness = (layout: Layout): number => sumOf(layout, (places) => places * places);

export const isSameLayout = (one: Layout, other: Layout): boolean => one.join() === other.join();

/**
 * The spots among which places are shared out: those named, by station, lane (all its banks) or as `lane:
 * bank` and `lane: arrival bank`; where none is named, all limited ones on the route of the units, except
 * that ahead of a saturated source, where a place brings nothing. A RangeError names what is not known, has
 * no limit, or without one would never be full.
 */
export function spotsOf(scenario: Scenario, named: readonly string[] = []): Spot[] {
  const all = onRoute(scenario),
    free = scenario.programme.release.kind === 'saturated' ? all[0] : undefined;
  const chosen =
    named.length === 0
      ? all.filter(
          (spot) =>
            spot !== free &&
            Number.isFinite(spot.present) &&
            !(spot.kind === 'arrival bank' && spot.present === 0),
        )
      : all.filter((spot) => named.includes(spot.name) || named.includes(spot.of));
  for (const name of named) {
    if (!all.some((spot) => spot.name === name || spot.of === name))
      throw new RangeError(
        `at: expected a station or lane of the route, got "${name}"; there are ` +
          all.map((spot) => `"${spot.name}"`).join(', '),
      );
  }
  if (free !== undefined && chosen.includes(free))
    throw new RangeError(
      `at: expected a spot that can be full, got "${free.name}", where a unit is always ready to enter; ` +
        'name the others',
    );
  const endless = chosen.find(({ present }) => present === Infinity);
  if (endless !== undefined)
    throw new RangeError(
      `at: expected a limited buffer or bank, got "${endless.name}", which is unlimited; give it a ` +
        'number in the scenario, or name the others',
    );
  if (chosen.length === 0)
    throw new RangeError(
      'at: expected a limited buffer or bank on the route of the units, got none; give the ' +
        'stations a buffer, or name them',
    );
  return chosen.map((spot) => ({ ...spot, least: leastOf(scenario, spot) }));
}

type Place = Omit<Spot, 'least'>;

function onRoute(scenario: Scenario): Place[] {
  const stations = stationsOf(scenario);
  const ofLane = (of: string): Place[] => {
    const lane = scenario.lanes[of];
    return [
      { name: `${of}: bank`, kind: 'bank', of, present: lane?.bank ?? Infinity },
      {
        name: `${of}: arrival bank`,
        kind: 'arrival bank',
        of,
        present: lane?.arrivalBank === 'unlimited' ? Infinity : (lane?.arrivalBank ?? 0),
      },
    ];
  };
  const spots = scenario.route.flatMap((entry): Place[] => {
    if (entry.kind === 'lane') return ofLane(entry.lane);
    const { at } = entry;
    return [{ name: at, kind: 'buffer', of: at, present: stations.get(at)?.station.buffer ?? Infinity }];
  });
  for (const back of waysBackOf(scenario))
    if (back.routeId === 0) spots.push(...(lanesBack(scenario, back) ?? []).flatMap(ofLane));
  return [...new Map(spots.map((spot) => [spot.name, spot])).values()];
}

/** The fewest places with which the scenario still passes its checks, the other spots as they are. */
function leastOf(scenario: Scenario, spot: Place): number {
  for (let places = 0; places < spot.present; places++)
    if (crossFindings(withLayout(scenario, [{ ...spot, least: 0 }], [places]), true).length === 0)
      return places;
  return spot.present;
}

/** Each layout once, in their order. */
export const distinct = (layouts: readonly Layout[]): Layout[] => [
  ...new Map(layouts.map((layout) => [layout.join(), layout])).values(),
];

/** The scenario with these places in these spots, on all its days; everything else as it was. */
export const withLayout = (scenario: Scenario, spots: readonly Spot[], layout: Layout): Scenario =>
  everywhere(scenario, (each) => laidOut(each, spots, layout));

function laidOut(scenario: Scenario, spots: readonly Spot[], layout: Layout): Scenario {
  const at = (of: string, kind: Spot['kind']): number | undefined =>
    layout[spots.findIndex((spot) => spot.of === of && spot.kind === kind)];
  return {
    ...scenario,
    sites: mapped(scenario.sites, (site) => ({
      ...site,
      stations: mapped(site.stations, (station, name) => ({
        ...station,
        buffer: at(name, 'buffer') ?? station.buffer,
      })),
    })),
    // An arrival bank without a place is none, one with more than any number has no limit.
    lanes: mapped(scenario.lanes, (lane, name) => ({
      ...lane,
      bank: at(name, 'bank') ?? lane.bank,
      arrivalBank: bankOf(at(name, 'arrival bank') ?? lane.arrivalBank),
    })),
  };
}

const bankOf = (places: number | 'unlimited' | undefined): number | 'unlimited' | undefined =>
  typeof places === 'number' && places >= UNLIMITED ? 'unlimited' : places || undefined;

const mapped = <Value>(
  map: Readonly<Record<string, Value>>,
  change: (value: Value, name: string) => Value,
): Record<string, Value> =>
  Object.fromEntries(Object.entries(map).map(([name, value]) => [name, change(value, name)]));
