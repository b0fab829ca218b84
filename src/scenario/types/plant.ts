import type { Distribution } from '../../random/distribution.js';

export interface Site {
  readonly zone: string;
  /** Name of a calendar; undefined: always open. */
  readonly calendar: string | undefined;
  readonly crews: Readonly<Record<string, Crew>>;
  readonly stations: Readonly<Record<string, Station>>;
  /** Shared by its stations. */
  readonly equipment?: Readonly<Record<string, Equipment>> | undefined;
}
export interface Crew {
  /** On the largest shift. */
  readonly headcount: number;
  /** Default: the site's. */
  readonly calendar: string | undefined;
  /** Undefined: all shifts alike. */
  readonly shifts?: CrewShifts | undefined;
}
/** What the shifts of a crew may have of their own. */
export interface CrewShifts {
  /** One headcount for each shift of the calendar, in their order; undefined: the same on all. */
  readonly headcounts: readonly number[] | undefined;
  /** Chance that a person is missing for a shift. */
  readonly absence: number;
  readonly handOver: 'next shift' | 'wait';
}
export interface Equipment {
  readonly count: number;
  /** Default: the site's. */
  readonly calendar: string | undefined;
  readonly failures: readonly Failure[];
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
  /** Or `setting`, where no option has this name: the setting of the step. */
  readonly option: string;
  readonly work: Distribution;
  /** Value before -> value after -> work of this pair instead. */
  readonly fromTo: Readonly<Record<string, Readonly<Record<string, Distribution>>>>;
  readonly batch: /** Without a longest wait: no limit. */
  { readonly most: number; readonly longestWaitMin: number | undefined } | undefined;
  /** `work` passes by itself, day and night; undefined: people do it. */
  readonly alone?: true | undefined;
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
   * goes straight to its next station), which may be 'unlimited'.
   */
  readonly bank: number | undefined;
  readonly arrivalBank: number | 'unlimited' | undefined;
  /** Trucks that can load, unload at once; undefined: no limit. */
  readonly docks: { readonly from: number | undefined; readonly to: number | undefined };
}

/** Stations whose units all move on together. */
export interface PulseLine {
  /** In the order of the route. */
  readonly stations: readonly string[];
  readonly taktMin: number;
}

/** One way in which the equipment of a station, or what stations share, fails. */
export interface Failure {
  readonly every: Distribution;
  readonly by: 'operating time' | 'calendar time';
  readonly repair: Distribution;
  /** Calendar in which repairs go on; undefined: day and night. */
  readonly hours: string | undefined;
}

/** All places of some stations are down, and no truck departs on some lanes, between two dates. */
export interface Outage {
  readonly stations: readonly string[];
  /** All stations of this site. */
  readonly site: string | undefined;
  readonly lanes: readonly string[];
  readonly from: Moment;
  readonly to: Moment;
  /** Days from one beginning to the next; undefined: it comes once. */
  readonly everyDays: number | undefined;
  /** How often it comes in all; undefined: up to the end of the run. */
  readonly times: number | undefined;
  readonly note: string | undefined;
}
/** A day, or a clock time on it: minutes after midnight. */
export interface Moment {
  readonly day: string;
  readonly minute: number | undefined;
}

/** Bought-in parts. Lots are ordered by a reorder level, or come by a plan. */
export interface Supply {
  /** Site where the parts come in and are used. */
  readonly site: string;
  readonly atStart: number;
  readonly order: Reorder | DeliveryDates | DeliveryRhythm;
  readonly late: { readonly chance: number; readonly by: Distribution } | undefined;
}
/**
 * A lot is ordered when stock and orders, less the demand that waits, are at or below level + safety stock.
 */
export interface Reorder {
  readonly kind: 'reorder';
  readonly level: number;
  readonly safetyStock: number;
  readonly lot: number;
  readonly leadTime: Distribution;
}
export interface DeliveryDates {
  readonly kind: 'dates';
  readonly dates: readonly { readonly on: string; readonly lot: number }[];
}
/** Every so many days from `from` (default: the programme's start) to `to` (default: the end of the run). */
export interface DeliveryRhythm {
  readonly kind: 'rhythm';
  readonly lot: number;
  readonly everyDays: number;
  readonly from: string | undefined;
  readonly to: string | undefined;
}

/** Steps of one route, both included, over which something stays with a unit. */
export interface Stretch {
  readonly from: string;
  readonly to: string;
  /**
   * What a unit does that has given it back and comes to one of the steps behind the one at which it claimed
   * it; undefined: `without`.
   */
  readonly inRework?: 'without' | 'again' | undefined;
}
/** Carts, dollies, fixtures. */
export interface Carriers extends Stretch {
  readonly count: number;
  readonly return: Distribution;
  /** Calendar in which they are brought back; undefined: any time. */
  readonly hours: string | undefined;
}
/** Some people of a crew at the site of `from`. */
export interface Team extends Stretch {
  readonly crew: string;
  readonly people: number;
}
