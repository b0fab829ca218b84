import type { Calendar } from '../floor/calendar.js';
import type { Memory } from '../floor/memory.js';
import type { Place } from '../floor/place.js';
import type { Model } from '../model/model.js';

/** More visits to a station than this are not kept. */
export const MOST_VISITS = 2000;

/**
 * A unit's visit to a place of a station with changeovers. Times in minutes, NaN where it did not come to it.
 */
export interface PlaceVisit {
  /** Of the run: places of all stations are numbered through. */
  readonly place: number;
  readonly value: number;
  readonly from: number;
  to: number;
  /** The value that the place was changed over from, -1 without changeover; and when. */
  changedFrom: number;
  changeFrom: number;
  changeTo: number;
  /** What of it was worked so far: without breaks, the time off shift, and what broke it off. */
  readonly pieces: [from: number, to: number][];
}

/**
 * Who stood when at the stations with changeovers: the first visits observed, for the picture of one
 * replication.
 */
export class ChangeoverLog {
  /** By station, empty for those without changeovers. */
  readonly byStation: PlaceVisit[][];
  /** By place: the visit that has not ended, if it is kept. */
  private readonly open: (PlaceVisit | null)[] = [];
  /** By place: since when its changeover goes on. */
  private readonly since: number[] = [];

  constructor({ stations }: Model) {
    this.byStation = Array.from(stations.names, () => []);
  }

  begin(place: Place, value: number, now: number): void {
    const kept = this.byStation[place.station.id];
    if (kept.length === MOST_VISITS) return;
    kept.push(
      (this.open[place.id] = {
        place: place.id,
        value,
        from: now,
        to: NaN,
        changedFrom: -1,
        changeFrom: NaN,
        changeTo: NaN,
        pieces: [],
      }),
    );
  }

  change(place: Place, from: number, now: number): void {
    const visit = this.open[place.id];
    if (!visit) return;
    visit.changedFrom = from;
    visit.changeFrom = now;
  }

  /** The changeover begins, or goes on after it was broken off. */
  goesOn(place: Place, now: number): void {
    this.since[place.id] = now;
  }

  /** It is broken off, or done; `calendar` is that of its work. */
  stops(place: Place, { now, calendars }: Memory, calendar: number): void {
    const visit = this.open[place.id],
      since = this.since[place.id];
    if (!visit || Number.isNaN(visit.changeFrom)) return;
    for (const [from, to] of calendar < 0
      ? [[since, now] as const]
      : workedIn(calendars[calendar], since, now)) {
      const last = visit.pieces.at(-1);
      if (last?.[1] === from) last[1] = to;
      else visit.pieces.push([from, to]);
    }
  }

  changed(place: Place, memory: Memory, calendar: number): void {
    const visit = this.open[place.id];
    this.stops(place, memory, calendar);
    if (visit) visit.changeTo = memory.now;
  }

  end(place: Place, now: number): void {
    const visit = this.open[place.id];
    if (visit) visit.to = now;
    this.open[place.id] = null;
  }

  /** What was before is warm-up; who stands at a place now is not kept. */
  startAfresh(): void {
    for (const kept of this.byStation) kept.length = 0;
    this.open.length = 0;
  }
}

/** What of [from, to] is worked, in order; nothing of no length. */
function* workedIn({ start, end }: Calendar, from: number, to: number): Iterable<[from: number, to: number]> {
  for (let i = 0; i < start.length && start[i] < to; i++)
    if (end[i] > Math.max(from, start[i])) yield [Math.max(from, start[i]), Math.min(to, end[i])];
}
