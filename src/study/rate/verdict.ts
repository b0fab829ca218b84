import {
  type CanShip,
  canShip,
  isWithinArithmetic,
  replicationsToShow,
  type Shipped,
  shippable,
} from '../held/evidence.js';
import { holdingOf, holdingText } from '../held/holding.js';
import { wholeUnits } from '../held/keep-up.js';
import type { PlannersUnit } from '../planners-unit.js';
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
   * Runs a rate and, unless too few builds keep up, a rate a little above, if none that was run before shows
   * that as much can be shipped; then more replications of the rate, and of what tells most of those above.
   */
  async look(perDay: number): Promise<RateVerdict> {
    const rate = { ...this.looking.window, perDay };
    let at = this.keep(await this.line.first(rate));
    if (at.kept.enough !== 'no' && this.canShip(at) !== 'yes') await this.runAbove(at);
    if (this.canShip(at) !== 'no') at = this.keep(await this.line.at(rate));
    if (at.kept.enough === 'yes') {
      for (let more = this.mostTelling(at); more !== null; more = this.mostTelling(at))
        this.keep(
          await this.line.atLeast({ ...this.looking.window, perDay: more.perDay }, this.doubled(more)),
        );
    }
    return this.verdict(at).verdict;
  }

  /** What all that was run says of a rate. */
  verdict(at: Ran): Pick<RatePoint, 'verdict' | 'why' | 'canShip'> {
    const known = shippable(this.outAbove(at), at.window.workingDays),
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

  private async runAbove({ perDay, window: { counting, workingDays } }: Ran): Promise<void> {
    const more = Math.max(ABOVE * perDay, (ABOVE_UNITS * wholeUnits(counting)) / workingDays),
      above = this.looking.next(perDay + more);
    this.keep(await this.line.first({ ...this.looking.window, perDay: above }));
  }

  private doubled({ readings }: Ran): number {
    return Math.min(this.line.most, 2 * readings.length);
  }

  private above({ perDay }: Ran): readonly Ran[] {
    return this.ran.filter((each) => each.perDay > perDay);
  }

  private outAbove(at: Ran): readonly Shipped[] {
    return this.above(at).map(({ out }) => out);
  }

  private isWithin({ perDay }: Ran): boolean {
    return isWithinArithmetic(perDay, this.looking.ceiling);
  }

  private canShip(at: Ran): CanShip {
    return canShip(askedBy(at), this.outAbove(at), this.isWithin(at));
  }

  /** Of the rates above, the one that tells after the fewest replications; null: none is to be run longer. */
  private mostTelling(at: Ran): Ran | null {
    if (this.canShip(at) !== 'open') return null;
    const takes = ({ out }: Ran): number => replicationsToShow(askedBy(at), out, this.isWithin(at)),
      some = this.above(at).filter((each) => this.doubled(each) > each.readings.length);
    return some.reduce<Ran | null>(
      (best, each) => (takes(each) < (best === null ? Infinity : takes(best)) ? each : best),
      null,
    );
  }
}
