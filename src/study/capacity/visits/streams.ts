import type { Model } from '../../../flow/model/model.js';
import { HOLD_NONE } from '../../../flow/model/quality.js';
import { once } from '../../../scenario/values/raw.js';
import { rowsOf } from '../../lists.js';
import type { Build } from '../mix.js';
import { spotsOf } from '../spots.js';
import type { FindOdds } from './finds.js';
import { type Stay, staysOn } from './stays.js';

/**
 * Columns of a stream: units with each slot open; in a model with holds then units with each slot carried;
 * with each slot passed on at a limit (these are open too); and the minutes that carried items will take at a
 * hold; last, for carriers and teams, units that are without. All are sums over units, so that streams can be
 * split and joined.
 */
export interface Columns {
  readonly slots: number;
  readonly withNotes: boolean;
  readonly count: number;
  /** Slots that anything on the route may have open or noted, and all columns that are ever other than 0. */
  readonly liveSlots: readonly number[];
  readonly live: readonly number[];
  /** Of these, what tells of notes. */
  readonly noted: readonly number[];
  readonly stays: readonly Stay[];
  /** For an inspection to note what it looks for; empty but while it passes a stream. */
  readonly rowOf: (FindOdds | undefined)[];
}

export function columnsOf(model: Model, route: number, build: Build): Columns {
  const slots = model.slots.count,
    withNotes = hasHolds(model),
    liveSlots = slotsOn(model, route),
    noted = withNotes
      ? [...[1, 2].flatMap((band) => liveSlots.map((slot) => band * slots + slot)), 3 * slots]
      : [],
    stays = staysOn(model, route, build, withNotes ? 3 * slots + 1 : slots),
    live = [...liveSlots, ...noted, ...stays.map(({ column }) => column)];
  const count = (withNotes ? 3 * slots + 1 : slots) + stays.length;
  return { slots, withNotes, count, liveSlots, live, noted, stays, rowOf: new Array<undefined>(count) };
}
const hasHolds = once(({ quality }: Model): boolean => quality.hold.some((hold) => hold !== HOLD_NONE));

/** What is made on a route, comes with what joins it, or is left of its tests. */
function slotsOn(model: Model, route: number): number[] {
  const { steps, routes, quality } = model,
    { routeOf } = spotsOf(model),
    from = routes.firstStep[route],
    to = routes.firstStep[route + 1];
  const joining = new Set([
    ...rowsOf(steps.needStart, from, to).map((row) => routeOf[steps.needResource[row]]),
    ...rowsOf(steps.ownStart, from, to).map((row) => steps.ownRoute[row]),
  ]);
  const slots = new Set(rowsOf(steps.createStart, from, to).map((row) => steps.createSlot[row]));
  for (const inner of joining)
    if (inner >= 0)
      for (const row of rowsOf(quality.carriedStart, inner)) slots.add(quality.carriedSlot[row]);
  if (hasHolds(model))
    for (const row of rowsOf(steps.findStart, from, to))
      if (quality.findNote[row] >= 0) slots.add(quality.findNote[row]);
  return [...slots].toSorted((a, b) => a - b);
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
  private readonly left: readonly Stay[];
  private unitsNow = 0;
  private readonly openNow: Float64Array;

  constructor(
    readonly from: number,
    readonly target: number,
    private readonly columns: Columns,
    /** The way leads to another site: teams stay behind. */
    leavesSite: boolean,
  ) {
    this.left = leavesSite ? columns.stays.filter((stay) => stay.isLeftAt(from)) : [];
    this.open = new Float64Array(columns.count);
    this.openNow = new Float64Array(columns.count);
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
    for (const { column } of this.left) this.openNow[column] = this.unitsNow;
    for (const s of this.columns.live) {
      change = Math.max(change, Math.abs(this.open[s] - this.openNow[s]));
      this.open[s] = this.openNow[s];
      this.openNow[s] = 0;
    }
    this.units = this.unitsNow;
    this.unitsNow = 0;
    return change;
  }
}

/** Streams used again from sweep to sweep. */
export class StreamPool {
  private readonly streams: Stream[] = [];
  private taken = 0;
  constructor(private readonly columns: Columns) {}

  startSweep(): void {
    this.taken = 0;
  }

  empty(): Stream {
    const stream =
      this.streams[this.taken] ??
      (this.streams[this.taken] = { units: 0, open: new Float64Array(this.columns.count) });
    this.taken++;
    stream.units = 0;
    for (const s of this.columns.live) stream.open[s] = 0;
    return stream;
  }
}

export function into(streams: Map<number, Stream>, mode: number, pool: StreamPool): Stream {
  let stream = streams.get(mode);
  if (stream === undefined) streams.set(mode, (stream = pool.empty()));
  return stream;
}

/** Adds another stream to one. */
export function join(to: Stream, from: Stream, { live }: Columns): void {
  to.units += from.units;
  for (const s of live) to.open[s] += from.open[s];
}

/** Moves a share of a stream over. */
export function split(from: Stream, share: number, to: Stream, { live }: Columns): void {
  to.units += from.units * share;
  from.units *= 1 - share;
  for (const s of live) {
    to.open[s] += from.open[s] * share;
    from.open[s] *= 1 - share;
  }
}
