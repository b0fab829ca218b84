import type { Observation } from '../../measure/observe.js';
import { named } from '../lists.js';
import type { Deferred, Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio, sumOf } from '../statistics/sums.js';

export const PLACE_STATES = [
  'working',
  'changeover',
  'unattended',
  'short of crew',
  'short of equipment',
  'short of carrier',
  'short of parts',
  'blocked',
  'starved',
  'down',
  'off shift',
] as const;
export type PlaceState = (typeof PLACE_STATES)[number];

/** States of a place that is on shift. */
export type ShiftState = Exclude<PlaceState, 'off shift'>;
export const SHIFT_STATES = PLACE_STATES.filter((state): state is ShiftState => state !== 'off shift');

export interface StationResult {
  readonly name: string;
  readonly site: string;
  readonly places: number;
  /** Shares of place time, they add to 1. */
  readonly share: Readonly<Record<PlaceState, Estimate>>;
  /** Shares of the place time that is not off shift, they add to 1. */
  readonly shareOnShift: Readonly<Record<ShiftState, Estimate>>;
  readonly visitsPerUnit: Estimate;
}

/** Stations in the order of the scenario; arrival banks stand with the buffers. */
export function stations(sample: Sample): Pending<StationResult[]> {
  const {
      model: { stations, steps, sideBySide },
    } = sample,
    states = PLACE_STATES.length;
  return Array.from(stations.names.keys())
    .filter((id) => !stations.isBank[id])
    .map((id) => {
      const shareOf = (observation: Observation, state: PlaceState): number =>
        observation.stationShares[id * states + PLACE_STATES.indexOf(state)];
      const here = Array.from(steps.station.keys()).filter(
        (step) => steps.station[step] === id && sideBySide.group[step] < 0,
      );
      return {
        ...named(sample.model, 'stations', id),
        places: stations.places[id],
        share: Object.fromEntries(
          PLACE_STATES.map((state) => [state, sample.share((each) => shareOf(each, state))]),
        ) as Record<PlaceState, Deferred<Estimate>>,
        shareOnShift: Object.fromEntries(
          SHIFT_STATES.map((state) => [
            state,
            sample.share((each) => ratio(shareOf(each, state), 1 - shareOf(each, 'off shift'))),
          ]),
        ) as Record<ShiftState, Deferred<Estimate>>,
        visitsPerUnit: sample.amount(({ stepVisits, entered }) =>
          ratio(
            sumOf(here, (step) => stepVisits[step]),
            entered,
          ),
        ),
      };
    });
}
