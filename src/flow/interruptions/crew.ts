import type { Sampler } from '../../random/sampler.js';
import type { Resource } from '../claims/resource.js';
import type { Calendar } from '../floor/calendar.js';
import type { Place } from '../floor/place.js';
import { type CrewShiftColumns, OWN_SHIFT } from '../model/crews.js';
import type { Model } from '../model/model.js';

/** The shifts of a crew in one replication: which one is on or comes next, and who is there. */
export class CrewShifts {
  /** The present shift or, off shift, the next one; the last one after the end. */
  current = 0;
  /** Its end is in the event queue. */
  isTimed = false;
  /** Work that waits for its own shift, by position of that shift. */
  waiting: { readonly place: Place; readonly position: number }[] = [];
  /** Work that outlasts its shift waits for the next one in its position. */
  readonly waits: boolean;
  /** Most people of a shift, by its position. */
  readonly most: readonly number[];
  private presences: readonly Presence[] | null = null;
  private readonly present: Int32Array;
  private drawn = 0;
  private over = 0;

  constructor(
    readonly id: number,
    readonly crew: Resource,
    readonly columns: CrewShiftColumns,
    private readonly calendar: Calendar,
    private readonly sampler: Sampler,
  ) {
    this.present = columns.people.slice();
    this.waits = columns.handOver === OWN_SHIFT;
    this.most = mostByPosition(columns);
  }

  /** How many may be there in some shift, each number once. */
  get possible(): readonly Presence[] {
    return (this.presences ??= possibleIn(this.columns, this.most));
  }

  get position(): number {
    return this.columns.position[this.current];
  }

  /** When shift k is over; -Infinity if it is overtime that is not worked. */
  endOf(k: number): number {
    const { firstWindow } = this.columns,
      { start, end } = this.calendar;
    for (let w = firstWindow[k + 1] - 1; w >= firstWindow[k]; w--) if (end[w] > start[w]) return end[w];
    return -Infinity;
  }

  /** The first shift that ends after `now`; the last one if there is none. */
  at(now: number): number {
    const { firstWindow, people } = this.columns,
      { start } = this.calendar;
    // Once the next has begun, a shift is over for good; until then overtime that was left out may still be
    // called.
    while (this.over + 1 < people.length && start[firstWindow[this.over + 1]] <= now) this.over++;
    let k = this.over;
    while (k < people.length - 1 && this.endOf(k) <= now) k++;
    return k;
  }

  /**
   * People there in shift k. Each shift has as many draws as people, in order of time, whether it is worked
   * or not.
   */
  presentIn(k: number): number {
    const { absence, absences, absenceDraw, people } = this.columns;
    if (absenceDraw < 0) return people[k];
    for (; this.drawn <= k; this.drawn++) {
      const missing = absences?.[this.drawn] ?? absence;
      let there = 0;
      for (let person = 0; person < people[this.drawn]; person++)
        if (this.sampler.next(absenceDraw) >= missing) there++;
      this.present[this.drawn] = there;
    }
    return this.present[k];
  }
}

function mostByPosition({ position, people }: CrewShiftColumns): number[] {
  const most = new Array<number>(Math.max(-1, ...position) + 1).fill(0);
  position.forEach((p, k) => {
    most[p] = Math.max(most[p], people[k]);
  });
  return most;
}

/** So many people of a shift; where no work waits for its own shift the position is 0. */
interface Presence {
  readonly people: number;
  readonly position: number;
}

/** Where people may be absent, any fewer. */
function possibleIn(
  { people, absenceDraw, handOver, position }: CrewShiftColumns,
  most: readonly number[],
): Presence[] {
  const all =
    absenceDraw < 0
      ? Array.from(people, (count, k) => ({ people: count, position: position[k] }))
      : most.flatMap((count, p) =>
          Array.from({ length: count + 1 }, (_, there) => ({ people: there, position: p })),
        );
  const found = new Map<string, Presence>();
  for (const { people: count, position: p } of all) {
    const presence = { people: count, position: handOver === OWN_SHIFT ? p : 0 };
    found.set(JSON.stringify(presence), presence);
  }
  return [...found.values()];
}

/** Of each crew whose number changes by shift. */
export function buildCrewShifts(
  { resources }: Model,
  crews: readonly Resource[],
  calendars: readonly Calendar[],
  sampler: Sampler,
): CrewShifts[] {
  const found: CrewShifts[] = [];
  resources.shifts.forEach((columns, r) => {
    if (columns === null) return;
    found.push(new CrewShifts(found.length, crews[r], columns, calendars[resources.calendar[r]], sampler));
  });
  return found;
}
