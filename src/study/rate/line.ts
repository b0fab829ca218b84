import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { type Shipped, shippedIn } from '../held/evidence.js';
import { enoughOf, type KeptUp, keptUpIn, unitsOut, wholeUnits } from '../held/keep-up.js';
import { neighbours } from '../lists.js';
import { countingOf } from '../loads/counting.js';
import { type Arithmetic, loadsOf } from '../loads/loads.js';
import type { Replicator } from '../run/replicator.js';
import { planned, workingDaysBetween } from '../sample/planned.js';
import { type Reading, readingOf } from '../sample/reading.js';
import { sum } from '../statistics/sums.js';
import { atRate, type RateAsked } from './at-rate.js';
import type { Looks } from './looks.js';

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
    readonly sure: number,
    readonly looks: Looks,
  ) {}

  /** Up to the first look. */
  first(rate: RateAsked): Promise<Ran> {
    return this.atLeast(rate, this.looks.first);
  }

  /** Up to the next look; null: there is none. */
  async more(rate: RateAsked, { readings }: Ran): Promise<Ran | null> {
    const next = this.looks.next(readings.length);
    return next > this.looks.most ? null : this.atLeast(rate, next);
  }

  /** With as many replications as tell whether enough of them keep up, or as there may be. */
  async at(rate: RateAsked): Promise<Ran> {
    let ran = await this.first(rate);
    // More replications do not make up for a window that is too short.
    while (ran.kept.enough === 'open' && ran.window.counting.isWhole) {
      const more = await this.more(rate, ran);
      if (more === null) break;
      ran = more;
    }
    return ran;
  }

  private async atLeast(rate: RateAsked, replications: number): Promise<Ran> {
    const key = `${rate.perDay} ${rate.begins ?? ''}`,
      known = this.known.get(key),
      had = known?.readings ?? [];
    if (known !== undefined && had.length >= replications) return known;
    const window = known?.window ?? watched(this.scenario, rate, this.arithmetic),
      { scenario, model, counting, units } = window,
      variant = { key: digest(scenario), model, read: readingOf(scenario, model) },
      readings = [...had, ...(await this.replicator.row(variant, had.length + 1, replications))],
      asked = { asked: units, counting },
      { sure, looks } = this;
    this.replications += replications - had.length;
    const ran: Ran = {
      perDay: rate.perDay,
      window,
      readings,
      kept: enoughOf(looks.share(keptUpIn(readings, asked), readings.length), asked, sure),
      out: shippedIn(
        readings.map(unitsOut(model, counting)),
        wholeUnits(counting),
        looks.surely(replications),
      ),
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
