import { MINUTES_PER_DAY } from '../../../flow/model/time.js';

/** Unit minutes at each place, by day of 24 hours from the start of a period. */
export class StandingByDay {
  readonly days: number;
  /** By day, then by place. */
  private readonly area: Float64Array;

  /** Minutes since 1970-01-01T00:00Z, from <= to. */
  constructor(
    private readonly from: number,
    private readonly to: number,
    private readonly places: number,
  ) {
    this.days = Math.max(1, Math.ceil((to - from) / MINUTES_PER_DAY));
    this.area = new Float64Array(this.days * places);
  }

  /** So many units stood at each place between two times of the period. */
  book(from: number, to: number, units: Int32Array): void {
    for (let at = from; at < to; ) {
      const day = Math.floor((at - this.from) / MINUTES_PER_DAY),
        end = Math.min(to, this.from + (day + 1) * MINUTES_PER_DAY);
      for (let place = 0; place < this.places; place++) {
        const cell = day * this.places + place;
        this.area[cell] = (this.area[cell] ?? 0) + (units[place] ?? 0) * (end - at);
      }
      at = end;
    }
  }

  /** Mean units at a place on a day; the last day may be shorter than 24 hours. */
  mean(place: number, day: number): number {
    const from = this.from + day * MINUTES_PER_DAY,
      minutes = Math.min(this.to, from + MINUTES_PER_DAY) - from;
    return minutes > 0 ? (this.area[day * this.places + place] ?? 0) / minutes : 0;
  }
}
