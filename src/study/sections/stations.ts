import type { Model } from '../../flow/model/model.js';
import { equipmentOf } from '../../flow/model/resources.js';
import type { Observation } from '../../measure/observe.js';
import { named } from '../lists.js';
import type { Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio, sumOf } from '../statistics/sums.js';

export const PLACE_STATES = [
  'working',
  'changeover',
  'unattended',
  'short of crew',
  'short of parts',
  'short of carrier',
  'short of equipment',
  'blocked',
  'starved',
  'down',
  'off shift',
] as const;
export type PlaceState = (typeof PLACE_STATES)[number];

/** States of a place that is on shift. */
export type ShiftState = Exclude<PlaceState, 'off shift'>;
export const SHIFT_STATES = PLACE_STATES.filter((state): state is ShiftState => state !== 'off shift');

/** Shares by state; that of what only some scenarios have stands in theirs alone. */
type Shares<State extends PlaceState> = Readonly<Record<Exclude<State, 'short of equipment'>, Estimate>> &
  Readonly<Partial<Record<'short of equipment', Estimate>>>;

/** Share of a state. */
export const shareIn = <State extends PlaceState>(shares: Shares<State>, state: State): number =>
  (shares as Readonly<Partial<Record<PlaceState, Estimate>>>)[state]?.mean ?? 0;

/** The states in which a place can be. */
const statesIn = ({ resources }: Model): PlaceState[] =>
  PLACE_STATES.filter((state) => state !== 'short of equipment' || equipmentOf(resources).length > 0);

export interface StationResult {
  readonly name: string;
  readonly site: string;
  readonly places: number;
  /** Shares of place time, they add to 1. */
  readonly share: Shares<PlaceState>;
  /** Shares of the place time that is not off shift, they add to 1. */
  readonly shareOnShift: Shares<ShiftState>;
  readonly visitsPerUnit: Estimate;
}

/** Stations in the order of the scenario; arrival banks stand with the buffers. */
export function stations(sample: Sample): Pending<StationResult[]> {
  const {
      model: { stations, steps, sideBySide },
    } = sample,
    states = statesIn(sample.model);
  return Array.from(stations.names.keys())
    .filter((id) => !stations.isBank[id])
    .map((id) => {
      const shareOf = (observation: Observation, state: PlaceState): number =>
        observation.stationShares[id * PLACE_STATES.length + PLACE_STATES.indexOf(state)];
      const here = Array.from(steps.station.keys()).filter(
        (step) => steps.station[step] === id && sideBySide.group[step] < 0,
      );
      return {
        ...named(sample.model, 'stations', id),
        places: stations.places[id],
        share: Object.fromEntries(
          states.map((state) => [state, sample.share((each) => shareOf(each, state))]),
        ) as Pending<Shares<PlaceState>>,
        shareOnShift: Object.fromEntries(
          states
            .filter((state) => state !== 'off shift')
            .map((state) => [
              state,
              sample.share((each) => ratio(shareOf(each, state), 1 - shareOf(each, 'off shift'))),
            ]),
        ) as Pending<Shares<ShiftState>>,
        visitsPerUnit: sample.amount(({ stepVisits, entered }) =>
          ratio(
            sumOf(here, (step) => stepVisits[step]),
            entered,
          ),
        ),
      };
    });
}
