import type { CalendarColumns } from '../../flow/model/time.js';
import { at } from '../lookup/columns.js';
import { calendarOf } from '../lookup/placed.js';
import type { RunSpan } from '../programme/span.js';
import type { CalendarSpec } from '../types/calendars.js';
import type { Scenario } from '../types/scenario.js';
import { once, remembered } from '../values/raw.js';
import { type WorkingDay, workingDays } from './days.js';
import { calendarColumns, intersection, type RosterWindow, rosterWindows, sameColumns } from './roster.js';
import { ZoneClock } from './zone.js';

/** Calendar id of what is never off shift. */
export const ALWAYS = -1;
/** Bits of a 32-bit integer without its sign. */
const MOST_RULES = 31;

/** Of no calendar: every date. */
const EVERY_DATE = {};

/** By zone and span: a study changes one thing of a scenario at a time, and hardly ever a calendar. */
const daysOf = once<Partial<CalendarSpec>, Map<string, readonly WorkingDay[]>>(() => new Map()),
  rosterOf = once<Partial<CalendarSpec>, Map<string, readonly RosterWindow[]>>(() => new Map());

/**
 * The calendars of a model. Each calendar is expanded once a zone, each intersection made once,
 * and calendars with the same windows share one id.
 */
export class CalendarBook {
  readonly columns: CalendarColumns[] = [];
  /** Overtime rules in the order of their bits: an entry of `overtime` of a calendar as kept in a zone. */
  readonly rules: { readonly calendar: string; readonly zone: string; readonly entry: number }[] = [];
  private readonly clocks = new Map<string, ZoneClock>();
  private readonly ids = new Map<string, number>();

  constructor(
    private readonly scenario: Scenario,
    private readonly span: RunSpan,
  ) {}

  /** Id of a calendar kept in a zone; `ALWAYS` for undefined. */
  id(name: string | undefined, zone: string): number {
    if (name === undefined) return ALWAYS;
    return this.kept(JSON.stringify([name, zone]), () => {
      // Without overtime the working days are the roster, and need not be put in order a second time.
      const windows =
        calendarOf(this.scenario, name)?.overtime.length === 0
          ? this.workingDays(name, zone).flatMap((day) => day.windows)
          : this.roster(name, zone);
      return calendarColumns(windows, this.span.horizon, (entry) => this.ruleBit(name, zone, entry));
    });
  }

  /** Windows of a calendar with its overtime, up to the horizon; one window a date for undefined. */
  roster(name: string | undefined, zone: string): readonly RosterWindow[] {
    const spec = calendarOf(this.scenario, name);
    return remembered(rosterOf(spec ?? EVERY_DATE), this.where(zone), () => {
      const { startDay, endDay, origin, horizon } = this.span;
      return rosterWindows(
        spec,
        this.workingDays(name, zone),
        this.clock(zone),
        startDay - 2,
        endDay + 2,
        origin,
      ).filter(({ start }) => start < horizon);
    });
  }

  private where(zone: string): string {
    const { startDay, endDay, origin, horizon } = this.span;
    return JSON.stringify([zone, startDay, endDay, origin, horizon]);
  }

  private ruleBit(calendar: string, zone: string, entry: number): number {
    let rule = this.rules.findIndex(
      (known) => known.calendar === calendar && known.zone === zone && known.entry === entry,
    );
    if (rule < 0) rule = this.rules.push({ calendar, zone, entry }) - 1;
    if (rule >= MOST_RULES)
      throw new RangeError(
        `calendars: expected at most ${MOST_RULES} rules for overtime, one for each zone in which a ` +
          'calendar is kept, got more; let calendars share them',
      );
    return 1 << rule;
  }

  /** Id of the time that is in all of the calendars; `ALWAYS` asks for nothing. */
  common(ids: readonly number[]): number {
    const [first = ALWAYS, ...others] = [...new Set(ids)].filter((id) => id !== ALWAYS).sort((a, b) => a - b);
    return others.reduce(
      (a, b) => this.kept(`${a}&${b}`, () => intersection(at(this.columns, a), at(this.columns, b))),
      first,
    );
  }

  /** Working days of a calendar kept in a zone, to the end of the span; every date for undefined. */
  workingDays(name: string | undefined, zone: string): readonly WorkingDay[] {
    const spec = calendarOf(this.scenario, name);
    return remembered(daysOf(spec ?? EVERY_DATE), this.where(zone), () => {
      const { startDay, endDay, origin } = this.span;
      // A night shift may have begun on the eve, and zones differ by up to a day.
      return workingDays(spec, this.clock(zone), startDay - 2, endDay + 2, origin);
    });
  }

  clock(zone: string): ZoneClock {
    return remembered(
      this.clocks,
      zone,
      () => new ZoneClock(zone, this.span.startDay - 2, this.span.endDay + 2),
    );
  }

  private kept(key: string, make: () => CalendarColumns): number {
    return remembered(this.ids, key, () => {
      const made = make(),
        id = this.columns.findIndex((known) => sameColumns(known, made));
      return id < 0 ? this.columns.push(made) - 1 : id;
    });
  }
}
