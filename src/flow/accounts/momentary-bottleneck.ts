/**
 * Which resource is the bottleneck at each moment: the one with the longest uninterrupted active period at
 * that time (Roser, Nakano & Tanaka 2002, Shifting bottleneck detection, Winter Simulation Conference; quoted
 * from memory). When its period ends, the longest of the periods active then takes over; while the two
 * overlap the bottleneck shifts, at other times the resource is the sole one.
 *
 * Periods are told as they begin and end. Which of those active at a handover is the longest shows later, so
 * periods are kept until then and no longer: memory does not grow with the run.
 */
export class MomentaryBottleneck {
  /**
   * By resource: minutes of the clock as the sole bottleneck, and minutes in which it takes over or hands
   * over.
   */
  readonly sole: Float64Array;
  readonly shifting: Float64Array;
  /** By resource: its period that goes on; null. */
  private readonly open: (Period | null)[];
  /** Periods that have ended and may still matter. */
  private ended: Period[] = [];
  private present: Period | null = null;
  /** All before is accounted for. */
  private from: number;

  /**
   * @param minutesSince working minutes of a resource's calendar from a time to now; periods are compared by
   * them
   */
  constructor(
    resources: number,
    now: number,
    private readonly minutesSince: (resource: number, begin: number) => number,
  ) {
    this.sole = new Float64Array(resources);
    this.shifting = new Float64Array(resources);
    this.open = new Array<Period | null>(resources).fill(null);
    this.from = now;
  }

  /** A resource becomes active. */
  begin(resource: number, now: number): void {
    this.open[resource] = { resource, begin: now, end: Infinity, minutes: 0 };
  }

  /** Its active period is over. */
  end(resource: number, now: number): void {
    const period = this.open[resource];
    if (period === null) return;
    this.open[resource] = null;
    if (period.begin === now) return;
    period.end = now;
    period.minutes = this.minutesSince(resource, period.begin);
    const { present } = this;
    // While the bottleneck is at work nothing else matters.
    if (present !== null && present.end === Infinity) return;
    this.ended.push(period);
    // A handover is settled by the end of one of the periods of its time; the others are looked at when they
    // are many.
    if (present === null || period === present || period.begin <= present.end || this.ended.length >= MANY)
      this.settle(now);
  }

  /** The run is over: what goes on ends now. */
  finish(now: number): void {
    for (let resource = 0; resource < this.open.length; resource++) this.end(resource, now);
  }

  /** Goes from handover to handover as far as what is known allows. */
  private settle(now: number): void {
    for (;;) {
      if (this.present === null) {
        // A chain begins with the first to be active.
        const start = [...this.ended, ...this.open].reduce(
          (first, period) => (period === null ? first : Math.min(first, period.begin)),
          Infinity,
        );
        if (start === Infinity) return;
        this.from = Math.max(this.from, start);
      } else if (this.present.end === Infinity) {
        this.ended = [];
        return;
      }
      const next = this.longestAt(this.present?.end ?? this.from, now);
      if (next === UNDECIDED) return;
      if (this.present !== null) this.handOver(this.present, next);
      this.present = next;
    }
  }

  private handOver({ resource, end }: Period, next: Period | null): void {
    const overlap = next === null ? end : Math.min(end, Math.max(this.from, next.begin));
    this.sole[resource] += overlap - this.from;
    this.shifting[resource] += end - overlap;
    if (next !== null) this.shifting[next.resource] += end - overlap;
    this.from = end;
    this.ended = this.ended.filter((period) => period.end > end);
  }

  /** The longest of the periods that are active just after a time; null if there is none. */
  private longestAt(time: number, now: number): Period | null | typeof UNDECIDED {
    let longest: Period | null = null,
      going: Period | null = null,
      goings = 0,
      most = 0;
    for (const period of this.ended)
      if (period.begin <= time && period.end > time && period.minutes > (longest?.minutes ?? -1))
        longest = period;
    for (const period of this.open) {
      if (period === null || period.begin > time || time === now) continue;
      goings++;
      going = period;
      most = Math.max(most, this.minutesSince(period.resource, period.begin));
      // However long the others: which of them it will be shows later.
      if (goings > 1 && most > (longest?.minutes ?? -1)) break;
    }
    if (goings === 0)
      return time === now && this.open.some((period) => period !== null) ? UNDECIDED : longest;
    if (most <= (longest?.minutes ?? -1)) return UNDECIDED;
    // One of those that go on it will be, and it will end after all that have ended.
    this.ended = [];
    return goings === 1 ? going : UNDECIDED;
  }
}

interface Period {
  readonly resource: number;
  readonly begin: number;
  end: number;
  minutes: number;
}
const UNDECIDED = Symbol('undecided');
const MANY = 64;
