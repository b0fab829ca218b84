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
      }),
    );
  }

  change(place: Place, from: number, now: number): void {
    const visit = this.open[place.id];
    if (!visit) return;
    visit.changedFrom = from;
    visit.changeFrom = now;
  }

  changed(place: Place, now: number): void {
    const visit = this.open[place.id];
    if (visit) visit.changeTo = now;
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
