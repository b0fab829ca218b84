import type { CalendarColumns } from '../flow/model.js';
import { workingDays, type WorkingDay } from './calendar-days.js';
import { calendarColumns, intersection, sameColumns } from './calendar-windows.js';
import { ZoneClock } from './calendar-zone.js';
import type { RunSpan } from './compile-span.js';
import type { Scenario } from './scenario.js';

/** Calendar id of what is never off shift. */
export const ALWAYS = -1;

/**
 * The calendars of a model. Each calendar is expanded once a zone, each intersection made once,
 * and calendars with the same windows share one id.
 */
export class CalendarBook {
  readonly columns: CalendarColumns[] = [];
  private readonly clocks = new Map<string, ZoneClock>();
  private readonly days = new Map<string, WorkingDay[]>();
  private readonly ids = new Map<string, number>();

  constructor(private readonly scenario: Scenario, private readonly span: RunSpan) {}

  /** Id of a calendar kept in a zone; `ALWAYS` for undefined. */
  id(name: string | undefined, zone: string): number {
    if (name === undefined) return ALWAYS;
    return this.remembered(JSON.stringify([name, zone]), () => calendarColumns(this.workingDays(name, zone), this.span.horizon));
  }

  /** Id of the time that is in all of the calendars; `ALWAYS` asks for nothing. */
  common(ids: readonly number[]): number {
    const [first = ALWAYS, ...others] = [...new Set(ids)].filter((id) => id !== ALWAYS).sort((a, b) => a - b);
    return others.reduce((a, b) => this.remembered(`${a}&${b}`, () => intersection(this.columns[a], this.columns[b])), first);
  }

  /** Working days of a calendar kept in a zone, to the end of the span; every date for undefined. */
  workingDays(name: string | undefined, zone: string): readonly WorkingDay[] {
    const key = JSON.stringify([name ?? null, zone]);
    let days = this.days.get(key);
    if (days === undefined) {
      const { startDay, endDay, origin } = this.span;
      const spec = name === undefined ? undefined : this.scenario.calendars[name];
      // A night shift may have begun on the eve, and zones differ by up to a day.
      days = workingDays(spec, this.clock(zone), startDay - 2, endDay + 2, origin);
      this.days.set(key, days);
    }
    return days;
  }

  clock(zone: string): ZoneClock {
    let clock = this.clocks.get(zone);
    if (clock === undefined) this.clocks.set(zone, clock = new ZoneClock(zone, this.span.startDay - 2, this.span.endDay + 2));
    return clock;
  }

  private remembered(key: string, make: () => CalendarColumns): number {
    let id = this.ids.get(key);
    if (id === undefined) {
      const made = make();
      id = this.columns.findIndex((known) => sameColumns(known, made));
      if (id < 0) id = this.columns.push(made) - 1;
      this.ids.set(key, id);
    }
    return id;
  }
}
