import type { Distribution } from '../../random/distribution.js';
import type { Assumption } from '../file/assumptions.js';
import type { Carriers, Team } from './carriers.js';
import type { Costs } from './costs.js';
import type { Supply } from './supplies.js';
import type { CrewShifts, Overtime, Shutdown } from './crews.js';
import type { Orders } from './orders.js';
import type { Failure, Outage } from './failures.js';
import type { PulseLine } from './pulse-lines.js';

/**
 * A scenario as read: defaults filled in, quantities converted, names checked. Times are minutes, chances
 * 0..1, dates plain ISO strings (`2027-03-01`), clock times minutes after midnight. Maps keep the order in
 * which the planner wrote them.
 */
export interface Scenario {
  readonly name: string;
  readonly note: string | undefined;
  readonly programme: Programme;
  readonly calendars: Readonly<Record<string, CalendarSpec>>;
  readonly sites: Readonly<Record<string, Site>>;
  readonly feeders: Readonly<Record<string, Feeder>>;
  readonly supplies: Readonly<Record<string, Supply>>;
  readonly lanes: Readonly<Record<string, Lane>>;
  readonly carriers: Readonly<Record<string, Carriers>>;
  readonly teams: Readonly<Record<string, Team>>;
  /** Kinds of defect. */
  readonly defects: Readonly<Record<string, { readonly note: string | undefined }>>;
  readonly costs: Costs | undefined;
  readonly outages: readonly Outage[];
  readonly pulseLines: Readonly<Record<string, PulseLine>>;
  readonly route: readonly RouteEntry[];
  /** What is said of the values above: where they come from. No result depends on it. */
  readonly assumptions: readonly Assumption[];
}

/** Each option has values with weights that sum to 1; `stripe: 35 %` is { yes: 0.35, no: 0.65 }. */
export type OptionMix = Readonly<Record<string, Readonly<Record<string, number>>>>;

export interface Programme {
  /** First day, ISO date. */
  readonly start: string;
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
 * Evenly over the working time of the first station's site, from each date on; no phases where each unit has
 * a day of release of its own.
 */
export interface ReleaseByRate {
  readonly kind: 'rate';
  readonly phases: readonly RatePhase[];
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

export interface CalendarSpec {
  /** Shifts of a working day, minutes after midnight; an end at or before the start is on the next day. */
  readonly hours: readonly ClockSpan[];
  readonly breaks: readonly ClockSpan[];
  /** Weekdays, 1 = Monday .. 7 = Sunday. */
  readonly on: readonly number[];
  /** Days off, ISO, inclusive spans. */
  readonly holidays: readonly { readonly from: string; readonly to: string }[];
  /** Days off as holidays are, and named in reports. */
  readonly shutdowns: readonly Shutdown[];
  readonly overtime: readonly Overtime[];
}
export interface ClockSpan {
  readonly startMin: number;
  readonly endMin: number;
}

export interface Site {
  readonly zone: string;
  /** Name of a calendar; undefined: always open. */
  readonly calendar: string | undefined;
  readonly crews: Readonly<Record<string, Crew>>;
  readonly stations: Readonly<Record<string, Station>>;
}
export interface Crew {
  /** On the largest shift. */ readonly headcount: number /** Default: the site's. */;
  readonly calendar: string | undefined /** Undefined: all shifts alike. */;
  readonly shifts?: CrewShifts | undefined;
}
export interface Station {
  readonly places: number;
  /** Spaces ahead; undefined: unlimited. */
  readonly buffer: number | undefined;
  /** Spaces ahead for units sent back: a number, 'unlimited', or undefined: they share the buffer. */
  readonly reworkBuffer: number | 'unlimited' | undefined;
  /** Never off shift. */
  readonly unattended: boolean;
  /** Default: the site's. */
  readonly calendar: string | undefined;
  readonly changeover: Changeover | undefined;
  readonly lot:
    | { readonly least: number; readonly most: number; readonly longestWaitMin: number | undefined }
    | undefined;
  readonly failures: readonly Failure[];
  /** Most people who can work in one place at once; undefined: no limit. */
  readonly people: number | undefined;
}

export interface Changeover {
  readonly option: string;
  readonly work: Distribution;
  /** Value before -> value after -> work of this pair instead. */
  readonly fromTo: Readonly<Record<string, Readonly<Record<string, Distribution>>>>;
  readonly batch:
    | { readonly most: number /** Undefined: no limit. */; readonly longestWaitMin: number | undefined }
    | undefined;
}

export interface Feeder {
  readonly kind: 'stock' | 'own';
  /** Pull loop: stock and sub-assemblies in the making together. 0 for own parts. */
  readonly target: number;
  readonly atStart: number;
  readonly route: readonly RouteEntry[];
}

export interface Lane {
  readonly from: string;
  readonly to: string;
  readonly trucks: number;
  readonly capacity: number;
  readonly load: Distribution;
  readonly drive: Distribution;
  readonly unload: Distribution;
  readonly return: Distribution;
  readonly leaves:
    | { readonly kind: 'full' }
    | { readonly kind: 'full or wait'; readonly longestWaitMin: number }
    /** Clock times in the zone of `from`, on the days of its calendar. */
    | { readonly kind: 'timetable'; readonly atMin: readonly number[] };
  /** Driving hours: name of a calendar; undefined: any time. */
  readonly hours: string | undefined;
  /**
   * Spaces ahead of loading and after unloading; undefined: unlimited ahead; after unloading none (the unit
   * goes straight to its next station).
   */
  readonly bank: number | undefined;
  readonly arrivalBank: number | undefined;
  /** Trucks that can load, unload at once; undefined: no limit. */
  readonly docks: { readonly from: number | undefined; readonly to: number | undefined };
}

export type RouteEntry = StationStep | LaneStep;
export interface LaneStep {
  readonly kind: 'lane';
  readonly lane: string;
  readonly when: Condition;
}
export interface StationStep {
  readonly kind: 'step';
  readonly name: string;
  readonly at: string;
  readonly when: Condition;
  readonly crew: Readonly<Record<string, number>>;
  readonly work: Distribution | undefined;
  /** `work` is then the work of one pass. */
  readonly passes:
    | { readonly count: number; readonly work: Distribution; readonly settle: Distribution | undefined }
    | undefined;
  /** Unattended, after the work. */
  readonly process: Distribution | undefined;
  /** The process ends only while somebody is on shift. */
  readonly attendedEnd: boolean;
  readonly oneShift: boolean;
  /** option -> value -> factor on work times. */
  readonly workFactor: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly learning: Learning | undefined;
  readonly rework: 'both' | 'skip' | 'only';
  readonly sample: { readonly oneIn: number; readonly by: 'turn' | 'random' } | undefined;
  /** Feeder or supply -> how many (from a stock), or 'own'. */
  readonly parts: Readonly<Record<string, number | 'own'>>;
  /** Own feeders that start from this unit when the step ends. */
  readonly takesOff: readonly string[];
  readonly creates: Readonly<Record<string, Chance>>;
  readonly finds: Readonly<Record<string, Find>>;
  readonly fails: Find | undefined;
  /**
   * Units with noted items stop here and are mended; `mend` is the work on one that has no time of its own.
   */
  readonly hold: { readonly mend: Distribution | undefined } | undefined;
  /** An earlier inspection that measured the same, and the extra work where the two differ. */
  readonly comparesWith: { readonly step: string; readonly differs: Distribution | undefined } | undefined;
  /**
   * Steps done side by side in one place of `at`; this one then has no work of its own, and a name made of
   * theirs.
   */
  readonly sideBySide: readonly StationStep[] | undefined;
}
/**
 * Work time falls with the number built: each doubling multiplies it by `rate`, down to `floor` of the first
 * unit's.
 */
export interface Learning {
  readonly rate: number;
  /** Of the unit's own time (Crawford), or of the mean of all so far (Wright). */
  readonly curve: 'unit' | 'cumulative mean';
  readonly floor: number;
  readonly builtBefore: number;
}
/** option -> values that meet it; all options must be met. */
export type Condition = Readonly<Record<string, readonly string[]>>;
export interface Chance {
  readonly usual: number;
  readonly byOption: readonly { readonly option: string; readonly value: string; readonly chance: number }[];
}
export interface Find {
  readonly chance: Chance;
  readonly then:
    | { readonly kind: 'repair'; readonly work: Distribution }
    | {
        readonly kind: 'back';
        readonly to: string;
        readonly limit: number;
        readonly atLimit: 'pass' | 'scrap';
      }
    | { readonly kind: 'scrap' }
    /** Noted and left open; mended at the next hold. */
    | { readonly kind: 'carry'; readonly work: Distribution };
}
