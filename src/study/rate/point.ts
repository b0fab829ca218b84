import type { Model } from '../../flow/model/model.js';
import { neighbours } from '../lists.js';
import type { Reading } from '../sample/reading.js';
import { busiest, resources } from '../sections/bottlenecks.js';
import { widened } from '../statistics/estimate.js';
import { proportion } from '../statistics/proportion.js';
import { amount } from '../statistics/skewed-interval.js';
import type { Ran } from './line.js';
import type { RatePoint, RateResults } from './results.js';

/** The figures of a rate, all but what is said of it. */
export function pointOf(
  { perDay, readings, kept, window: { model, units, workingDays, counting } }: Ran,
  level: number,
): Omit<RatePoint, 'verdict' | 'why' | 'canShip'> {
  const of = (value: (reading: Reading) => number) => amount(readings.map(value), level);
  return {
    perDay,
    replications: readings.length,
    asked: units,
    keptUp: kept.keptUp,
    gridlocks: readings.filter(({ outcome }) => outcome === 'gridlock').length,
    shippedPerDay: widened(
      of((reading) => counting.shipped(reading) / workingDays),
      counting.upset / workingDays,
    ),
    wip: of(({ wip }) => wip),
    leadDays: of(({ leadMeanDays }) => leadMeanDays),
    stops: stopsOf(model, readings, level),
  };
}

function stopsOf(model: Model, readings: readonly Reading[], level: number): RatePoint['stops'] {
  const first = readings.map(busiest);
  return resources({ model })
    .map(({ id, name, kind, site }) => ({
      name,
      kind,
      site,
      share: proportion(first.filter((each) => each === id).length, readings.length, level),
    }))
    .filter(({ share }) => share.count > 0)
    .sort((a, b) => b.share.count - a.share.count);
}

/** Where what is used most changes as the rate rises. */
export function changesOf(points: readonly RatePoint[]): RateResults['changes'] {
  const known = points.flatMap(({ perDay, stops: [first] }) =>
    first === undefined ? [] : [{ perDay, name: first.name }],
  );
  return neighbours(known)
    .filter(([lower, upper]) => lower.name !== upper.name)
    .map(([lower, upper]) => ({
      fromPerDay: lower.perDay,
      toPerDay: upper.perDay,
      before: lower.name,
      after: upper.name,
    }));
}
