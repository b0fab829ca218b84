import { Calendar } from '../floor/calendar.js';
import type { Model } from '../model/model.js';
import type { CalendarColumns, OvertimeColumns } from '../model/time.js';
import { countWhere } from '../model/time.js';

/** What a run remembers of overtime by rule: which hours were asked for, and how many units are out. */

/** A calendar of a run with hours that rules decide on. */
export class RuledCalendar {
  readonly calendar: Calendar;
  /** By window: bits of the rules that asked for it. */
  private readonly asked: Int32Array;

  constructor(
    readonly id: number,
    private readonly full: CalendarColumns,
  ) {
    const { start, end, rules } = full;
    this.asked = new Int32Array(start.length);
    this.calendar = new Calendar({
      ...full,
      end: end.map((to, w) => (rules[w] === 0 ? to : start[w])),
      before: full.before.slice(),
    });
    this.calendar.refresh();
  }

  /** Whether a rule has to do with windows from a time up to another. */
  concerns(rule: number, from: number, to: number): boolean {
    return this.windows(rule, from, to).length > 0;
  }

  /** Has the windows of a rule worked. */
  open(rule: number, from: number, to: number): void {
    for (const w of this.windows(rule, from, to)) {
      this.asked[w] |= 1 << rule;
      if ((this.asked[w] & this.full.rules[w]) === this.full.rules[w])
        this.calendar.end[w] = this.full.end[w];
    }
    this.calendar.refresh();
  }

  private windows(rule: number, from: number, to: number): number[] {
    const { start, rules } = this.full,
      found: number[] = [];
    for (let w = countWhere(start, (time) => time < from); w < start.length && start[w] < to; w++)
      if ((rules[w] & (1 << rule)) !== 0) found.push(w);
    return found;
  }
}

/** One rule in one run. */
export class OvertimeRule {
  /** Period that is decided next. */
  next = 0;
  /** Periods looked at, and those of them in which it was worked, since observation began. */
  looked = 0;
  worked = 0;
  /** Units past the step that is counted, each once. */
  out = 0;
  private readonly isOut: Uint8Array;

  constructor(
    readonly id: number,
    readonly columns: OvertimeColumns,
  ) {
    this.isOut = new Uint8Array(columns.step < 0 ? 0 : columns.due.length);
  }

  count(number: number): void {
    if (number > this.isOut.length || this.isOut[number - 1] === 1) return;
    this.isOut[number - 1] = 1;
    this.out++;
  }

  clear(): void {
    this.looked = 0;
    this.worked = 0;
  }
}

export const ruledCalendars = ({ calendars }: Model): RuledCalendar[] =>
  calendars.flatMap((columns, id) =>
    columns.rules.some((bits) => bits !== 0) ? [new RuledCalendar(id, columns)] : [],
  );
