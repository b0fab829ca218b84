import type { Model } from '../../../flow/model/model.js';
import type { Observation } from '../../../measure/observe.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { bufferOf } from '../../../scenario/whole/room.js';
import { pressure } from '../../constraint/pressure.js';
import { seenIn } from '../../constraint/seen.js';
import { judgeRate } from '../../held/rate-held.js';
import { defined } from '../../lists.js';
import { countedText, countingResult } from '../../loads/words.js';
import { daysInOne, unitsEach } from '../../planners-unit.js';
import { shippedPerDay } from '../../programme/series.js';
import { planned } from '../../sample/planned.js';
import { ratio } from '../../statistics/sums.js';
import { plannersUnit } from '../../unit-of.js';
import type { Prices, Spent } from '../around/prices.js';
import type { Layout, Spot } from '../spots.js';

export type RateUnit = 'units a working day' | 'units a week' | 'units an hour';

/** Throughput of one replication, and what it is. */
export interface RateMeasure {
  readonly unit: RateUnit;
  /** Over which time, in words. */
  readonly over: string;
  /** Working days in its unit of time, on average; null where it has none, by calendars. */
  readonly daysInOne: number | null;
  readonly of: (observation: Observation) => number;
}

/**
 * Throughput of every layout, over the same time: units a working day in the time in which the base is
 * judged; over the whole run where there is none; units an hour of a steady-state run. A replication that
 * ends in gridlock counts as nothing shipped.
 * @param observations of the scenario as it is
 */
export function rateMeasure(
  scenario: Scenario,
  model: Model,
  observations: readonly Observation[],
  level: number,
): RateMeasure {
  const plan = planned(scenario, model),
    { calendar } = plan;
  if (calendar.kind === 'steady state')
    return measure(
      'units an hour',
      'the time observed, warm-up left out',
      // Where nothing has a calendar a day has 24 h.
      Object.keys(scenario.calendars).length === 0 ? 1 / 24 : null,
      ({ shipped, minutes }) => ratio(60 * shipped, minutes),
    );
  const { window, heldIn, counting } = judgeRate(plan, observations, level),
    unit = plannersUnit(scenario),
    days = daysInOne(unit, window),
    perDay = window === null ? shippedPerDay(calendar) : heldIn;
  return measure(
    unitsEach(unit),
    window === null || counting === null
      ? 'the whole run'
      : `${window.from} to ${window.to}${countedText(countingResult(counting))}`,
    days,
    (seen) => days * perDay(seen),
  );
}

function measure(
  unit: RateUnit,
  over: string,
  daysInOne: number | null,
  of: (observation: Observation) => number,
): RateMeasure {
  return { unit, over, daysInOne, of: (seen) => (seen.outcome === 'gridlock' ? 0 : of(seen) || 0) };
}

/**
 * One replication of a layout. With `alike[s]` places or more at spot s it would have gone on just so: nobody
 * was ever shut out there, and no more were ever in it. Infinity: only with the places that it had.
 */
export interface Trial {
  readonly rate: number;
  readonly alike: Float64Array;
  /** By spot: units that wait, on average, in the end for a space there. */
  readonly lacking: Float64Array;
  /** By spot: units in it, on average. */
  readonly inside: Float64Array;
  /** Only with prices. */
  readonly spent?: Spent | undefined;
}

export const readTrial =
  (measure: RateMeasure, spots: readonly Spot[], prices: Prices | null = null) =>
  (model: Model): ((observation: Observation) => Trial) => {
    const spent = prices?.read(model);
    const buffers = spots.map((spot) => bufferOf(model, spot)),
      atSpots = (values: Float64Array): Float64Array =>
        Float64Array.from(buffers, (buffer) => (buffer < 0 ? 0 : defined(values[buffer])));
    return (observation) => ({
      rate: measure.of(observation),
      alike: Float64Array.from(spots, (spot) => alikeFrom(observation, model, spot)),
      lacking: atSpots(pressure(model, seenIn([observation])).rooms),
      inside: atSpots(observation.bufferMean),
      ...(spent !== undefined && { spent: spent(observation) }),
    });
  };

function alikeFrom({ room: { shutOut, most } }: Observation, model: Model, spot: Spot): number {
  const buffer = bufferOf(model, spot);
  if (buffer < 0 || shutOut[buffer] === 1) return Infinity;
  // Units in an arrival bank stand in its places, where their most is not counted.
  return defined((spot.kind === 'arrival bank' ? model.stations.places : most)[buffer]);
}

/** Whether a replication of `layout` goes just as `trial` went with the places `had`. */
export const isAlike = ({ alike }: Trial, had: Layout, layout: Layout): boolean =>
  had.every((places, s) => {
    const now = defined(layout[s]);
    return now === places || now >= defined(alike[s]);
  });
