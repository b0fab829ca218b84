import type { Model } from '../../flow/model/model.js';
import { at, column, int32 } from '../lookup/columns.js';
import type { Ids, LaidRoutes, LaidStep } from '../lookup/ids.js';
import { furthestBack, isForAll, joinIndex, type PlacedStep, routesOf, stepsOf } from '../lookup/placed.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys } from '../values/keys.js';
import { own } from '../values/raw.js';
import { text } from '../values/scalars.js';
import { isAlways } from './chances.js';
import { makesNote } from './finds.js';

export const defectSchema = keys(
  { note: text.optional().describe('A remark for those who read the file. Example: too thick a coat') },
  'a kind of defect: a map, {} without a note',
);

interface Mark {
  readonly placed: PlacedStep;
  readonly kind: string;
}

/** Defects that nothing can find, inspections with nothing to find. */
export function* defectFindings(scenario: Scenario): Iterable<Finding> {
  const routes = routesOf(scenario),
    steps = routes.flatMap(stepsOf);
  const marks = (key: 'creates' | 'finds'): Mark[] =>
    steps.flatMap((placed) =>
      Object.keys(placed.step[key])
        .filter((kind) => Object.hasOwn(scenario.defects, kind))
        .map((kind) => ({ placed, kind })),
    );
  const created = marks('creates'),
    sought = marks('finds'),
    furthest = new Map(routes.map((route) => [route, furthestBack(route)]));

  /**
   * Can an item made at `maker`, or brought by what is made there, be open when `finder` looks? Also by a
   * loop that leads back to a finder before it.
   */
  const meets = (maker: Mark, finder: Mark): boolean => {
    if (maker.kind !== finder.kind) return false;
    const { route: home, index } = maker.placed,
      { route, index: looked } = finder.placed,
      made = home === route ? index : joinIndex(routes, home, route);
    return made !== undefined && made <= Math.max(looked, furthest.get(route)?.[looked] ?? -1);
  };
  for (const maker of created)
    if (!sought.some((finder) => meets(maker, finder)))
      yield {
        path: [...maker.placed.path, 'creates', maker.kind],
        wanted: 'a defect that this or a later step finds; no step does',
        atKey: true,
      };
  for (const finder of sought)
    if (!created.some((maker) => meets(maker, finder)))
      yield {
        path: [...finder.placed.path, 'finds', finder.kind],
        wanted: 'a defect that this or an earlier step creates; no step does',
        atKey: true,
      };
}

/** `kind` is undefined for the item of a failed test. */
export interface Slot {
  readonly kind: string | undefined;
  readonly step: number;
  readonly route: number;
}

/** Defect slots: one for each kind and step that creates it, in step order; then those of failed tests. */
export function layOutSlots(routes: LaidRoutes): Slot[] {
  return [
    ...routes.steps.flatMap((laid, step) =>
      laid.kind === 'step'
        ? Object.keys(laid.step.creates).map((kind) => ({ kind, step, route: laid.route }))
        : [],
    ),
    ...testSlots(routes),
  ];
}

/** A failed test has an item only where it can be left open. */
function testSlots({ steps }: LaidRoutes): Slot[] {
  return steps.flatMap((laid, step) =>
    laid.kind === 'step' && laid.step.fails !== undefined && makesNote(laid.step.fails)
      ? [{ kind: undefined, step, route: laid.route }]
      : [],
  );
}

export function slotColumns(
  slots: readonly Slot[],
  kinds: readonly string[],
  steps: readonly LaidStep[],
): Model['slots'] {
  return {
    count: slots.length,
    names: slots.map((slot) => `${slot.kind ?? 'failed test'} from ${at(steps, slot.step).name}`),
    kind: column(slots, (slot) => (slot.kind === undefined ? -1 : kinds.indexOf(slot.kind))),
    ...int32(slots, 'step'),
    kindNames: kinds,
  };
}

/**
 * For each route, the feeders whose sub-assemblies become part of what goes along it: those that join it,
 * those that join these, and so on. Supplies have no route.
 */
export function joiningRoutes(
  { feeders }: Scenario,
  { steps, firstStep }: LaidRoutes,
  ids: Ids,
): ReadonlySet<number>[] {
  const direct = Array.from({ length: firstStep.length - 1 }, (_, route) =>
    steps.slice(firstStep[route], firstStep[route + 1]).flatMap((laid) =>
      laid.kind === 'step'
        ? Object.keys(laid.step.parts)
            .filter((part) => Object.hasOwn(feeders, part))
            .map((part) => ids.feeder(part))
        : [],
    ),
  );
  return direct.map((joining) => {
    const all = new Set(joining);
    for (const route of all) for (const inner of at(direct, route)) all.add(inner);
    return all;
  });
}

/** Slots whose items a sub-assembly may bring with it, route by route. The unit brings nothing anywhere. */
export const carriedSlots = (
  laid: LaidRoutes,
  slots: readonly Slot[],
  joining: readonly ReadonlySet<number>[],
): number[][] =>
  joining.map((inner, route) =>
    route === 0
      ? []
      : slots.flatMap((slot, s) =>
          (slot.route === route || inner.has(slot.route)) && !isSurelyCleaned(laid, slot) ? [s] : [],
        ),
  );

/**
 * Whether everything that comes to the end of the route has passed, after the step that makes the flaw, one
 * that always finds it and mends or scraps.
 */
function isSurelyCleaned({ steps, firstStep }: LaidRoutes, { kind, step, route }: Slot): boolean {
  if (kind === undefined) return false;
  return steps.slice(step, firstStep[route + 1]).some((laid) => {
    if (laid.kind !== 'step' || !isForAll(laid.step)) return false;
    const find = own(laid.step.finds, kind);
    return (
      find !== undefined &&
      isAlways(find.chance) &&
      (find.then.kind === 'repair' || find.then.kind === 'scrap')
    );
  });
}
