import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { askedRate } from '../../scenario/programme/rates.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Change } from '../../scenario/what-ifs.js';
import { daysInOne, plannersUnit, unitsEach } from '../planners-unit.js';
import { judgedWindow, type Window } from '../programme/judged-window.js';
import { pooledLeadTime } from '../programme/lead-time.js';
import { shippedPerDay } from '../programme/series.js';
import type { Variant } from '../run/replicator.js';
import { planned, releaseCalendar } from '../sample/planned.js';
import type { Reading } from '../sample/reading.js';
import { sum } from '../statistics/sums.js';
import type { MeasureResult } from './results.js';

/** A scenario as one of several that are set side by side. Its key is the digest of the scenario. */
export interface ComparedVariant extends Variant<Reading> {
  readonly name: string;
  readonly note: string | null;
  readonly changes: readonly Change[];
  readonly scenario: Scenario;
}

export interface Measure extends MeasureResult {
  /** The value of a variant in a replication; NaN where there is none. */
  readonly of: (variant: ComparedVariant) => (reading: Reading) => number;
}

/** The weeks in which the base is judged; null where no rate is asked or no week fits. */
export function baseWindow(
  { scenario, model }: ComparedVariant,
  readings: readonly Reading[],
): Window | null {
  const { highest } = askedRate(scenario);
  if (highest === null) return null;
  const lead = pooledLeadTime(
    readings.map(({ shipped, leadMeanDays }) => ({ shipped, leadMean: leadMeanDays * MINUTES_PER_DAY })),
  );
  return judgedWindow(planned(scenario, model), highest, lead);
}

/**
 * What all variants are compared by. The throughput, in the base's unit of rates, is taken over `window` with
 * the base's working days, without one over each variant's whole run.
 */
export function measuresOf({ scenario }: ComparedVariant, window: Window | null): Measure[] {
  const each = (value: (reading: Reading) => number) => () => rounded(value);
  const { quantity } = scenario.programme,
    currency = scenario.costs?.currency,
    unit = plannersUnit(scenario),
    days = daysInOne(unit, window);
  const shipped =
    window !== null
      ? each(
          ({ shippedIn }) =>
            (days * sum(shippedIn.subarray(window.first, window.last + 1))) / window.workingDays,
        )
      : (variant: ComparedVariant) => {
          const perDay = shippedPerDay(releaseCalendar(variant.scenario));
          return rounded((reading) => days * perDay(reading));
        };
  return [
    { id: 'throughput', name: 'throughput', unit: unitsEach(unit), better: 'more', of: shipped },
    {
      id: 'lead mean',
      name: 'lead time, mean',
      unit: 'days',
      better: 'less',
      of: each(({ leadMeanDays }) => leadMeanDays),
    },
    {
      id: 'lead p90',
      name: 'lead time, P90',
      unit: 'days',
      better: 'less',
      of: each(({ leadP90Days }) => leadP90Days),
    },
    { id: 'wip', name: 'WIP', unit: 'units', better: 'less', of: each(({ wip }) => wip) },
    ...(quantity === undefined
      ? []
      : [
          {
            id: 'last unit',
            name: 'last unit out after the start',
            unit: 'days',
            better: 'less',
            of: each(({ lastUnitDay }) => lastUnitDay),
          } as const,
        ]),
    ...(currency === undefined
      ? []
      : [
          {
            id: 'cost',
            name: 'cost of a unit',
            unit: currency,
            better: 'less',
            of: each(({ costPerUnit }) => costPerUnit),
          } as const,
        ]),
  ];
}

/** To the ten digits of results.json, so that the last bits of a sum make no difference between variants. */
const rounded =
  (value: (reading: Reading) => number) =>
  (reading: Reading): number =>
    Number(value(reading).toPrecision(10));
