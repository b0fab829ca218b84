import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { type Shipped, shippedIn } from '../held/evidence.js';
import { type KeptUp, keptUpBy, unitsOut, wholeUnits } from '../held/keep-up.js';
import { neighbours } from '../lists.js';
import { countingOf } from '../loads/counting.js';
import { type Arithmetic, loadsOf } from '../loads/loads.js';
import type { Replicator } from '../run/replicator.js';
import { planned, workingDaysBetween } from '../sample/planned.js';
import { type Reading, readingOf } from '../sample/reading.js';
import { sum } from '../statistics/sums.js';
import { atRate, type RateAsked } from './at-rate.js';

/** A rate that is not settled is run up to so many times the replications. */
export const MOST_TIMES = 4;

/** The replications of a rate so far. */
export interface Ran {
  readonly perDay: number;
  readonly window: ReturnType<typeof watched>;
  readonly readings: readonly Reading[];
  readonly kept: KeptUp;
  /** Units out in the window, shipped or lost for good, in the replications that did not stand still. */
  readonly out: Shipped;
}

/** The line at any rate. Nothing is run twice. */
export class Line {
  private readonly known = new Map<string, Ran>();
  /** Replications run. */
  replications = 0;

  constructor(
    private readonly scenario: Scenario,
    private readonly replicator: Replicator,
    private readonly arithmetic: Arithmetic,
    private readonly asked: { readonly replications: number; readonly sure: number; readonly level: number },
  ) {}

  get most(): number {
    return MOST_TIMES * this.asked.replications;
  }

  /** With as many replications as every rate has. */
  first(rate: RateAsked): Promise<Ran> {
    return this.atLeast(rate, this.asked.replications);
  }

  /** With as many replications as tell whether enough of them keep up, or as there may be. */
  async at(rate: RateAsked): Promise<Ran> {
    let ran = await this.first(rate);
    // More replications do not make up for a window that is too short.
    while (ran.kept.enough === 'open' && ran.window.counting.isWhole && 2 * ran.readings.length <= this.most)
      ran = await this.atLeast(rate, 2 * ran.readings.length);
    return ran;
  }

  async atLeast(rate: RateAsked, replications: number): Promise<Ran> {
    const key = `${rate.perDay} ${rate.begins ?? ''}`,
      known = this.known.get(key),
      had = known?.readings ?? [];
    if (known !== undefined && had.length >= replications) return known;
    const window = known?.window ?? watched(this.scenario, rate, this.arithmetic),
      { scenario, model, counting, units } = window,
      variant = { key: digest(scenario), model, read: readingOf(scenario, model) },
      readings = [...had, ...(await this.replicator.row(variant, had.length + 1, replications))],
      { sure, level } = this.asked;
    this.replications += replications - had.length;
    const ran: Ran = {
      perDay: rate.perDay,
      window,
      readings,
      kept: keptUpBy(readings, { asked: units, counting }, sure, level),
      out: shippedIn(readings.map(unitsOut(model, counting)), wholeUnits(counting)),
    };
    this.known.set(key, ran);
    return ran;
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
  return { ...at, model, plan, units, workingDays, counting };
}
