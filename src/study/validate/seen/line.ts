import { MINUTES_PER_DAY } from '../../../flow/model/time.js';
import { type FloorEvent } from '../../../records/log/event.js';
import { Moments } from '../../statistics/moments.js';
import { type Frame, placeNames, placeOfStep } from './frame.js';
import { StandingByDay } from './standing-by-day.js';

/** Days. */
export const WEEK = 7;

interface Known {
  place: number;
  readonly enteredAt: number;
}

/** What the whole line does: units shipped by day, units at each site and on each lane, lead time. */
export class Line {
  /** Shipped on each day of 24 hours from the start of the period. */
  readonly shippedOn: Int32Array;
  shipped = 0;
  scrapped = 0;
  /** Minutes of the clock from entry to shipping, of units that came and went in the period. */
  readonly lead = new Moments();
  readonly standing: StandingByDay;
  /** Unit minutes by site, then lane. */
  private readonly area: Float64Array;
  private readonly count: Int32Array;
  private readonly units = new Map<string, Known>();
  private last: number;

  constructor(private readonly frame: Frame) {
    const { from, to, model } = frame,
      places = placeNames(model).length;
    this.shippedOn = new Int32Array(Math.max(1, Math.round((to - from) / MINUTES_PER_DAY)));
    this.area = new Float64Array(places);
    this.standing = new StandingByDay(from, to, places);
    this.count = new Int32Array(places);
    this.last = from;
  }

  take({ kind, object, at }: FloorEvent, step: number | undefined): void {
    const { frame } = this,
      isInPeriod = at >= frame.from;
    if (isInPeriod) this.goOn(at);
    let unit = this.units.get(object);
    if (kind === 'ship' || kind === 'scrap') {
      if (unit !== undefined) this.count[unit.place] = (this.count[unit.place] ?? 0) - 1;
      this.units.delete(object);
      if (!isInPeriod) return;
      if (kind === 'scrap') this.scrapped++;
      else {
        this.shipped++;
        // A day that turns the clock back is an hour longer.
        const day = Math.min(Math.floor((at - frame.from) / MINUTES_PER_DAY), this.shippedOn.length - 1);
        this.shippedOn[day] = (this.shippedOn[day] ?? 0) + 1;
        if (unit !== undefined && unit.enteredAt >= frame.from && !frame.old.has(object))
          this.lead.add(at - unit.enteredAt);
      }
      return;
    }
    const isMove = kind === 'arrive' || kind === 'start' || kind === 'load';
    if (unit === undefined) {
      unit = { place: placeOfStep(frame.model, step ?? 0), enteredAt: at };
      this.units.set(object, unit);
      this.count[unit.place] = (this.count[unit.place] ?? 0) + 1;
    } else if (isMove && step !== undefined) {
      this.count[unit.place] = (this.count[unit.place] ?? 0) - 1;
      unit.place = placeOfStep(frame.model, step);
      this.count[unit.place] = (this.count[unit.place] ?? 0) + 1;
    }
  }

  /** Mean units at each site and on each lane over the period. */
  wip(): Float64Array {
    const { frame, area } = this;
    this.goOn(frame.to);
    return area.map((minutes) => minutes / (frame.to - frame.from));
  }

  /** Units shipped in each whole week from the start of the period. */
  weeks(): number[] {
    return Array.from({ length: Math.floor(this.shippedOn.length / WEEK) }, (_, week) =>
      this.shippedOn.slice(week * WEEK, (week + 1) * WEEK).reduce((sum, units) => sum + units, 0),
    );
  }

  private goOn(at: number): void {
    const passed = Math.min(at, this.frame.to) - this.last;
    if (!(passed > 0)) return;
    this.standing.book(this.last, this.last + passed, this.count);
    this.count.forEach((units, place) => {
      this.area[place] = (this.area[place] ?? 0) + units * passed;
    });
    this.last += passed;
  }
}
