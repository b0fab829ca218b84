import type { Distribution } from '../../random/distribution.js';
import type { Finding } from './problem.js';

/** Each option has values with weights that sum to 1; `stripe: 35 %` is { yes: 0.35, no: 0.65 }. */
export type OptionMix = Readonly<Record<string, Readonly<Record<string, number>>>>;

export interface Programme {
  /** First day, ISO date. */
  readonly start: string;
  /** When the run starts on that day, minutes after midnight by the clock of `zone`; undefined: then. */
  readonly startMin?: number | undefined;
  /** Zone of the programme's dates and weeks; default: the first site's. */
  readonly zone: string;
  readonly options: OptionMix;
  readonly release: ReleaseByRate | ReleaseByInterval | ReleaseSaturated;
  /** Units in all; undefined for a steady-state run. */
  readonly quantity: number | undefined;
  /** The run ends at the start of this day at the latest. */
  readonly until: string | undefined;
  /** Steady-state runs: observation time after warm-up. */
  readonly lengthMin: number | undefined;
  readonly warmUpMin: number;
  /** The warm-up is to be found by MSER-5; `warmUpMin` is 0 until it is. */
  readonly findsWarmUp?: true | undefined;
  readonly orders: Orders;
}
/**
 * Evenly over the working time of the first station's site, from each date on, or at clock times of its
 * working days; no phases where each unit has a day of release of its own.
 */
export interface ReleaseByRate {
  readonly kind: 'rate';
  readonly phases: readonly RatePhase[];
  readonly at?: ClockTimes | undefined;
}
/** Minutes after midnight, sorted; and the weekdays with them, 1 = Monday: undefined: all working days. */
export interface ClockTimes {
  readonly minutes: readonly number[];
  readonly on: readonly number[] | undefined;
}
/** Units per working day, or per ISO week over its working days from `from` on. */
export interface RatePhase {
  readonly from: string;
  readonly perDay?: number | undefined;
  readonly perWeek?: number | undefined;
}
export interface ReleaseByInterval {
  readonly kind: 'interval';
  readonly interval: Distribution;
}
/** A unit is always ready to enter: the first station never starves. */
export interface ReleaseSaturated {
  readonly kind: 'saturated';
}

/** One unit of which the planner knows something: a row of the build list, or a unit of the opening. */
export interface Order {
  /** The planner's own build number; undefined: it has none. */
  readonly build: string | undefined;
  /** Day of release, ISO; undefined: in its turn by the rate. */
  readonly release: string | undefined;
  /** Due at the end of this day in the programme's zone, ISO. */
  readonly due: string | undefined;
  /** Option -> value, as far as they are known; the others are drawn. */
  readonly options: Readonly<Record<string, string>>;
  /**
   * Step or lane of the unit's route at which it stands when the run starts; undefined: it is released in the
   * run.
   */
  readonly at: string | undefined;
  /** Of a unit of the opening: what is open on it; undefined: nothing. */
  readonly open?: readonly OpenItem[] | undefined;
  /** Of its step, done already; undefined: nothing. */
  readonly doneMin?: number | undefined;
  /** The inspection or test that sent it back and that it has not come to again. */
  readonly sentBackBy?: string | undefined;
  /** Where it was written, for problems found later. */
  readonly written: Pick<Finding, 'path' | 'source'>;
}

/** An item on a unit of the opening. */
export interface OpenItem {
  /** Kind of defect; undefined: a failed test. */
  readonly defect: string | undefined;
  /** The step that made it; undefined: the only one that can have. */
  readonly madeAt: string | undefined;
  /** The inspection or test that found it; undefined: nobody has. */
  readonly foundAt: string | undefined;
  /** That it is there, 0..1. */
  readonly chance: number;
}

export interface Orders {
  /** Units of the opening, then rows of the build list. */
  readonly list: readonly Order[];
  /** From release to due; undefined: units without a date of their own are never due. */
  readonly dueAfterMin: number | undefined;
  /** The order of a scrapped unit is built again. */
  readonly replaceScrapped: boolean;
}
