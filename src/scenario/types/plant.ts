import type { Distribution } from '../../random/distribution.js';
import type { Failure } from './failures.js';

export interface Site {
  readonly zone: string;
  /** Name of a calendar; undefined: always open. */
  readonly calendar: string | undefined;
  readonly crews: Readonly<Record<string, Crew>>;
  readonly stations: Readonly<Record<string, Station>>;
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
  readonly batch: /** Without a longest wait: no limit. */
  { readonly most: number; readonly longestWaitMin: number | undefined } | undefined;
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

/** Stations whose units all move on together. */
export interface PulseLine {
  /** In the order of the route. */
  readonly stations: readonly string[];
  readonly taktMin: number;
}
