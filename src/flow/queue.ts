/**
 * The event queue: a binary heap on flat arrays, ordered by time, then priority, then sequence of scheduling,
 * so that events at one time come out in one order on every machine.
 *
 * An event is a time (minutes) and a code, `id * 16 + kind`; the kind is also the priority (smaller first).
 * A `pop` leaves a hole at the root, which the next `push` fills without a search: most events schedule one other.
 * The root then sinks when the heap is next asked.
 */
const KIND_BITS = 4, KIND_MASK = 15;
/** Room for 2^46 events of each kind; the sum stays an exact float. */
const PRIORITY_STEP = 2 ** 46;

export const kindOf = (code: number): number => code & KIND_MASK;
export const idOf = (code: number): number => code >> KIND_BITS;

export class EventQueue {
  /** The first entry is the time of the next event after `ready`. */
  times: Float64Array;
  private orders: Float64Array;
  private codes: Int32Array;
  private count = 0;
  private hole = false;
  /** The root may be greater than its children. */
  private loose = false;
  private sequence = Number.NaN;

  constructor(capacity = 64) {
    if (!(capacity >= 4)) throw new RangeError(`capacity of an event queue must be at least four; got ${capacity}`);
    this.sequence = 0;
    this.times = new Float64Array(capacity);
    this.orders = new Float64Array(capacity);
    this.codes = new Int32Array(capacity);
  }

  get size(): number {
    return this.hole ? this.count - 1 : this.count;
  }

  /** Brings the next event to the root; false when there is none. */
  ready(): boolean {
    if (this.hole) this.closeHole();
    if (this.loose) this.sink();
    return this.count > 0;
  }

  /** Code of the next event, which is taken out. Call only after `ready` was true. */
  pop(): number {
    this.hole = true;
    return this.codes[0];
  }

  push(time: number, kind: number, id: number): void {
    let at = 0;
    if (this.hole) {
      this.hole = false;
      this.loose = true;
    } else {
      if (this.loose) this.sink();
      if (this.count >= this.times.length - 1) this.grow();
      at = this.count++;
    }
    this.times[at] = time;
    this.orders[at] = kind * PRIORITY_STEP + this.sequence++;
    this.codes[at] = (id << KIND_BITS) | kind;
    if (at > 0) this.rise(at);
  }

  private closeHole(): void {
    this.hole = false;
    const last = --this.count;
    this.times[0] = this.times[last]; this.orders[0] = this.orders[last]; this.codes[0] = this.codes[last];
    this.loose = last > 0;
  }

  private rise(from: number): void {
    const times = this.times, orders = this.orders, codes = this.codes;
    const time = times[from], order = orders[from], code = codes[from];
    let at = from;
    while (at > 0) {
      const parent = (at - 1) >> 1, parentTime = times[parent];
      if (parentTime < time || (parentTime === time && orders[parent] < order)) break;
      times[at] = parentTime; orders[at] = orders[parent]; codes[at] = codes[parent];
      at = parent;
    }
    times[at] = time; orders[at] = order; codes[at] = code;
  }

  private sink(): void {
    const times = this.times, orders = this.orders, codes = this.codes, count = this.count, half = count >> 1;
    const time = times[0], order = orders[0], code = codes[0];
    this.loose = false;
    let at = 0;
    while (at < half) {
      const left = (at << 1) + 1, right = left + 1, leftTime = times[left], rightTime = times[right];
      // By arithmetic: a branch on the times would be guessed wrong half the time; the one on equality hardly ever is.
      let child = left + (+(right < count) & +(rightTime < leftTime));
      if (rightTime === leftTime && right < count && orders[right] < orders[left]) child = right;
      const childTime = times[child];
      if (childTime > time || (childTime === time && orders[child] > order)) break;
      times[at] = childTime; orders[at] = orders[child]; codes[at] = codes[child];
      at = child;
    }
    times[at] = time; orders[at] = order; codes[at] = code;
  }

  private grow(): void {
    const capacity = this.times.length * 2;
    const times = new Float64Array(capacity), orders = new Float64Array(capacity), codes = new Int32Array(capacity);
    times.set(this.times); orders.set(this.orders); codes.set(this.codes);
    this.times = times; this.orders = orders; this.codes = codes;
  }
}
