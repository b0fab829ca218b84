import { calendarAt } from '../../../flow/floor/calendar.js';
import { CREW } from '../../../flow/model/resources.js';
import { MINUTES_PER_DAY } from '../../../flow/model/time.js';
import type { FloorEvent } from '../../../records/log/event.js';
import type { Frame } from './frame.js';

/** Minutes with so many people at work at once, `[shift][people]`: of the period and of its second half. */
export interface CrewSeen {
  readonly whole: readonly number[][];
  readonly later: readonly number[][];
}

/** Days from which on a period has halves, and days of the first of them. */
const LEAST_DAYS = 14;
export function firstHalf({ from, to }: Pick<Frame, 'from' | 'to'>): number | null {
  const days = Math.round((to - from) / MINUTES_PER_DAY);
  return days < LEAST_DAYS ? null : Math.floor(days / 2);
}

/** People at work of each crew and shift, from the needs of the steps in work, in the crew's hours. */
export class People {
  readonly crews: readonly CrewSeen[];
  private readonly level: Int32Array;
  private readonly last: Float64Array;
  /** First window of the crew's calendar that ends after `last`. */
  private readonly window: Int32Array;
  /** By step: crews that it needs. */
  private readonly needs: readonly (readonly (readonly [crew: number, amount: number])[])[];
  private readonly going = new Set<string>();
  /** Start of the second half. */
  private readonly half: number;

  constructor(private readonly frame: Frame) {
    const { resources, steps } = frame.model,
      { crews } = resources;
    this.level = new Int32Array(crews);
    this.last = new Float64Array(crews).fill(frame.from - frame.origin);
    this.window = new Int32Array(crews);
    this.half = frame.from - frame.origin + MINUTES_PER_DAY * (firstHalf(frame) ?? Infinity);
    const none = (crew: number): number[][] => Array.from({ length: shiftsOf(frame, crew) }, () => []);
    this.crews = Array.from({ length: crews }, (_, crew) => ({ whole: none(crew), later: none(crew) }));
    this.needs = steps.names.map((_, step) => {
      const found = teamsAt(frame.model, step);
      for (let n = steps.needStart[step] ?? 0; n < (steps.needStart[step + 1] ?? 0); n++) {
        const resource = steps.needResource[n] ?? -1;
        if (resources.kind[resource] === CREW) found.push([resource, steps.needAmount[n] ?? 0]);
      }
      return found;
    });
  }

  take(event: FloorEvent, step: number | undefined): void {
    if (step === undefined || (event.kind !== 'start' && event.kind !== 'end')) return;
    const needs = this.needs[step] ?? [],
      visit = `${event.type}:${event.object}\n${event.step}`,
      isStart = event.kind === 'start';
    // An end without a start, or a second start, says nothing.
    if (needs.length === 0 || this.going.has(visit) === isStart) return;
    if (isStart) this.going.add(visit);
    else this.going.delete(visit);
    for (const [crew, amount] of needs) {
      this.goOn(crew, event.at);
      this.level[crew] = (this.level[crew] ?? 0) + (isStart ? amount : -amount);
    }
  }

  /** Steps that the crew does. */
  stepsOf(crew: number): number[] {
    return this.needs.flatMap((all, step) => (all.some(([own]) => own === crew) ? [step] : []));
  }

  end(): void {
    this.level.forEach((_, crew) => {
      this.goOn(crew, this.frame.to);
    });
  }

  private goOn(crew: number, at: number): void {
    const { frame, last, half } = this,
      from = last[crew] ?? 0,
      to = Math.min(at, frame.to) - frame.origin;
    if (!(to > from)) return;
    if (from < half && half < to) this.goOn(crew, half + frame.origin);
    this.bookUpTo(crew, to);
  }

  private bookUpTo(crew: number, to: number): void {
    const { frame, last } = this,
      from = last[crew] ?? 0;
    last[crew] = to;
    const calendar = calendarAt(frame.calendars, frame.model.resources.calendar[crew] ?? -1);
    if (calendar === null) {
      this.book(crew, 0, to - from, from);
      return;
    }
    const rules = frame.model.calendars[frame.model.resources.calendar[crew] ?? -1]?.rules;
    let w = this.window[crew] ?? 0;
    while (w < calendar.end.length && (calendar.end[w] ?? 0) <= from) w++;
    this.window[crew] = w;
    for (; w < calendar.start.length && (calendar.start[w] ?? 0) < to; w++) {
      const start = calendar.start[w] ?? 0,
        end = calendar.end[w] ?? 0,
        minutes = Math.min(to, end) - Math.max(from, start);
      // Overtime that a rule decides on, and in which nothing began or ended, was not worked.
      const isIdle = rules?.[w] !== undefined && rules[w] !== 0 && from <= start && end <= to;
      if (minutes > 0 && !isIdle) this.book(crew, this.shiftOf(crew, w), minutes, from);
    }
  }

  private book(crew: number, shift: number, minutes: number, from: number): void {
    const seen = this.crews[crew],
      people = this.level[crew] ?? 0;
    for (const booked of [seen?.whole[shift], from >= this.half ? seen?.later[shift] : undefined])
      if (booked !== undefined) booked[people] = (booked[people] ?? 0) + minutes;
  }

  /** Which shift of the day a window of the crew's calendar belongs to. */
  private shiftOf(crew: number, window: number): number {
    const shifts = this.frame.model.resources.shifts[crew];
    if (shifts === undefined || shifts === null) return 0;
    const { firstWindow, position } = shifts;
    let low = 0,
      high = position.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >>> 1;
      if ((firstWindow[middle] ?? 0) <= window) low = middle;
      else high = middle - 1;
    }
    return position[low] ?? 0;
  }
}

/** Teams that do a step: they stay with the unit and are no need of it. */
function teamsAt({ companions, resources }: Frame['model'], step: number): [crew: number, people: number][] {
  return companions.names.flatMap((_, c): [number, number][] => {
    const crew = companions.resource[c] ?? -1,
      isThere = (companions.from[c] ?? 0) <= step && step <= (companions.to[c] ?? -1);
    return isThere && resources.kind[crew] === CREW ? [[crew, companions.amount[c] ?? 0]] : [];
  });
}

/** Shifts of a crew that differ in people; 1 where it is always the same number. */
export function shiftsOf({ model }: Pick<Frame, 'model'>, crew: number): number {
  const shifts = model.resources.shifts[crew];
  return shifts === undefined || shifts === null
    ? 1
    : shifts.position.reduce((most, each) => Math.max(most, each), 0) + 1;
}

/** Less is the rounding of a log. */
const A_MOMENT = 0.5;

/** The most people at work at once for longer than a moment. */
export const mostAtOnce = (minutes: readonly number[]): number =>
  minutes.reduce((most, each, people) => (each > A_MOMENT ? Math.max(most, people) : most), 0);

/** Share of the time with people in it in which more than so many were at work. */
export function shareAbove(minutes: readonly number[], people: number): number {
  let above = 0,
    all = 0;
  minutes.forEach((each, level) => {
    all += each;
    if (level > people) above += each;
  });
  return all > 0 ? above / all : 0;
}
