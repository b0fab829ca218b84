import type { Model } from '../../../flow/model/model.js';
import { HOLD_NONE, HOLD_NOTED } from '../../../flow/model/quality.js';
import type { Build } from '../mix.js';
import { chanceNoted, joinPart, type LeftOf, mendAll, moveNotes } from './carried.js';
import { type Look, lookOf } from './looks.js';
import { type Creation, layPath, type PathStep } from './path.js';
import type { Stay } from './stays.js';
import { type Columns, carried, columnsOf, into, join, type Stream, StreamPool, split } from './streams.js';

/**
 * What one unit of a build does on a route, by expectation. Arrays run over the steps of the route, from its
 * first.
 */
export interface Visits {
  readonly visits: Float64Array;
  /** Visits after which the unit goes on, neither sent back nor scrapped. */
  readonly passed: Float64Array;
  /** Repairs found at each step, by row of `thens`. */
  readonly repairs: readonly ReadonlyMap<number, number>[];
  /** Minutes of work at each step beside: mending at a hold, and what a measurement that differs takes. */
  readonly extra: Float64Array;
  /** What inspections do; undefined at steps that look for nothing. */
  readonly looks: readonly (Look | undefined)[];
  /** Share not scrapped. */
  readonly yield: number;
  /** What is left open and noted on one that comes out, in the columns of a stream. */
  readonly left: Float64Array;
  readonly stays: readonly Stay[];
}

const SETTLED = 1e-9;
const MOST_SWEEPS = 5000;

/**
 * Expected visits from the flow equations of the route: what enters a step is what leaves the one before and
 * what inspections send back to it (Jackson 1957: visits 1 / (1 - p) for one loop of chance p). They are
 * solved by sweeps along the route until what is sent back has settled. Carried along: in which rework a unit
 * is (for steps that rework skips, or that only rework visits) and each slot's chance of being open. The
 * approximations are those of `Inspection`. What feeders leave open comes in where their parts join.
 */
export function expectedVisits(
  model: Model,
  route: number,
  build: Build,
  leftOf: LeftOf = (inner, of) => expectedVisits(model, inner, of).left,
): Visits {
  const columns = columnsOf(model, route, build),
    path = layPath(model, route, build, columns, leftOf);
  const backs = path.flatMap((step) => step.inspection?.backs ?? []);
  const pool = new StreamPool(columns);
  const visits = new Float64Array(path.length),
    passed = new Float64Array(path.length),
    extra = new Float64Array(path.length);
  for (let sweep = 0; ; sweep++) {
    const end = sweepPath(path, columns, pool, visits, passed, extra),
      out = end.units;
    const change = backs.reduce((most, back) => Math.max(most, back.settle()), 0);
    if (change < SETTLED || sweep === MOST_SWEEPS) {
      return {
        visits,
        passed,
        extra,
        repairs: path.map((step) => step.inspection?.repairs ?? new Map<number, number>()),
        looks: path.map(({ inspection }) => inspection && lookOf(inspection)),
        yield: Math.min(1, out),
        stays: columns.stays,
        left: end.open.map((units) => (out > 0 ? units / out : 0)),
      };
    }
  }
}

const FORWARD = -1;

/**
 * Takes one unit along the path, with what was sent back in the last sweep. Returns what comes out at the
 * end.
 */
function sweepPath(
  path: readonly PathStep[],
  columns: Columns,
  pool: StreamPool,
  visits: Float64Array,
  passed: Float64Array,
  extra: Float64Array,
): Stream {
  const foundAt = new Float64Array(path.length);
  /** Streams by the inspection to which a rework leads. */
  const streams = new Map<number, Stream>();
  /** Those of them at a step. */
  const present = new Map<number, Stream>();
  pool.startSweep();
  for (const stay of columns.stays) stay.startSweep();
  into(streams, FORWARD, pool).units = 1;
  for (let i = 0; i < path.length; i++) {
    const {
      step,
      forward,
      inRework,
      created,
      joining,
      hold,
      mend,
      compareWith,
      differs,
      inspection,
      targetOf,
      isPlain,
      mayClaim,
    } = path[i];
    if (isPlain) {
      let units = 0;
      for (const going of streams.values()) {
        units += going.units;
        for (const part of joining) joinPart(going, columns, part);
        create(going, columns, created);
        for (const stay of columns.stays) stay.meet(going, step, mayClaim);
      }
      visits[i] = passed[i] = units;
      continue;
    }
    present.clear();
    for (const [mode, going] of streams) {
      const share = mode === FORWARD ? forward : inRework;
      if (mode === step || share === 0) continue;
      if (share === 1) {
        present.set(mode, going);
        streams.delete(mode);
      } else split(going, share, into(present, mode, pool), columns);
    }
    const firstTime = present.get(FORWARD)?.units ?? 0;
    if (hold === HOLD_NOTED) {
      for (const [mode, at] of present) {
        const beside = into(streams, mode, pool);
        if (at.units > 0) passOver(at, 1 - chanceNoted(at, columns), beside, columns, pool);
      }
    }
    // The inspection that sent a unit back sees it again, and a unit sent back stands at its target, whatever
    // the conditions.
    const due = streams.get(step);
    if (due !== undefined) {
      join(into(present, FORWARD, pool), due, columns);
      streams.delete(step);
    }
    for (const back of targetOf)
      join(into(present, back.from === step ? FORWARD : back.from, pool), back, columns);

    visits[i] = passed[i] = extra[i] = 0;
    inspection?.startSweep();
    for (const [mode, at] of present) {
      visits[i] += at.units;
      for (const stay of columns.stays) stay.meet(at, step, mayClaim);
      if (hold !== HOLD_NONE) extra[i] += mendAll(at, columns, mend);
      for (const part of joining) joinPart(at, columns, part);
      create(at, columns, created);
      inspection?.pass(at);
      if (mode === FORWARD) foundAt[i] = inspection?.chanceOfFind ?? 0;
      passed[i] += at.units;
      const beside = streams.get(mode);
      if (beside === undefined) streams.set(mode, at);
      else join(beside, at, columns);
    }
    // The two outcomes are taken as independent of each other.
    if (compareWith >= 0)
      extra[i] +=
        firstTime *
        path[compareWith].forward *
        differs *
        (foundAt[i] * (1 - foundAt[compareWith]) + foundAt[compareWith] * (1 - foundAt[i]));
  }
  const end = pool.empty();
  for (const going of streams.values()) join(end, going, columns);
  return end;
}

/** A share of a stream has nothing noted and goes beside the hold. */
function passOver(at: Stream, share: number, beside: Stream, columns: Columns, pool: StreamPool): void {
  const over = pool.empty();
  split(at, share, over, columns);
  moveNotes(over, at, columns);
  join(beside, over, columns);
}

function create({ units, open }: Stream, columns: Columns, created: readonly Creation[]): void {
  for (const { slot, chance } of created)
    open[slot] += (units - open[slot] - (columns.withNotes ? open[carried(columns, slot)] : 0)) * chance;
}
