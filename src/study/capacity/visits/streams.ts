import type { Model } from '../../../flow/model/model.js';
import { HOLD_NONE } from '../../../flow/model/quality.js';

/**
 * Columns of a stream: units with each slot open; in a model with holds then units with each slot carried;
 * with each slot passed on at a limit (these are open too); and the minutes that carried items will take at a
 * hold. All are sums over units, so that streams can be split and joined.
 */
export interface Columns {
  readonly slots: number;
  readonly withNotes: boolean;
  readonly count: number;
}

export function columnsOf({ slots, quality }: Model): Columns {
  const withNotes = quality.hold.some((hold) => hold !== HOLD_NONE);
  return { slots: slots.count, withNotes, count: withNotes ? 3 * slots.count + 1 : slots.count };
}
export const carried = ({ slots }: Columns, slot: number): number => slots + slot;
export const passedOn = ({ slots }: Columns, slot: number): number => 2 * slots + slot;
export const mendMinutes = ({ slots }: Columns): number => 3 * slots;

/** Units at an inspection and, of them, those with each slot open; see `Columns`. */
export interface Stream {
  units: number;
  readonly open: Float64Array;
}

/**
 * Units that an inspection `from` sends back to a step `target`: those of the last sweep, and those of the
 * present one.
 */
export class BackStream implements Stream {
  units = 0;
  readonly open: Float64Array;
  private unitsNow = 0;
  private readonly openNow: Float64Array;

  constructor(
    readonly from: number,
    readonly target: number,
    columnCount: number,
  ) {
    this.open = new Float64Array(columnCount);
    this.openNow = new Float64Array(columnCount);
  }

  send(units: number): void {
    this.unitsNow += units;
  }

  sendOpen(slot: number, units: number): void {
    this.openNow[slot] += units;
  }

  /** The sweep is over: what was sent in it is what comes in the next. Returns the greatest change. */
  settle(): number {
    let change = Math.abs(this.units - this.unitsNow);
    for (let s = 0; s < this.open.length; s++) {
      change = Math.max(change, Math.abs(this.open[s] - this.openNow[s]));
      this.open[s] = this.openNow[s];
    }
    this.units = this.unitsNow;
    this.unitsNow = 0;
    this.openNow.fill(0);
    return change;
  }
}

/** Streams used again from sweep to sweep. */
export class StreamPool {
  private readonly streams: Stream[] = [];
  private taken = 0;
  constructor(private readonly slotCount: number) {}

  startSweep(): void {
    this.taken = 0;
  }

  empty(): Stream {
    const stream =
      this.streams[this.taken] ??
      (this.streams[this.taken] = { units: 0, open: new Float64Array(this.slotCount) });
    this.taken++;
    stream.units = 0;
    stream.open.fill(0);
    return stream;
  }
}

export function into(streams: Map<number, Stream>, mode: number, pool: StreamPool): Stream {
  let stream = streams.get(mode);
  if (stream === undefined) streams.set(mode, (stream = pool.empty()));
  return stream;
}

/** Adds another stream to one. */
export function join(to: Stream, from: Stream): void {
  to.units += from.units;
  for (let s = 0; s < to.open.length; s++) to.open[s] += from.open[s];
}

/** Moves a share of a stream over. */
export function split(from: Stream, share: number, to: Stream): void {
  to.units += from.units * share;
  from.units *= 1 - share;
  for (let s = 0; s < to.open.length; s++) {
    to.open[s] += from.open[s] * share;
    from.open[s] *= 1 - share;
  }
}
