import { Asked } from '../claims/asked.js';
import type { Resource } from '../claims/resource.js';
import type { Model } from '../model/model.js';
import type { StepColumns } from '../model/steps.js';
import type { Lane } from '../traffic/lane.js';
import type { Buffer } from './buffer.js';
import {
  type Memory,
  NOWHERE,
  S_BUFFER,
  S_CALENDAR,
  S_FLAGS,
  S_NEXT,
  S_VISITS,
  S_WORK_DRAW,
  STEP_SHIFT,
} from './memory.js';
import type { Station } from './station.js';

/** Their bits lie in one integer. */
const MOST_OWN_PARTS = 31;

/**
 * A step of a route, with its station or lane: a view on its record. Rarer things (conditions, defects) are
 * read from the model by `id`.
 */
export class Step {
  readonly at: number;
  readonly asked: Asked;
  /** Of a group: the steps that are done side by side. */
  sideSteps: Step[] = [];
  /** The group in which it is done. */
  group: Step | null = null;
  /** What is still claimed at its place where its parts are set aside already. */
  rest: Asked | null = null;
  /** What is claimed before the unit takes a place, if that is to be. */
  ahead: Asked | null = null;
  /** Bits of the needs for the first part of the work. */
  firstParts = 0;
  /** Bits of what leaves a unit that comes to it, and of what leaves one that comes to what is behind it. */
  letsGo = 0;
  letsGoBehind = 0;
  /** Running number among inspections; -1. */
  inspection = -1;
  /** Running number among hold steps; -1. */
  hold = -1;
  /** By target at another site: first step of the way by which it sends units back there. */
  waysBack: Map<Step, Step> | null = null;
  sampled = 0;
  /** Times begun since the start of the run; kept only for steps that learn. */
  begun = 0;
  private nextStep: Step | null = null;

  readonly name: string;
  readonly buffer: Buffer;
  /** Id, -1 always. */
  readonly workCalendar: number;
  readonly workDraw: number;
  passes: number;
  readonly settleDraw: number;
  readonly processDraw: number;

  constructor(
    readonly id: number,
    columns: StepColumns,
    readonly route: Route,
    readonly station: Station | null,
    readonly lane: Lane | null,
    private readonly memory: Memory,
  ) {
    this.asked = new Asked(id);
    this.name = columns.names[id];
    this.buffer = station?.buffer ?? lane!.bank;
    this.workCalendar = columns.workCalendar[id];
    this.workDraw = columns.workDraw[id];
    this.passes = columns.passes[id];
    this.settleDraw = columns.settleDraw[id];
    this.processDraw = columns.processDraw[id];
    const at = (this.at = id << STEP_SHIFT),
      { ints } = memory;
    ints[at + S_NEXT] = NOWHERE;
    ints[at + S_BUFFER] = this.buffer.at;
    ints[at + S_WORK_DRAW] = this.workDraw;
    ints[at + S_CALENDAR] = this.workCalendar;
  }

  get flags(): number {
    return this.memory.ints[this.at + S_FLAGS];
  }
  set flags(flags: number) {
    this.memory.ints[this.at + S_FLAGS] = flags;
  }

  /** The step after it on its route; null at the end. */
  get next(): Step | null {
    return this.nextStep;
  }
  set next(step: Step | null) {
    this.nextStep = step;
    this.memory.ints[this.at + S_NEXT] = step?.at ?? NOWHERE;
  }

  /** Units and sub-assemblies that began it. */
  get visits(): number {
    return this.memory.ints[this.at + S_VISITS];
  }
  set visits(visits: number) {
    this.memory.ints[this.at + S_VISITS] = visits;
  }
}

/** The unit's route, or a feeder. */
export class Route {
  first: Step | null = null;
  /** The stock it feeds; null for the unit's route and for own parts. */
  stock: Resource | null = null;
  /** Full kit: the parts that a sub-assembly begins with, null: none; the steps that take them. */
  kit: Asked | null = null;
  kitSteps: readonly Step[] = [];
  listed = false;
  /** Running number of the last one begun, and how many are in the making. */
  begun = 0;
  making = 0;
  /** Slots whose items its sub-assemblies may bring along. */
  carriedSlots: Int32Array = new Int32Array(0);

  /** @param ownBit bit that stands for its own parts; 0 for others */
  constructor(
    readonly id: number,
    readonly name: string,
    readonly isMain: boolean,
    readonly ownBit: number,
    public target: number,
  ) {}
}

export function buildRoutes({ routes: { names, own, target } }: Model): Route[] {
  let ownBits = 0;
  const routes = names.map(
    (name, r) => new Route(r, name, r === 0, own[r] === 1 ? 1 << ownBits++ : 0, target[r]),
  );
  if (ownBits > MOST_OWN_PARTS)
    throw new RangeError(`feeders of own parts: expected ${MOST_OWN_PARTS} at most, got ${ownBits}`);
  return routes;
}

/**
 * Builds all steps and lines up those of each route; steps side by side stand beside the line, with their
 * group.
 */
export function buildSteps(
  { steps: columns, routes: { firstStep }, sideBySide }: Model,
  stations: readonly Station[],
  lanes: readonly Lane[],
  routes: readonly Route[],
  memory: Memory,
): Step[] {
  const { station, lane, route } = columns;
  const steps = columns.names.map((_, t) => {
    const at = station[t] < 0 ? null : stations[station[t]],
      on = lane[t] < 0 ? null : lanes[lane[t]];
    return new Step(t, columns, routes[route[t]], at, on, memory);
  });
  for (const { id } of routes) {
    let last: Step | null = null;
    for (const step of steps.slice(firstStep[id], firstStep[id + 1])) {
      const group = sideBySide.group[step.id];
      if (group >= 0) {
        step.group = steps[group];
        steps[group].sideSteps.push(step);
        continue;
      }
      if (last === null) routes[id].first = step;
      else last.next = step;
      last = step;
    }
  }
  return steps;
}
