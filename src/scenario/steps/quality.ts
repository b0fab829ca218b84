import type { Model } from '../../flow/model/model.js';
import { HOLD_ALL, HOLD_NONE, HOLD_NOTED, type QualityColumns } from '../../flow/model/quality.js';
import { at, column, ragged } from '../lookup/columns.js';
import { type Compilation, NO_DRAW } from '../lookup/compilation.js';
import type { LaidRoutes, LaidStep } from '../lookup/laid.js';
import { isForAll } from '../lookup/placed.js';
import type { StationStep } from '../types/steps.js';
import { once, own, remembered } from '../values/raw.js';
import { type Chances, isAlways, type Times } from './chances.js';
import type { Slot } from './defects.js';
import type { Thens } from './finds.js';

/** What the quality of steps is compiled with; `joining`: see `joiningRoutes`. */
export interface Quality {
  readonly slots: readonly Slot[];
  readonly joining: readonly ReadonlySet<number>[];
  readonly chances: Chances;
  readonly times: Times;
  readonly thens: Thens;
}

interface Created {
  readonly slot: number;
  readonly chance: number;
  readonly draw: number;
}
interface Sought extends Created {
  readonly then: number;
}
export interface FindsRow {
  readonly creates: readonly Created[];
  readonly finds: readonly Sought[];
}

/** By kind, undefined for those of failed tests. */
const slotsOfKind = once((slots: readonly Slot[]) => {
  const byKind = new Map<string | undefined, { readonly slot: Slot; readonly id: number }[]>();
  slots.forEach((slot, id) => remembered(byKind, slot.kind, () => []).push({ slot, id }));
  return byKind;
});

/** By the step that makes them and by kind. */
const slotsOfStep = once((slots: readonly Slot[]) => {
  const byStep = new Map<number, Map<string | undefined, number>>();
  slots.forEach(({ kind, step }, id) => remembered(byStep, step, () => new Map()).set(kind, id));
  return byStep;
});

/**
 * What the step may create and find. A find is one row for each slot of its kind on the same route or brought
 * by what joins it; they share what follows.
 */
export function findsRow(
  step: StationStep,
  id: number,
  route: number,
  { draws, laid, slots, joining, chances, thens }: Compilation & Quality,
): FindsRow {
  const { name } = step,
    made = slotsOfStep(slots).get(id) ?? new Map<string | undefined, number>();
  const creates = Object.entries(step.creates).map(([kind, chance]) => ({
    slot: made.get(kind) ?? -1,
    chance: chances.add(chance),
    draw: draws.chance(`${name}/creates ${kind}`),
  }));
  const finds: Sought[] = Object.entries(step.finds).flatMap(([kind, find]) => {
    const then = thens.add(name, kind, find);
    const chance = chances.add(find.chance);
    return (slotsOfKind(slots).get(kind) ?? []).flatMap(({ slot, id: s }) =>
      slot.route === route || at(joining, route).has(slot.route)
        ? [
            {
              slot: s,
              chance,
              then,
              draw: draws.chance(`${name}/finds ${kind} from ${at(laid.steps, slot.step).name}`),
            },
          ]
        : [],
    );
  });
  if (step.fails !== undefined) {
    finds.push({
      slot: -1,
      chance: chances.add(step.fails.chance),
      then: thens.add(name, 'failed test', step.fails),
      draw: draws.chance(`${name}/fails`),
    });
  }
  return { creates, finds };
}

export function findsColumns(rows: readonly FindsRow[]) {
  const creates = ragged(rows, (row) => row.creates),
    finds = ragged(rows, (row) => row.finds);
  return {
    createStart: creates.start,
    createSlot: creates.column(({ slot }) => slot),
    createChance: creates.column(({ chance }) => chance),
    createDraw: creates.column(({ draw }) => draw),
    findStart: finds.start,
    findSlot: finds.column(({ slot }) => slot),
    findChance: finds.column(({ chance }) => chance),
    findDraw: finds.column(({ draw }) => draw),
    findThen: finds.column(({ then }) => then),
  };
}

/** Columns of rules 8 to 10. Draws are added after those of the steps. */
export function compileQuality(
  { laid, draws, slots, joining, times }: Compilation & Quality,
  { findStart, findSlot }: Model['steps'],
): QualityColumns {
  const carried = ragged(carriedSlots(laid, slots, joining), (row) => row);
  const findNote = findSlot.slice();
  for (const step of laid.steps.keys()) {
    const note = slotsOfStep(slots).get(step)?.get(undefined) ?? -1;
    for (let find = at(findStart, step); find < at(findStart, step + 1); find++)
      if (at(findNote, find) < 0) findNote[find] = note;
  }
  return {
    carriedStart: carried.start,
    carriedSlot: carried.column(Number),
    findNote,
    hold: Uint8Array.from(laid.steps, holdOf),
    mendTime: column(laid.steps, (one) =>
      one.kind === 'step' && one.step.hold?.mend !== undefined
        ? times.add(`${one.name}/mend`, one.step.hold.mend)
        : -1,
    ),
    compareWith: column(laid.steps, (one) =>
      one.kind === 'step' && one.step.comparesWith !== undefined
        ? laid.stepId(one.step.comparesWith.step)
        : -1,
    ),
    differDraw: column(laid.steps, (one) =>
      one.kind === 'step' ? draws.add(`${one.name}/differs`, one.step.comparesWith?.differs) : NO_DRAW,
    ),
  };
}

function holdOf(laid: LaidStep): number {
  if (laid.kind !== 'step' || laid.step.hold === undefined) return HOLD_NONE;
  return hasOwnTask(laid.step) ? HOLD_ALL : HOLD_NOTED;
}

/** Whether there is something to do at a hold for a unit without noted items. */
function hasOwnTask({ work, passes, process, parts, takesOff, creates, finds, fails }: StationStep): boolean {
  return (
    work !== undefined ||
    passes !== undefined ||
    process !== undefined ||
    fails !== undefined ||
    takesOff.length > 0 ||
    [parts, creates, finds].some((map) => Object.keys(map).length > 0)
  );
}

/** Slots whose items a sub-assembly may bring with it, route by route. The unit brings nothing anywhere. */
const carriedSlots = (
  laid: LaidRoutes,
  slots: readonly Slot[],
  joining: readonly ReadonlySet<number>[],
): number[][] => {
  const left = new Map<number, number[]>();
  slots.forEach((slot, s) => {
    if (slot.route !== 0 && !isSurelyCleaned(laid, slot)) remembered(left, slot.route, () => []).push(s);
  });
  return joining.map((inner, route) =>
    route === 0 ? [] : [route, ...inner].flatMap((each) => left.get(each) ?? []).toSorted((a, b) => a - b),
  );
};

/**
 * Whether everything that comes to the end of the route has passed, after the step that makes the flaw, one
 * that always finds it and mends or scraps.
 */
function isSurelyCleaned({ steps, firstStep }: LaidRoutes, { kind, step, route }: Slot): boolean {
  if (kind === undefined) return false;
  for (let s = step; s < at(firstStep, route + 1); s++) {
    const laid = at(steps, s);
    if (laid.kind !== 'step' || !isForAll(laid.step)) continue;
    const find = own(laid.step.finds, kind);
    if (
      find !== undefined &&
      isAlways(find.chance) &&
      (find.then.kind === 'repair' || find.then.kind === 'scrap')
    )
      return true;
  }
  return false;
}
