import type { Model } from '../../../flow/model/model.js';
import { CARRY, SEND_BACK } from '../../../flow/model/quality.js';
import { type FloorEvent, UNIT } from '../../../records/log/event.js';
import { FAILED } from '../../../records/log/of-run.js';
import { broughtBy, Hidden } from './chances.js';

/** What happened to the units that are on the floor, and nothing of those that are gone. */
export class Histories {
  readonly units = new Map<string, FloorEvent[]>();

  take(event: FloorEvent): void {
    const { kind, object, type } = event;
    if (type !== UNIT) return;
    if (kind === 'ship' || kind === 'scrap') {
      this.units.delete(object);
      return;
    }
    const known = this.units.get(object);
    if (known === undefined) this.units.set(object, [event]);
    else if (kind === 'arrive' || kind === 'end' || kind === 'find') known.push(event);
  }
}

/** An item on a unit, in ids of the model. */
export interface Item {
  /** -1: a failed test. */
  readonly slot: number;
  /** Row of the find by which it is known; -1: nobody has found it. */
  readonly find: number;
  readonly chance: number;
}

/** How a unit stands with its inspections. */
export interface Inspected {
  readonly items: readonly Item[];
  /** The inspection that sent it back and that it has not come to again; -1. */
  readonly sentBy: number;
  /** Where it was sent and has not come to yet; -1. */
  readonly sentTo: number;
  /** Since when what was found is mended where it was found; NaN: nothing is. */
  readonly mendedSince: number;
}

/** Of a way back its target; of a step side by side its group. */
export function onRoute({ steps, sideBySide }: Model, step: number): number {
  let at = step;
  while ((steps.onTo[at] ?? -1) >= 0) at = steps.onTo[at] ?? -1;
  const group = sideBySide.group[at] ?? -1;
  return group >= 0 ? group : at;
}

/** What is less likely is left out. */
const LEAST = 5e-4;

/** Reads from the histories of units what is open on them. */
export class OpenItems {
  private readonly brought: ReadonlyMap<number, Float64Array>;

  /** @param tells whether the log tells of finds at all */
  constructor(
    private readonly model: Model,
    private readonly stepOf: ReadonlyMap<string, number>,
    private readonly tells: boolean,
  ) {
    this.brought = broughtBy(model);
  }

  of(history: readonly FloorEvent[], options: Readonly<Record<string, string>>): Inspected {
    const { model, stepOf } = this,
      unit = new OneUnit(model, new Hidden(model, options, this.brought), this.tells);
    const first = stepOf.get(history[0]?.step ?? '') ?? 0;
    // Of a unit that was there before the log begins, once through what is behind it.
    if (history[0]?.kind !== 'enter')
      for (let step = 0; step < first; step++) if (model.steps.route[step] === 0) unit.ends(step);
    for (const { kind, step: name, values, at } of history) {
      const step = stepOf.get(name);
      if (step === undefined) continue;
      if (kind === 'arrive') unit.comes(step);
      else if (kind === 'end') unit.ends(step);
      else if (kind === 'find') unit.found(step, values, at);
    }
    return unit.result();
  }
}

class OneUnit {
  /** Known items by slot; those of failed tests by -1 - find. */
  private readonly known = new Map<number, { readonly find: number; readonly isNoted: boolean }>();
  /** Finds of the visit that goes on. */
  private now: { readonly find: number; readonly isBack: boolean }[] = [];
  private sentBy = -1;
  private sentTo = -1;
  private foundAt = NaN;

  constructor(
    private readonly model: Model,
    private readonly hidden: Hidden,
    private readonly tells: boolean,
  ) {}

  comes(to: number): void {
    const step = onRoute(this.model, to);
    if (step === this.sentTo) this.sentTo = -1;
    if (step === this.sentBy) this.sentBy = -1;
  }

  found(step: number, { defect = '', 'made at': madeAt, to }: FloorEvent['values'], at: number): void {
    const find = this.findOf(step, defect, madeAt);
    this.foundAt = at;
    if (find !== undefined) this.now.push({ find, isBack: to !== undefined && this.targetOf(find) >= 0 });
  }

  ends(step: number): void {
    const { model, known, hidden } = this,
      { steps, thens, quality } = model;
    for (const [key, { find, isNoted }] of known)
      if (isNoted ? (quality.hold[step] ?? 0) > 0 : this.targetOf(find) === onRoute(model, step))
        known.delete(key);
    hidden.make(step);
    const seen = new Set(this.now.map(({ find }) => find));
    for (let find = steps.findStart[step] ?? 0; find < (steps.findStart[step + 1] ?? 0); find++)
      if (!seen.has(find) && !known.has(steps.findSlot[find] ?? -1)) hidden.look(find, this.tells);
    if (this.now.some(({ isBack }) => isBack)) this.sentTo = -1;
    for (const { find, isBack } of this.now) {
      const slot = steps.findSlot[find] ?? -1,
        kind = thens.kind[steps.findThen[find] ?? -1],
        key = slot < 0 ? -1 - find : slot,
        isNoted = !isBack && (kind === CARRY || (kind === SEND_BACK && (quality.findNote[find] ?? -1) >= 0));
      if (slot >= 0) hidden.chance[slot] = 0;
      known.delete(key);
      if (isNoted || isBack) known.set(key, { find, isNoted });
      if (!isBack) continue;
      // Several finds of one visit lead to the earliest step.
      this.sentTo = this.sentTo < 0 ? this.targetOf(find) : Math.min(this.sentTo, this.targetOf(find));
      this.sentBy = step;
    }
    if (this.sentTo === this.sentBy) this.sentBy = -1;
    this.now = [];
  }

  result(): Inspected {
    const { model, known, hidden, sentBy, sentTo } = this,
      items: Item[] = [];
    let isMended = false;
    // What is being mended where it was found is found there again.
    for (const { find } of this.now) {
      const slot = model.steps.findSlot[find] ?? -1;
      if (slot < 0) continue;
      known.set(slot, { find, isNoted: false });
      isMended = true;
    }
    for (const { find } of known.values())
      items.push({ slot: model.steps.findSlot[find] ?? -1, find, chance: 1 });
    hidden.chance.forEach((chance, slot) => {
      if (chance >= LEAST && !known.has(slot)) items.push({ slot, find: -1, chance });
    });
    return { items, sentBy, sentTo, mendedSince: isMended ? this.foundAt : NaN };
  }

  private targetOf(find: number): number {
    const { steps, thens } = this.model,
      then = steps.findThen[find] ?? -1;
    return thens.kind[then] === SEND_BACK ? (thens.target[then] ?? -1) : -1;
  }

  /** The row of a find as the log tells it; of several slots of the kind the likeliest. */
  private findOf(step: number, defect: string, madeAt: string | undefined): number | undefined {
    const { steps, slots } = this.model;
    let best: number | undefined,
      most = -1;
    for (let find = steps.findStart[step] ?? 0; find < (steps.findStart[step + 1] ?? 0); find++) {
      const slot = steps.findSlot[find] ?? -1,
        kind = slot < 0 ? FAILED : slots.kindNames[slots.kind[slot] ?? -1],
        maker = slot < 0 ? undefined : steps.names[slots.step[slot] ?? -1];
      if (kind !== defect || (slot >= 0 && madeAt !== undefined && maker !== madeAt)) continue;
      const chance = slot < 0 ? 0 : this.known.has(slot) ? 2 : (this.hidden.chance[slot] ?? 0);
      if (chance > most) {
        best = find;
        most = chance;
      }
    }
    return best;
  }
}
