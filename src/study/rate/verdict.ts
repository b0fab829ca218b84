import {
  type CanShip,
  canShip,
  isWithinArithmetic,
  replicationsToShow,
  type Shipped,
  shippable,
} from '../held/evidence.js';
import { holdingOf, holdingText } from '../held/holding.js';
import { unitsOut, wholeUnits } from '../held/keep-up.js';
import { defined } from '../lists.js';
import type { PlannersUnit } from '../planners-unit.js';
import { mean } from '../statistics/sums.js';
import type { RateAsked } from './at-rate.js';
import type { Line, Ran } from './line.js';
import type { RatePoint, RateVerdict } from './results.js';

/** What is asked beside the rate, and what arithmetic allows, units a working day; Infinity: no limit. */
export interface Looking {
  readonly window: Omit<RateAsked, 'perDay'>;
  readonly ceiling: number;
  readonly unit: PlannersUnit;
  /** The first rate of the grid, or beyond its end, that is not below another. */
  readonly next: (perDay: number) => number;
}

/** Evidence is looked for so much above a rate, and so many times what whole units and loads may hide. */
const ABOVE = 0.02,
  ABOVE_UNITS = 3;

/** Standard errors by which the mean of few replications may turn out to be higher. */
const HOPE = 2;

/** Units that a rate asks in the weeks judged in the long run. */
const askedBy = ({ perDay, window }: Ran): number => perDay * window.workingDays;

/**
 * Judges rates by what was run of them and of higher ones. A rate holds if enough builds keep up with it, and
 * if they surely ship as much when more is asked: see `keptUpBy` and `canShip`.
 */
export class Judge {
  private readonly runs = new Map<number, Ran>();

  constructor(
    private readonly line: Line,
    private readonly looking: Looking,
  ) {}

  /** What was run, by rate. */
  get ran(): readonly Ran[] {
    return [...this.runs.values()].sort((a, b) => a.perDay - b.perDay);
  }

  /**
   * Runs a rate from look to look until it is settled, or nothing that is run could settle it: first what
   * higher rates show of what can be shipped, then how many builds keep up.
   */
  async look(perDay: number): Promise<RateVerdict> {
    let at = this.keep(await this.line.first(this.asked(perDay)));
    for (;;) {
      const can = this.canShip(at);
      if (at.kept.enough === 'no' || can === 'no') break;
      const isRun = can === 'yes' ? await this.runLonger(at) : await this.runEvidence(at);
      if (!isRun) break;
      at = defined(this.runs.get(perDay));
    }
    return this.verdict(at).verdict;
  }

  /** What all that was run says of a rate. */
  verdict(at: Ran): Pick<RatePoint, 'verdict' | 'why' | 'canShip'> {
    const known = shippable(this.outAbove(at), at.window.workingDays, this.limits(at)),
      holding = {
        ...at.kept,
        isWhole: at.window.counting.isWhole,
        canShip: { ...known, enough: this.canShip(at) },
      };
    return {
      verdict: holdingOf(holding),
      why: holdingText(holding, this.looking.unit),
      canShip: known,
    };
  }

  private keep(ran: Ran): Ran {
    this.runs.set(ran.perDay, ran);
    return ran;
  }

  private asked(perDay: number): RateAsked {
    return { ...this.looking.window, perDay };
  }

  /** Whether a rate was run up to its next look. */
  private async runMore(ran: Ran): Promise<boolean> {
    const more = await this.line.more(this.asked(ran.perDay), ran);
    if (more !== null) this.keep(more);
    return more !== null;
  }

  /** More replications do not make up for a window that is too short. */
  private async runLonger(at: Ran): Promise<boolean> {
    return at.kept.enough === 'open' && at.window.counting.isWhole && (await this.runMore(at));
  }

  /**
   * Runs the higher rate that ships most for longer if that may show that as much can be shipped; else the
   * rate itself if that may show that too few keep up; else a rate a little above, if none is known so near.
   */
  private async runEvidence(at: Ran): Promise<boolean> {
    const leader = this.leader(at);
    if (leader !== null && this.mayShow(leader, at) && (await this.runMore(leader))) return true;
    if (this.seemsTooFew(at)) return this.runLonger(at);
    const near = this.nearAbove(at);
    if (this.above(at).some(({ perDay }) => perDay <= near)) return false;
    this.keep(await this.line.first(this.asked(near)));
    return true;
  }

  private nearAbove({ perDay, window: { counting, workingDays } }: Ran): number {
    const more = Math.max(ABOVE * perDay, (ABOVE_UNITS * wholeUnits(counting)) / workingDays);
    return this.looking.next(perDay + more);
  }

  /** Of the rates above, the one that ships most in the replications that all have; null: there is none. */
  private leader(at: Ran): Ran | null {
    const { first } = this.line.looks,
      shipped = ({ readings, window: { model, counting } }: Ran): number =>
        mean(readings.slice(0, first).map(unitsOut(model, counting)).filter(Number.isFinite)) || 0;
    return this.above(at).reduce<Ran | null>(
      (best, each) => (best === null || shipped(each) > shipped(best) ? each : best),
      null,
    );
  }

  /** Few replications tell little of the mean: while they are few it may be higher by so many errors. */
  private mayShow({ out, readings }: Ran, at: Ran): boolean {
    const { looks } = this.line,
      hope = looks.isEarly(readings.length) ? HOPE : 0;
    return replicationsToShow(askedBy(at), out, this.isWithin(at), hope) <= 2 * looks.most;
  }

  /** Whether a share as it is now, in no more replications than were asked for, would be too small. */
  private seemsTooFew({ readings, kept: { keptUp } }: Ran): boolean {
    const { looks, sure } = this.line;
    for (let n = looks.next(readings.length); n <= looks.replications; n = looks.next(n))
      if (looks.share(Math.round(keptUp.share * n), n).high < sure) return true;
    return false;
  }

  private above({ perDay }: Ran): readonly Ran[] {
    return this.ran.filter((each) => each.perDay > perDay);
  }

  private outAbove(at: Ran): readonly Shipped[] {
    return this.above(at).map(({ out }) => out);
  }

  /** What can be shipped at most is known by the rate that ships most, which is run longest. */
  private limits(at: Ran): readonly Shipped[] {
    const leader = this.leader(at);
    return leader === null ? [] : [leader.out];
  }

  private isWithin({ perDay }: Ran): boolean {
    return isWithinArithmetic(perDay, this.looking.ceiling);
  }

  private canShip(at: Ran): CanShip {
    return canShip(askedBy(at), this.outAbove(at), this.isWithin(at), this.limits(at));
  }
}
