/**
 * What is written down of the floor, in words of the trade:
 * - enter: a unit comes in (is released); its options in `values`
 * - arrive: it comes to the step, into the buffer or bank ahead of it or straight into a place
 * - start: work at the step begins, all that it needs is there
 * - end: the step is done; the unit may stand there still, blocked
 * - find: an inspection or test found `values.defect`; `values.to` is the step it is sent back to, if any
 * - join: `others` become part of the object at the step
 * - load, unload: into and out of a truck, which is among `others`
 * - ship, scrap: it is gone
 */
export const EVENT_KINDS = [
  'enter',
  'arrive',
  'start',
  'end',
  'find',
  'join',
  'load',
  'unload',
  'ship',
  'scrap',
] as const;
export type EventKind = (typeof EVENT_KINDS)[number];

/** One line of a floor log. */
export interface FloorEvent {
  /** Minutes since 1970-01-01T00:00Z; fractions are allowed. */
  readonly at: number;
  readonly kind: EventKind;
  /** `RT-017`, `doors 17`: unique within its type. */
  readonly object: string;
  /** `unit`, the name of the feeder or of the route of own parts, `carrier`, `truck`. */
  readonly type: string;
  /** '' where there is none. */
  readonly step: string;
  /** Station, or lane of `load` and `unload`; '' where it is not known. */
  readonly station: string;
  /** Other objects it touches, as `type:object`. */
  readonly others: readonly string[];
  /** Options, defect, destination .. */
  readonly values: Readonly<Record<string, string>>;
}

export const UNIT = 'unit';
