/**
 * The event queue: a binary heap on flat arrays, ordered by time, then priority, then sequence of scheduling,
 * so that events at one time come out in one order on every machine.
 *
 * Each source of events (a place, a truck, a timer ..) has at most one event in the queue, so that an event
 * is a time and the number of its source; its priority is the source's kind, a smaller one first. A `pop`
 * leaves a hole at the root, which the next `push` fills without a search, since most events schedule one
 * other.
 */

/** Room for 2^46 events of each kind; the sum stays an exact float. */
const PRIORITY_STEP = 2 ** 46;

export class EventQueue {
  /** The first entry is the time of the next event after `ready`. */
  readonly times: Float64Array;
  private readonly sources: Int32Array;
  /** By source: priority and sequence of its event. */
  private readonly orders: Float64Array;
  private readonly kinds: Uint8Array;
  /** By kind: its first source. */
  private readonly bases: readonly number[];
  private count = 0;
  private hole = false;
  /** The root may be later than its children. */
  private loose = false;
  private sequence = Number.NaN;

  /** @param sizes how many sources there are of each kind */
  constructor(sizes: readonly number[]) {
    const all = sizes.reduce((a, b) => a + b, 0);
    this.times = new Float64Array(all + 2);
    this.sources = new Int32Array(all + 2);
    this.orders = new Float64Array(all);
    this.kinds = Uint8Array.from(sizes.flatMap((size, kind) => Array<number>(size).fill(kind)));
    this.bases = sizes.map((_, kind) => sizes.slice(0, kind).reduce((a, b) => a + b, 0));
    this.sequence = 0;
  }

  get size(): number {
    return this.hole ? this.count - 1 : this.count;
  }

  /** Events scheduled since the start. */
  get scheduled(): number {
    return this.sequence;
  }

  /** Brings the next event to the root; false when there is none. */
  ready(): boolean {
    if (this.hole) this.closeHole();
    if (this.loose) this.sink();
    return this.count > 0;
  }

  /** Source of the next event, which is taken out. Call only after `ready` was true. */
  pop(): number {
    this.hole = true;
    return this.sources[0];
  }

  kindOf(source: number): number {
    return this.kinds[source];
  }

  /** Number of a source among those of its kind. */
  idOf(source: number): number {
    return source - this.bases[this.kinds[source]];
  }

  /** Schedules the event of source `id` of a kind; that source must have none in the queue. */
  push(time: number, kind: number, id: number): void {
    const source = this.bases[kind] + id;
    this.orders[source] = kind * PRIORITY_STEP + this.sequence++;
    let at = 0;
    if (this.hole) {
      this.hole = false;
      this.loose = true;
    } else {
      if (this.loose) this.sink();
      at = this.count++;
    }
    this.times[at] = time;
    this.sources[at] = source;
    if (at > 0) this.rise(at);
  }

  /**
   * Takes the event of a source out before it happens; its time. For interruptions, which are rare: O(number
   * of sources).
   * @throws Error if the source has none in the queue
   */
  remove(kind: number, id: number): number {
    // Not by `ready`, behind which somebody may watch the ends of events: this is in the midst of one.
    if (this.hole) this.closeHole();
    if (this.loose) this.sink();
    const { times, sources, count } = this,
      wanted = this.bases[kind] + id;
    let at = 0;
    while (at < count && sources[at] !== wanted) at++;
    if (at === count)
      throw new Error(`event queue: expected an event of source ${id} of kind ${kind}, got none`);
    const time = times[at],
      last = --this.count;
    if (at === last) return time;
    times[at] = times[last];
    sources[at] = sources[last];
    this.rise(at);
    this.sinkFrom(at);
    return time;
  }

  private closeHole(): void {
    this.hole = false;
    const last = --this.count;
    this.times[0] = this.times[last];
    this.sources[0] = this.sources[last];
    this.loose = last > 0;
  }

  private rise(from: number): void {
    const { times, sources, orders } = this,
      time = times[from],
      source = sources[from];
    let at = from;
    while (at > 0) {
      const parent = (at - 1) >> 1,
        parentTime = times[parent];
      if (parentTime < time || (parentTime === time && orders[sources[parent]] < orders[source])) break;
      times[at] = parentTime;
      sources[at] = sources[parent];
      at = parent;
    }
    times[at] = time;
    sources[at] = source;
  }

  /** As `sink`, from anywhere, for what is rare. */
  private sinkFrom(from: number): void {
    const { times, sources, count } = this;
    for (let at = from, left = 2 * at + 1; left < count; left = 2 * at + 1) {
      const child = left + 1 < count && this.goesFirst(left + 1, left) ? left + 1 : left;
      if (!this.goesFirst(child, at)) return;
      [times[at], times[child]] = [times[child], times[at]];
      [sources[at], sources[child]] = [sources[child], sources[at]];
      at = child;
    }
  }

  private goesFirst(a: number, b: number): boolean {
    const { times, sources, orders } = this;
    return times[a] < times[b] || (times[a] === times[b] && orders[sources[a]] < orders[sources[b]]);
  }

  private sink(): void {
    const { times, sources, orders, count } = this,
      half = count >> 1,
      time = times[0],
      source = sources[0];
    this.loose = false;
    let at = 0;
    while (at < half) {
      const left = (at << 1) + 1,
        right = left + 1,
        leftTime = times[left],
        rightTime = times[right];
      // By arithmetic: a branch on the times would be guessed wrong half the time; the one on equality hardly
      // ever is.
      let child = left + (+(right < count) & +(rightTime < leftTime));
      if (rightTime === leftTime && right < count && orders[sources[right]] < orders[sources[left]])
        child = right;
      const childTime = times[child];
      if (childTime > time || (childTime === time && orders[sources[child]] > orders[source])) break;
      times[at] = childTime;
      sources[at] = sources[child];
      at = child;
    }
    times[at] = time;
    sources[at] = source;
  }
}
