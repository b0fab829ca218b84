import { crossFindings } from '../../scenario/checks.js';
import type { Station } from '../../scenario/types/plant.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { sum } from '../statistics/sums.js';

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

/**
 * The spots among which places are shared out: those named, by station, lane (all its banks) or as `lane:
 * bank` and `lane: arrival bank`; where none is named, all limited ones on the route of the units, except
 * that ahead of a saturated source, where a place brings nothing. A RangeError names what is not known or has
 * no limit.
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

function onRoute({ route, sites, lanes }: Scenario): Spot[] {
  const stations = new Map(Object.values(sites).flatMap((site) => Object.entries(site.stations)));
  const spots = route.flatMap((entry): Spot[] => {
    if (entry.kind === 'step')
      return [
        {
          name: entry.at,
          kind: 'buffer',
          of: entry.at,
          present: stations.get(entry.at)?.buffer ?? Infinity,
          least: 0,
        },
      ];
    const lane = lanes[entry.lane];
    return [
      {
        name: `${entry.lane}: bank`,
        kind: 'bank',
        of: entry.lane,
        present: lane?.bank ?? Infinity,
        least: 0,
      },
      {
        name: `${entry.lane}: arrival bank`,
        kind: 'arrival bank',
        of: entry.lane,
        present: lane?.arrivalBank ?? 0,
        least: 0,
      },
    ];
  });
  return [...new Map(spots.map((spot) => [spot.name, spot])).values()];
}

/** The fewest places with which the scenario still passes its checks, the other spots as they are. */
function leastOf(scenario: Scenario, spot: Spot): number {
  for (let places = 0; places < spot.present; places++)
    if (crossFindings(withLayout(scenario, [spot], [places]), true).length === 0) return places;
  return spot.present;
}

/** The scenario with these places in these spots; everything else as it was. */
export function withLayout(scenario: Scenario, spots: readonly Spot[], layout: Layout): Scenario {
  const at = (of: string, kind: Spot['kind']): number | undefined =>
    layout[spots.findIndex((spot) => spot.of === of && spot.kind === kind)];
  const station = (name: string, old: Station): Station => ({
    ...old,
    buffer: at(name, 'buffer') ?? old.buffer,
  });
  return {
    ...scenario,
    sites: Object.fromEntries(
      Object.entries(scenario.sites).map(([site, each]) => [
        site,
        {
          ...each,
          stations: Object.fromEntries(
            Object.entries(each.stations).map(([name, old]) => [name, station(name, old)]),
          ),
        },
      ]),
    ),
    // An arrival bank without a place is none.
    lanes: Object.fromEntries(
      Object.entries(scenario.lanes).map(([name, old]) => [
        name,
        {
          ...old,
          bank: at(name, 'bank') ?? old.bank,
          arrivalBank: (at(name, 'arrival bank') ?? old.arrivalBank) || undefined,
        },
      ]),
    ),
  };
}
