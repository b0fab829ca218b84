import { Calendar } from '../floor/calendar.js';
import type { Place } from '../floor/place.js';
import { OFF_SHIFT, SHIFT_CHANGE, TASK, TRUCK, WAIT_END, WAIT_SHIFT } from '../floor/states.js';
import type { Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import type { Model } from '../model/model.js';
import type { CalendarColumns, OvertimeColumns } from '../model/time.js';
import { countWhere } from '../model/time.js';
import type { Run } from '../run.js';
import { isAttended, isUnderWay, resume, suspend } from '../tasks/timing.js';
import { calendarOf } from '../traffic/lane.js';
import { reviseShift } from './crews.js';

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
    this.isOut = new Uint8Array(columns.step < 0 && !columns.byDueDates ? 0 : columns.due.length);
  }

  /** Units that are due at a time and not out; `gone`: units shipped or scrapped. */
  behindAt(now: number, gone: number): number {
    const { due, step, byDueDates } = this.columns;
    if (!byDueDates) return countWhere(due, (time) => time <= now) - (step < 0 ? gone : this.out);
    let behind = 0;
    for (let i = 0; i < due.length; i++) if (due[i] <= now && this.isOut[i] === 0) behind++;
    return behind;
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

/**
 * Overtime by rule. A run has calendars of its own in which such hours have no length until a rule, at the
 * start of its week or day, finds enough units behind; then all that is under way in these calendars is timed
 * anew.
 */

export function beginRules(run: Run): void {
  for (const rule of run.overtimeRules) schedule(run, rule);
}

/** A unit is past the end of a step that some rule counts. */
export function countPast(run: Run, unit: Unit, step: Step): void {
  for (const rule of run.overtimeRules) if (rule.columns.step === step.id) rule.count(unit.number);
}

/** A unit is shipped, or scrapped and not built again. */
export function countGone(run: Run, unit: Unit): void {
  for (const rule of run.overtimeRules) if (rule.columns.byDueDates) rule.count(unit.number);
}

/** The event: the rule is looked at. */
export function decide(run: Run, rule: OvertimeRule): void {
  const { behind, periods } = rule.columns,
    from = periods[rule.next],
    to = periods[rule.next + 1];
  run.idleEvents--;
  rule.next++;
  const concerned = run.ruledCalendars.filter((each) => each.concerns(rule.id, from, to));
  if (concerned.length > 0) {
    rule.looked++;
    if (rule.behindAt(run.now, run.gone) >= behind) {
      rule.worked++;
      timeAnew(run, new Set(concerned.map(({ id }) => id)), () => {
        for (const each of concerned) each.open(rule.id, from, to);
      });
    }
  }
  schedule(run, rule);
}

function schedule(run: Run, { id, next, columns: { periods } }: OvertimeRule): void {
  if (next + 1 >= periods.length) return;
  run.idleEvents++;
  run.queue.push(Math.max(periods[next], run.now), SHIFT_CHANGE, run.crewShifts.length + id);
}

/**
 * Makes a change to calendars; what was to end by them ends when what is left of it has passed in the changed
 * ones.
 */
function timeAnew(run: Run, calendars: ReadonlySet<number>, change: () => void): void {
  const {
    queue,
    memory,
    model: { lanes },
  } = run;
  const isTouched = (place: Place): boolean =>
    place.unit !== null && calendars.has(place.unit.step.workCalendar);
  const works = run.places.filter(
    (place) => isTouched(place) && isUnderWay(place) && isAttended(place.phase),
  );
  const waits = run.places.filter(
    (place) =>
      isTouched(place) &&
      place.state === OFF_SHIFT &&
      (place.phase === WAIT_SHIFT || place.phase === WAIT_END),
  );
  const trips = run.shop.trucks
    .map((truck) => ({ truck, calendar: calendarOf(truck, lanes) }))
    .filter(({ calendar }) => calendars.has(calendar));
  for (const place of works) suspend(run, place);
  for (const place of waits) queue.remove(TASK, place.id);
  const left = trips.map(({ truck, calendar }) =>
    memory.calendars[calendar].worked(memory.now, queue.remove(TRUCK, truck.id)),
  );
  change();
  for (const place of works) resume(run, place);
  for (const place of waits) {
    const calendar = memory.calendars[place.unit!.step.workCalendar];
    queue.push(
      place.phase === WAIT_END
        ? calendar.nextAttended(run.now)
        : calendar.startInOneShift(run.now, place.minutes),
      TASK,
      place.id,
    );
  }
  trips.forEach(({ truck, calendar }, i) => {
    queue.push(memory.after(calendar, left[i]), TRUCK, truck.id);
  });
  for (const shifts of run.crewShifts) reviseShift(run, shifts);
}
