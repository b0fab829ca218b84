import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { askedRate } from '../../scenario/programme/rates.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Change } from '../../scenario/what-ifs.js';
import { type Counting, countingOf, plainCount } from '../loads/counting.js';
import { arithmeticOf, loadsOf, mayGoInLoads } from '../loads/loads.js';
import { daysInOne, unitsEach } from '../planners-unit.js';
import { judgedWindow, stretchOf, type Window } from '../programme/judged-window.js';
import { pooledLeadTime } from '../programme/lead-time.js';
import { shippedPerDay } from '../programme/series.js';
import type { Variant } from '../run/replicator.js';
import { planned, releaseCalendar } from '../sample/planned.js';
import type { Reading } from '../sample/reading.js';
import { tenDigits } from '../ten-digits.js';
import { plannersUnit } from '../unit-of.js';
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
 * How units of a variant are counted in the weeks in which the base is judged: over whole loads of its own,
 * and by the days of the base.
 */
export function countingOfVariant(base: ComparedVariant, window: Window, variant: ComparedVariant): Counting {
  if (!mayGoInLoads(variant.model)) return plainCount(window);
  const plan = planned(base.scenario, base.model),
    own = planned(variant.scenario, variant.model),
    arithmetic = arithmeticOf(own),
    perDay = askedRate(variant.scenario).highest ?? 0;
  return countingOf(plan, window, loadsOf(own, perDay, stretchOf(plan, window), arithmetic), arithmetic);
}

function throughputOf(
  base: ComparedVariant,
  window: Window | null,
  variant: ComparedVariant,
): (reading: Reading) => number {
  if (window === null) return shippedPerDay(releaseCalendar(variant.scenario));
  const { shipped } = countingOfVariant(base, window, variant);
  return (reading) => shipped(reading) / window.workingDays;
}

/**
 * What all variants are compared by. The throughput, in the base's unit of rates, is taken over `window` with
 * the base's working days, without one over each variant's whole run.
 */
export function measuresOf(base: ComparedVariant, window: Window | null): Measure[] {
  const { scenario } = base;
  const each = (value: (reading: Reading) => number) => () => rounded(value);
  const { quantity } = scenario.programme,
    currency = scenario.costs?.currency,
    unit = plannersUnit(scenario),
    days = daysInOne(unit, window);
  const known = new Map<string, (reading: Reading) => number>();
  const shipped = (variant: ComparedVariant) => {
    const seen = known.get(variant.key);
    if (seen !== undefined) return seen;
    const perDay = throughputOf(base, window, variant),
      value = rounded((reading) => days * perDay(reading));
    known.set(variant.key, value);
    return value;
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
      name: 'lead time, P90 of a replication',
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
    tenDigits(value(reading));
