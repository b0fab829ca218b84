import type { RawMap } from '../values/raw.js';

/** Small changes of one thing that `reliefs` tries by itself, and that a possible change may be. */
export const RELIEF_KINDS = [
  'person',
  'team',
  'place',
  'space',
  'truck',
  'departure',
  'carrier',
  'equipment',
  'target stock',
  'lot',
  'lead time',
  'stock',
  'delivery',
  'lateness',
  'work',
  'defect',
  'overtime',
  'failure',
] as const;
export type ReliefKind = (typeof RELIEF_KINDS)[number];

/** A relief of one thing; site and which where several have this kind and name. */
export interface NamedRelief {
  readonly kind: ReliefKind;
  readonly of: string;
  readonly site: string | undefined;
  readonly which: string | undefined;
}

/** From order to use. A month ends on the same day of the month, or on its last. */
export interface LeadTime {
  /** Whole, 1 at least. */
  readonly count: number;
  readonly unit: 'day' | 'week' | 'month';
}

/** A change that can be bought or decided on, and what is known of its price. */
export interface PossibleChange {
  /** As the planner calls it. */
  readonly name: string;
  /** undefined: it is a bundle of edits. */
  readonly relief: NamedRelief | undefined;
  /** Edits as in a file of what-ifs: a map, or a list of maps, from a path to the new value. */
  readonly changes: RawMap | readonly RawMap[] | undefined;
  /** Money, once, each time that it is made; undefined: not given. */
  readonly price: number | undefined;
  /** Money a day of the calendar once it is made, beside what people, trucks, carriers and floor cost. */
  readonly day: number;
  readonly readyAfter: LeadTime | undefined;
  /** So often it can be made; undefined: as often as one likes. A bundle is made once. */
  readonly atMost: number | undefined;
  /** Names of others that cannot be made beside it, and without which it cannot be made. */
  readonly excludes: readonly string[];
  readonly requires: readonly string[];
  /** How often it is made in the scenario, and since when. */
  readonly made?: Making | undefined;
}

/** That a change is made. */
export interface Making {
  /** 1 at least. */
  readonly times: number;
  /** ISO date from which on it is there; undefined: from the first day on. */
  readonly from: string | undefined;
}
