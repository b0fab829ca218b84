import type { Model } from '../../flow/model/model.js';
import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { neighbours } from '../lists.js';
import { countingOf } from '../loads/counting.js';
import { type Arithmetic, loadsOf } from '../loads/loads.js';
import type { Replicator } from '../run/replicator.js';
import { planned, workingDaysBetween } from '../sample/planned.js';
import { type Reading, readingOf } from '../sample/reading.js';
import { busiest, resources } from '../sections/bottlenecks.js';
import { widened } from '../statistics/estimate.js';
import { proportion } from '../statistics/proportion.js';
import { amount } from '../statistics/skewed-interval.js';
import { sum } from '../statistics/sums.js';
import { atRate, type RateAsked } from './at-rate.js';
import type { RatePoint } from './results.js';
import { type Judged, judge } from './verdict.js';

/** A rate that is not settled is run up to so many times the replications. */
export const MOST_TIMES = 4;

/** The line at any rate: more replications are run where the verdict is not settled. */
export class Line {
  constructor(
    private readonly scenario: Scenario,
    private readonly replicator: Replicator,
    private readonly arithmetic: Arithmetic,
    private readonly asked: { readonly replications: number; readonly sure: number; readonly level: number },
  ) {}

  async point(rate: RateAsked): Promise<RatePoint> {
    const { readings, judged, window } = await this.run(rate),
      { model, units, workingDays, counting } = window,
      { level } = this.asked;
    const of = (value: (reading: Reading) => number) => amount(readings.map(value), level);
    return {
      perDay: rate.perDay,
      ...judged,
      replications: readings.length,
      asked: units,
      shippedPerDay: widened(
        of((reading) => counting.shipped(reading) / workingDays),
        counting.upset / workingDays,
      ),
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
    const { replications, sure, level } = this.asked,
      window = watched(this.scenario, rate, this.arithmetic),
      { scenario, model } = window;
    const variant = { key: digest(scenario), model, read: readingOf(scenario, model) },
      isBuiltAgain = model.programme.orders.replaceScrapped;
    const readings: Reading[] = [];
    for (let most = replications; ; most *= 2) {
      readings.push(...(await this.replicator.row(variant, readings.length + 1, most)));
      const judged = judge(readings, { ...window, isBuiltAgain }, sure, level);
      // More replications do not make up for a window that is too short.
      if (judged.verdict !== 'not settled' || !window.counting.isWhole || most >= MOST_TIMES * replications)
        return { readings, judged, window };
    }
  }
}

/**
 * A scenario at a rate, the units released in its window by week and in all, and how those shipped are
 * counted.
 * @param arithmetic of the base: it is the same at any rate
 */
export function watched(base: Scenario, rate: RateAsked, arithmetic: Arithmetic) {
  const at = atRate(base, rate),
    { scenario, first, end, fromMin, toMin } = at,
    model = compile(scenario),
    { times, bucketEdges } = model.programme;
  const released = neighbours(bucketEdges.subarray(first, end + 1)).map(
    ([from, to]) => times.filter((time) => time >= from && time < to).length,
  );
  const units = sum(released),
    plan = planned(scenario, model),
    workingDays = workingDaysBetween(plan.calendar.workingDays, fromMin, toMin),
    loads = loadsOf(plan, rate.perDay, { from: fromMin, to: toMin }, arithmetic),
    counting = countingOf(plan, { first, last: end - 1, workingDays, asked: units }, loads, arithmetic);
  return { ...at, model, plan, released, units, workingDays, counting };
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
