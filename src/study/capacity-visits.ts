import { REWORK_BOTH, REWORK_ONLY, REWORK_SKIP, type Model } from '../flow/model.js';
import { Inspection, type BackStream, type Stream } from './capacity-inspect.js';
import { chanceToMeet, meanChance, type Build } from './capacity-mix.js';

/** What one unit of a build does on a route, by expectation. Arrays run over the steps of the route, from its first. */
export interface Visits {
  readonly visits: Float64Array;
  /** Visits after which the unit goes on, neither sent back nor scrapped. */
  readonly passed: Float64Array;
  /** Repairs found at each step, by row of `thens`. */
  readonly repairs: readonly ReadonlyMap<number, number>[];
  /** Share not scrapped. */
  readonly yield: number;
}

const SETTLED = 1e-9;
const MOST_SWEEPS = 5000;

/**
 * Expected visits from the flow equations of the route: what enters a step is what leaves the one before and what
 * inspections send back to it (Jackson 1957: visits 1 / (1 - p) for one loop of chance p). They are solved by sweeps
 * along the route until what is sent back has settled. Carried along: in which rework a unit is (for steps that rework
 * skips, or that only rework visits) and each slot's chance of being open. The approximations are those of `Inspection`.
 */
export function expectedVisits(model: Model, route: number, build: Build): Visits {
  const path = layPath(model, route, build);
  const backs = path.flatMap((step) => step.inspection?.backs ?? []);
  const pool = new StreamPool(model.slots.count);
  const visits = new Float64Array(path.length), passed = new Float64Array(path.length);
  for (let sweep = 0; ; sweep++) {
    const out = sweepPath(path, pool, visits, passed);
    const change = backs.reduce((most, back) => Math.max(most, back.settle()), 0);
    if (change < SETTLED || sweep === MOST_SWEEPS) {
      return { visits, passed, repairs: path.map((step) => step.inspection?.repairs ?? new Map<number, number>()), yield: Math.min(1, out) };
    }
  }
}

/** A step for one build. */
interface PathStep {
  readonly step: number;
  /** Share of units going forward, and of units in rework, that visit it. */
  readonly forward: number;
  readonly inRework: number;
  readonly created: readonly Creation[];
  readonly inspection: Inspection | undefined;
  /** Send-backs that lead here. */
  readonly targetOf: readonly BackStream[];
  /** Every unit visits it and goes on; nothing is found there and nobody is sent to it. */
  readonly isPlain: boolean;
}

function layPath(model: Model, route: number, build: Build): PathStep[] {
  const { steps, routes, slots } = model;
  const first = routes.firstStep[route], count = routes.firstStep[route + 1] - first;
  const inspections = Array.from({ length: count }, (_, i) => (steps.findStart[first + i + 1] > steps.findStart[first + i] ? new Inspection(model, build, first + i, slots.count) : undefined));
  const backs = inspections.flatMap((inspection) => inspection?.backs ?? []);
  return inspections.map((inspection, i) => {
    const step = first + i;
    const met = chanceToMeet(model, build, step) / Math.max(1, steps.sampleN[step]);
    const created = creations(model, build, step);
    const targetOf = backs.filter((back) => back.target === step);
    return {
      step, created, inspection, targetOf,
      forward: steps.rework[step] === REWORK_ONLY ? 0 : met,
      inRework: steps.rework[step] === REWORK_SKIP ? 0 : met,
      isPlain: met === 1 && steps.rework[step] === REWORK_BOTH && inspection === undefined && targetOf.length === 0,
    };
  });
}

const FORWARD = -1;

/** Takes one unit along the path, with what was sent back in the last sweep. Returns the share that comes out at the end. */
function sweepPath(path: readonly PathStep[], pool: StreamPool, visits: Float64Array, passed: Float64Array): number {
  /** Streams by the inspection to which a rework leads. */
  const streams = new Map<number, Stream>();
  /** Those of them at a step. */
  const present = new Map<number, Stream>();
  pool.startSweep();
  into(streams, FORWARD, pool).units = 1;
  for (let i = 0; i < path.length; i++) {
    const { step, forward, inRework, created, inspection, targetOf, isPlain } = path[i];
    if (isPlain) {
      let units = 0;
      for (const going of streams.values()) {
        units += going.units;
        create(going, created);
      }
      visits[i] = passed[i] = units;
      continue;
    }
    present.clear();
    for (const [mode, going] of streams) {
      const share = mode === FORWARD ? forward : inRework;
      if (mode === step || share === 0) continue;
      if (share === 1) { present.set(mode, going); streams.delete(mode); } else split(going, share, into(present, mode, pool));
    }
    // The inspection that sent a unit back sees it again, and a unit sent back stands at its target, whatever the conditions.
    const due = streams.get(step);
    if (due !== undefined) { join(into(present, FORWARD, pool), due); streams.delete(step); }
    for (const back of targetOf) join(into(present, back.from === step ? FORWARD : back.from, pool), back);

    visits[i] = passed[i] = 0;
    inspection?.startSweep();
    for (const [mode, at] of present) {
      visits[i] += at.units;
      create(at, created);
      inspection?.pass(at);
      passed[i] += at.units;
      const beside = streams.get(mode);
      if (beside === undefined) streams.set(mode, at); else join(beside, at);
    }
  }
  let out = 0;
  for (const going of streams.values()) out += going.units;
  return out;
}

interface Creation { readonly slot: number; readonly chance: number }

function creations(model: Model, build: Build, step: number): Creation[] {
  const { createStart, createSlot, createChance } = model.steps;
  return Array.from({ length: createStart[step + 1] - createStart[step] }, (_, i) => {
    const c = createStart[step] + i;
    return { slot: createSlot[c], chance: meanChance(model, build, createChance[c]) };
  });
}

function create(at: Stream, created: readonly Creation[]): void {
  for (const { slot, chance } of created) at.open[slot] += (at.units - at.open[slot]) * chance;
}

/** Streams used again from sweep to sweep. */
class StreamPool {
  private readonly streams: Stream[] = [];
  private taken = 0;
  constructor(private readonly slotCount: number) {}

  startSweep(): void {
    this.taken = 0;
  }

  empty(): Stream {
    const stream = this.streams[this.taken] ?? (this.streams[this.taken] = { units: 0, open: new Float64Array(this.slotCount) });
    this.taken++;
    stream.units = 0;
    stream.open.fill(0);
    return stream;
  }
}

function into(streams: Map<number, Stream>, mode: number, pool: StreamPool): Stream {
  let stream = streams.get(mode);
  if (stream === undefined) streams.set(mode, stream = pool.empty());
  return stream;
}

function join(to: Stream, from: Stream): void {
  to.units += from.units;
  for (let s = 0; s < to.open.length; s++) to.open[s] += from.open[s];
}

/** Moves a share of a stream over. */
function split(from: Stream, share: number, to: Stream): void {
  to.units += from.units * share;
  from.units *= 1 - share;
  for (let s = 0; s < to.open.length; s++) {
    to.open[s] += from.open[s] * share;
    from.open[s] *= 1 - share;
  }
}
