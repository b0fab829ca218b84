import type { Later, Pending } from '../sample/deferred.js';
import {
  PLACE_STATES,
  SHIFT_STATES,
  type Estimate,
  type PlaceState,
  type Results,
  type ShiftState,
  type StationResult,
} from '../simulate/results.js';
import type { Observation } from '../../measure/observe.js';
import { ratio, type Sample } from '../sample/sample.js';

/** Stations in the order of the scenario; arrival banks stand with the buffers. */
export function stations(sample: Sample): Pending<StationResult[]> {
  const {
      model: { stations, siteNames, steps, beside },
    } = sample,
    states = PLACE_STATES.length;
  return Array.from(stations.names, (name, id) => ({ name, id }))
    .filter(({ id }) => !stations.isBank[id])
    .map(({ name, id }) => {
      const shareOf = (observation: Observation, state: PlaceState): number =>
        observation.stationShares[id * states + PLACE_STATES.indexOf(state)];
      const here = Array.from(steps.station.keys()).filter(
        (step) => steps.station[step] === id && beside.group[step] < 0,
      );
      return {
        name,
        site: siteNames[stations.site[id]],
        places: stations.places[id],
        share: Object.fromEntries(
          PLACE_STATES.map((state) => [state, sample.share((each) => shareOf(each, state))]),
        ) as Record<PlaceState, Later<Estimate>>,
        shareOnShift: Object.fromEntries(
          SHIFT_STATES.map((state) => [
            state,
            sample.share((each) => ratio(shareOf(each, state), 1 - shareOf(each, 'off shift'))),
          ]),
        ) as Record<ShiftState, Later<Estimate>>,
        visitsPerUnit: sample.amount(({ stepVisits, entered }) =>
          ratio(
            here.reduce((sum, step) => sum + stepVisits[step], 0),
            entered,
          ),
        ),
      };
    });
}

/**
 * Trips begun; fill is units carried over truck spaces; wait is that of units carried, for their truck. Truck
 * time is busy, blocked (waiting for room ahead) or free (at base).
 */
export function lanes(sample: Sample): Pending<Results['lanes']> {
  const { lanes } = sample.model;
  return lanes.names.map((name, id) => ({
    name,
    trips: sample.amount((each) => each.lanes.trips[id]),
    fill: sample.share((each) => ratio(each.lanes.carried[id], each.lanes.trips[id] * lanes.capacity[id])),
    waitHours: sample.amount((each) => ratio(each.lanes.waitMinutes[id] / 60, each.lanes.carried[id])),
    truckBusy: sample.share((each) => each.lanes.truckBusy[id]),
    truckBlocked: sample.share((each) => each.lanes.truckBlocked[id]),
    truckFree: sample.share((each) => each.lanes.truckFree[id]),
  }));
}

/** Feeders that build to a stock. */
export function feeders(sample: Sample): Pending<Results['feeders']> {
  const { routes } = sample.model;
  return routes.names.flatMap((name, route) => {
    const stock = routes.stock[route];
    return stock < 0
      ? []
      : [
          {
            name,
            target: routes.target[route],
            stock: sample.amount(({ stockMean }) => stockMean[stock]),
            out: sample.share(({ stockOut }) => stockOut[stock]),
          },
        ];
  });
}
