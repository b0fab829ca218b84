import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { ZoneClock } from '../../scenario/calendar/zone.js';
import { dayOf } from './civil.js';

/** Days between which logs are read: changes of the clock are asked for once. */
const FROM = dayOf(1990, 1, 1),
  TO = dayOf(2080, 1, 1);

/** A day is so long that a change of the clock on it is seen from its neighbours. */
const AROUND = 2 * MINUTES_PER_DAY;

/** What a time of a wall clock may mean. */
export type Meaning = 'one' | 'skipped' | 'twice';

/** Wall clock of one zone: from what it shows to minutes of UTC. */
export class WallClock {
  private readonly clock: ZoneClock;
  /** By day of the wall clock: local minus UTC where it is the same all around; NaN where it changes. */
  private readonly offsets = new Map<number, number>();

  constructor(readonly zone: string) {
    this.clock = new ZoneClock(zone, FROM, TO);
  }

  /** Local minus UTC, minutes. */
  offsetAt(instant: number): number {
    return this.clock.local(instant) - instant;
  }

  meaning(local: number): Meaning {
    const first = this.offset(local);
    if (!Number.isNaN(first)) return 'one';
    const instant = this.clock.instant(local);
    // Rounded, as an instant with parts of a second and its local minute may differ by a bit.
    if (Math.abs(this.clock.local(instant) - local) > 1e-6) return 'skipped';
    return Math.abs(this.second(local) - instant) > 1e-6 ? 'twice' : 'one';
  }

  /** The instant, the first of two; of a skipped time as much behind the gap. */
  instant(local: number): number {
    const offset = this.offset(local);
    return Number.isNaN(offset) ? this.clock.instant(local) : local - offset;
  }

  /** The second of the instants at which it shows this; the first where there is one alone. */
  second(local: number): number {
    const first = this.clock.instant(local),
      later = local - this.offsetAt(first + AROUND);
    return later > first && Math.abs(this.clock.local(later) - local) < 1e-6 ? later : first;
  }

  private offset(local: number): number {
    const day = Math.floor(local / MINUTES_PER_DAY);
    let offset = this.offsets.get(day);
    if (offset === undefined) {
      const start = day * MINUTES_PER_DAY,
        before = this.offsetAt(start - AROUND);
      offset = before === this.offsetAt(start + AROUND) ? before : NaN;
      this.offsets.set(day, offset);
    }
    return offset;
  }
}
