import { SEND_BACK } from '../../../flow/model/quality.js';
import { type FloorEvent, UNIT } from '../../../records/log/event.js';
import { FAILED } from '../../../records/log/of-run.js';
import { referenceTo } from '../../../records/log/references.js';
import type { Frame } from './frame.js';
import { orderOfSteps } from './order-of-steps.js';

/** What inspections look for: a kind of defect, or `failed` of a test. */
export interface Look {
  readonly step: number;
  readonly kind: string;
  /** No step before it, and none further along the way, looks for it. */
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

export function looksOf({ model }: Pick<Frame, 'model'>): Look[] {
  const { steps, slots } = model,
    order = orderOfSteps(model),
    placeOf = (step: number): number => order[step] ?? step;
  const pairs: { step: number; kind: string }[] = [];
  for (let step = 0; step < steps.count; step++)
    for (let find = steps.findStart[step] ?? 0; find < (steps.findStart[step + 1] ?? 0); find++) {
      const slot = steps.findSlot[find] ?? -1,
        kind = slot < 0 ? FAILED : (slots.kindNames[slots.kind[slot] ?? -1] ?? '');
      if (!pairs.some((pair) => pair.step === step && pair.kind === kind)) pairs.push({ step, kind });
    }
  return pairs.map((pair) => {
    const others = pairs.filter(({ kind, step }) => kind === pair.kind && step !== pair.step);
    return {
      ...pair,
      isFirst: pair.kind === FAILED || !others.some(({ step }) => placeOf(step) < placeOf(pair.step)),
      isLast: pair.kind === FAILED || !others.some(({ step }) => placeOf(step) > placeOf(pair.step)),
    };
  });
}

/** Of one look: found there for the first time, and passed there but found at another step later. */
export interface LookSeen {
  found: number;
  missed: number;
}
/** Of one inspection. */
export interface InspectionSeen {
  visits: number;
  /** Units that came for the first time, and those of them on which nothing was found then. */
  first: number;
  right: number;
  /** NaN where it sends none back. */
  sentBack: number;
}

interface Inspected {
  readonly seen: Set<number>;
  /** What is found in the visit under way. */
  readonly now: Set<string>;
  isBack: boolean;
  /** By kind: steps that looked for it since it was last found, and did not find it. */
  readonly passed: Map<string, Set<number>>;
}

function sendsBack({ steps, thens }: Frame['model'], step: number): boolean {
  for (let find = steps.findStart[step] ?? 0; find < (steps.findStart[step + 1] ?? 0); find++)
    if (thens.kind[steps.findThen[find] ?? -1] === SEND_BACK) return true;
  return false;
}

/** What inspections and tests find: state for objects that are inside. */
export class Finds {
  readonly looks: readonly LookSeen[];
  /** By step; null where nothing is looked for. */
  readonly inspections: readonly (InspectionSeen | null)[];
  private readonly byStep = new Map<number, { readonly kind: string; readonly seen: LookSeen }[]>();
  private readonly objects = new Map<string, Inspected>();
  /** Types of objects that have the names of units: these, and own parts. */
  private readonly ofUnits: ReadonlySet<string>;

  constructor(
    private readonly frame: Frame,
    readonly asked: readonly Look[],
  ) {
    const { own, names } = frame.model.routes;
    this.ofUnits = new Set([UNIT, ...names.filter((_, route) => own[route] === 1)]);
    this.looks = asked.map(() => ({ found: 0, missed: 0 }));
    asked.forEach(({ step, kind }, i) => {
      const all = this.byStep.get(step) ?? [];
      all.push({ kind, seen: this.looks[i] ?? { found: 0, missed: 0 } });
      this.byStep.set(step, all);
    });
    this.inspections = frame.model.steps.names.map((_, step) =>
      this.byStep.has(step)
        ? { visits: 0, first: 0, right: 0, sentBack: sendsBack(frame.model, step) ? 0 : NaN }
        : null,
    );
  }

  take(event: FloorEvent, step: number | undefined): void {
    // What stands on the floor at the start has a past that a simulated log does not know.
    if (this.ofUnits.has(event.type) && this.frame.old.has(event.object)) return;
    const key = referenceTo(event.type, event.object);
    if (event.kind === 'ship' || event.kind === 'scrap') this.objects.delete(key);
    if (event.kind === 'join') this.joined(key, event.others);
    if (step === undefined || (event.kind !== 'find' && event.kind !== 'end')) return;
    const looked = this.byStep.get(step);
    if (looked === undefined) return;
    const object = this.objectOf(key);
    if (event.kind === 'find') {
      const { defect = '', again, to } = event.values;
      if (to !== undefined) object.isBack = true;
      if (again === 'yes') return;
      object.now.add(defect);
      if (event.at >= this.frame.from) this.found(object, step, defect);
      object.passed.delete(defect);
      return;
    }
    this.visited(object, step, event.at >= this.frame.from);
    for (const { kind } of looked)
      if (!object.now.has(kind)) {
        const steps = object.passed.get(kind) ?? new Set();
        object.passed.set(kind, steps.add(step));
      }
    object.now.clear();
    object.isBack = false;
  }

  private objectOf(key: string): Inspected {
    const known = this.objects.get(key);
    if (known !== undefined) return known;
    const object: Inspected = { seen: new Set(), now: new Set(), isBack: false, passed: new Map() };
    this.objects.set(key, object);
    return object;
  }

  /** What a sub-assembly passed unseen is with the unit from now on. */
  private joined(key: string, others: readonly string[]): void {
    for (const other of others) {
      const part = this.objects.get(other);
      if (part === undefined) continue;
      this.objects.delete(other);
      const { passed } = this.objectOf(key);
      for (const [kind, steps] of part.passed) {
        const all = passed.get(kind) ?? new Set();
        passed.set(kind, all);
        for (const step of steps) all.add(step);
      }
    }
  }

  private found({ passed }: Inspected, step: number, defect: string): void {
    for (const { kind, seen } of this.byStep.get(step) ?? []) if (kind === defect) seen.found++;
    for (const missing of passed.get(defect) ?? [])
      if (missing !== step)
        for (const { kind, seen } of this.byStep.get(missing) ?? []) if (kind === defect) seen.missed++;
  }

  private visited(object: Inspected, step: number, counts: boolean): void {
    const inspection = this.inspections[step],
      isFirst = !object.seen.has(step);
    object.seen.add(step);
    if (!counts || inspection === undefined || inspection === null) return;
    inspection.visits++;
    if (object.isBack) inspection.sentBack++;
    if (!isFirst) return;
    inspection.first++;
    if (object.now.size === 0) inspection.right++;
  }
}
