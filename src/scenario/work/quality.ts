import type { StationStep } from '../types/steps.js';
import { HOLD_ALL, HOLD_NONE, HOLD_NOTED, type Model, type QualityColumns } from '../../flow/model/model.js';
import { column, entriesOf, starts } from '../whole/columns.js';
import type { Slot } from './defects.js';
import { NO_DRAW, type Draws } from '../whole/draws.js';
import { found, type Names } from '../whole/ids.js';
import type { LaidRoutes, LaidStep } from './route.js';
import { isAlways, own } from '../whole/placed.js';

/**
 * For each route, the feeders whose sub-assemblies become part of what goes along it: those that join it,
 * those that join these, and so on. Supplies have no route.
 */
export function joiningRoutes({ steps, firstStep }: LaidRoutes, names: Names): ReadonlySet<number>[] {
  const direct = Array.from({ length: firstStep.length - 1 }, (_, route) =>
    steps
      .slice(firstStep[route], firstStep[route + 1])
      .flatMap((laid) =>
        laid.kind === 'step'
          ? Object.keys(laid.step.parts).flatMap((part) => names.feeder.get(part) ?? [])
          : [],
      ),
  );
  return direct.map((feeders) => {
    const all = new Set(feeders);
    for (const route of all) for (const inner of direct[route]) all.add(inner);
    return all;
  });
}

/** Columns of rules 8 to 10. Draws are added after those of the steps. */
export function compileQuality(
  laid: LaidRoutes,
  slots: readonly Slot[],
  joining: readonly ReadonlySet<number>[],
  steps: Model['steps'],
  draws: Draws,
): QualityColumns {
  const carried = joining.map((inner, route) =>
    route === 0
      ? []
      : slots.flatMap((slot, s) =>
          (slot.route === route || inner.has(slot.route)) && !isSurelyCleaned(laid, slot) ? [s] : [],
        ),
  );
  const noteOfTest = new Map(
    slots.flatMap((slot, s) => (slot.kind === undefined ? [[slot.step, s] as const] : [])),
  );
  const findNote = steps.findSlot.slice();
  laid.steps.forEach((_, step) => {
    for (let f = steps.findStart[step]; f < steps.findStart[step + 1]; f++)
      if (findNote[f] < 0) findNote[f] = noteOfTest.get(step) ?? -1;
  });
  return {
    carriedStart: starts(carried, (row) => row),
    carriedSlot: entriesOf(
      carried,
      (row) => row,
      (slot) => slot,
    ),
    findNote,
    hold: Uint8Array.from(laid.steps, holdOf),
    mendDraw: column(laid.steps, (one) =>
      one.kind === 'step' ? draws.add(`${one.name}/mend`, one.step.hold?.mend) : NO_DRAW,
    ),
    compareWith: column(laid.steps, (one) =>
      one.kind === 'step' && one.step.comparesWith !== undefined
        ? found(laid.stepId, one.step.comparesWith.step, 'step')
        : -1,
    ),
    differDraw: column(laid.steps, (one) =>
      one.kind === 'step' ? draws.add(`${one.name}/differs`, one.step.comparesWith?.differs) : NO_DRAW,
    ),
  };
}

/**
 * Whether everything that comes to the end of the route has passed, after the step that makes the flaw, one
 * that always finds it and mends or scraps.
 */
function isSurelyCleaned({ steps, firstStep }: LaidRoutes, { kind, step, route }: Slot): boolean {
  if (kind === undefined) return false;
  return steps.slice(step, firstStep[route + 1]).some((laid) => {
    if (
      laid.kind !== 'step' ||
      laid.step.sample !== undefined ||
      laid.step.rework !== 'both' ||
      Object.keys(laid.when).length > 0
    )
      return false;
    const find = own(laid.step.finds, kind);
    return (
      find !== undefined &&
      isAlways(find.chance) &&
      (find.then.kind === 'repair' || find.then.kind === 'scrap')
    );
  });
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
