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

/**
 * Worked when at least so many units that are due have not been shipped, or have not passed a step. Without a
 * lead time units go by their due dates.
 */
export interface OvertimeRule {
  readonly behind: number;
  /** A unit is due so long after its planned release. */
  readonly leadTimeMin: number | undefined;
  /** Without a lead time: units count so long before their due date. */
  readonly dueWithinMin: number | undefined;
  /** Name of a step of the unit's route; undefined: shipping. */
  readonly at: string | undefined;
  readonly decided: 'weekly' | 'daily';
}
