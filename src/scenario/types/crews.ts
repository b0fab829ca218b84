import type { ClockSpan } from './scenario.js';

/** What the shifts of a crew may have of their own. */
export interface CrewShifts {
  /** One headcount for each shift of the calendar, in their order; undefined: the same on all. */
  readonly headcounts: readonly number[] | undefined;
  /** Chance that a person is missing for a shift. */
  readonly absence: number;
  readonly handOver: 'next shift' | 'wait';
}

/** Days off, ISO, both ends included. */
export interface Shutdown {
  readonly from: string;
  readonly to: string;
  readonly note: string | undefined;
}

/** Extra hours on some days: always, or when a rule asks for them. */
export interface Overtime {
  readonly hours: readonly ClockSpan[];
  /** Weekdays, 1 = Monday; undefined: the working days of the calendar. */
  readonly on: readonly number[] | undefined;
  /** First and last day, ISO; undefined: from the start, to the end. */
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly note: string | undefined;
  readonly when: OvertimeRule | undefined;
}

/** Worked when at least so many units that are due have not been shipped, or have not passed a step. */
export interface OvertimeRule {
  readonly behind: number;
  /** A unit is due so long after its planned release. */
  readonly leadTimeMin: number;
  /** Name of a step of the unit's route; undefined: shipping. */
  readonly at: string | undefined;
  readonly decided: 'weekly' | 'daily';
}
