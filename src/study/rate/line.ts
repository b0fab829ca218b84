import type { Model } from '../../flow/model/model.js';
import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { neighbours } from '../lists.js';
import { type PlannersUnit, rateText } from '../planners-unit.js';
import type { Replicator } from '../run/replicator.js';
import { releaseCalendar, workingDaysBetween } from '../sample/planned.js';
import { type Reading, readingOf } from '../sample/reading.js';
import { busiest, resources } from '../sections/bottlenecks.js';
import { amount } from '../statistics/interval.js';
import { proportion } from '../statistics/proportion.js';
import { sum } from '../statistics/sums.js';
import { atRate, type RateAsked } from './at-rate.js';
import type { RatePoint } from './results.js';
import { type Judged, judge } from './verdict.js';

/** A rate that is not settled is run up to so many times the replications. */
export const MOST_TIMES = 4;
/** Below so many units a window cannot show 2 %. */
const LEAST_UNITS = 50;

/** The line at any rate: more replications are run where the verdict is not settled. */
export class Line {
  constructor(
    private readonly scenario: Scenario,
    private readonly replicator: Replicator,
    private readonly asked: {
      readonly replications: number;
      readonly sure: number;
      readonly level: number;
      readonly unit: PlannersUnit;
    },
  ) {}

  async point(rate: RateAsked): Promise<RatePoint> {
    const { readings, judged, window } = await this.run(rate),
      { scenario, model, units, first, end, fromMin, toMin } = window,
      { level } = this.asked;
    const workingDays = workingDaysBetween(releaseCalendar(scenario).workingDays, fromMin, toMin);
    const of = (value: (reading: Reading) => number) => amount(readings.map(value), level);
    return {
      perDay: rate.perDay,
      ...judged,
      replications: readings.length,
      asked: units,
      shippedPerDay: of(({ shippedIn }) => sum(shippedIn.subarray(first, end)) / workingDays),
      wip: of(({ wip }) => wip),
      leadDays: of(({ leadMeanDays }) => leadMeanDays),
      stops: stopsOf(model, readings, level),
    };
  }

  async judged(rate: RateAsked): Promise<Judged & { readonly replications: number }> {
    const { readings, judged } = await this.run(rate);
    return { ...judged, replications: readings.length };
  }

  private async run(rate: RateAsked) {
    const { replications, sure, level, unit } = this.asked,
      window = watched(this.scenario, rate, unit),
      { scenario, model } = window;
    const variant = { key: digest(scenario), model, read: readingOf(scenario, model) },
      isBuiltAgain = model.programme.orders.replaceScrapped;
    const readings: Reading[] = [];
    for (let most = replications; ; most *= 2) {
      readings.push(...(await this.replicator.row(variant, readings.length + 1, most)));
      const judged = judge(readings, { ...window, isBuiltAgain }, sure, level);
      if (judged.verdict !== 'not settled' || most >= MOST_TIMES * replications)
        return { readings, judged, window };
    }
  }
}

/** A scenario at a rate, and the units released in its window by week and in all. */
export function watched(base: Scenario, rate: RateAsked, unit: PlannersUnit) {
  const at = atRate(base, rate),
    { scenario, first, end } = at,
    model = compile(scenario),
    { times, bucketEdges } = model.programme;
  const released = neighbours(bucketEdges.subarray(first, end + 1)).map(
    ([from, to]) => times.filter((time) => time >= from && time < to).length,
  );
  const units = sum(released);
  if (units < LEAST_UNITS)
    throw new RangeError(
      `programme: expected at least ${LEAST_UNITS} units in a window of ${rate.weeks} weeks at ` +
        `${rateText(rate.perDay, unit)}, got ${units}; give more --weeks or a higher rate`,
    );
  return { ...at, model, released, units };
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
