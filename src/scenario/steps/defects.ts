import type { Model } from '../../flow/model/model.js';
import { at, column, int32 } from '../lookup/columns.js';
import type { Ids } from '../lookup/ids.js';
import { joinIndex } from '../lookup/joins.js';
import type { LaidRoutes, LaidStep } from '../lookup/laid.js';
import { furthestBack, type PlacedRoute, type PlacedStep, routesOf, stepsOf } from '../lookup/placed.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys } from '../values/keys.js';
import { remembered } from '../values/raw.js';
import { text } from '../values/scalars.js';
import { exact } from '../values/thousands.js';
import { makesNote } from './finds.js';

export const defectSchema = keys(
  { note: text.optional().describe('A remark for those who read the file. Example: too thick a coat') },
  'a kind of defect: a map, {} without a note',
);

interface Mark {
  readonly placed: PlacedStep;
  readonly kind: string;
}

/** Each pair has its own chance and its own draw. */
const MOST_PAIRS = 250_000;
const countsOf = (marks: readonly Mark[]): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>();
  for (const { kind } of marks) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return counts;
};

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
    sought = marks('finds');
  /** By kind and route: the last entry at which a finder may look, and the first of which one is made. */
  const lastLook = new Map<string, Map<PlacedRoute, number>>(),
    firstMade = new Map<string, Map<PlacedRoute, number>>();
  /** Also by a loop that leads back to a finder before it. */
  const lookOf = ({ route, index }: PlacedStep): number => Math.max(index, furthestBack(route)[index] ?? -1);
  for (const { kind, placed } of sought) {
    const looks = remembered(lastLook, kind, () => new Map<PlacedRoute, number>());
    looks.set(placed.route, Math.max(looks.get(placed.route) ?? -1, lookOf(placed)));
  }
  for (const { kind, placed } of created) {
    const made = remembered(firstMade, kind, () => new Map<PlacedRoute, number>());
    made.set(placed.route, Math.min(made.get(placed.route) ?? Infinity, placed.index));
  }
  /** Where what is made on a route, at an entry of it, comes onto another. */
  const comes = (home: PlacedRoute, index: number, route: PlacedRoute): number =>
    home === route ? index : (joinIndex(scenario, home, route) ?? Infinity);

  const makers = countsOf(created),
    finders = countsOf(sought);
  for (const [kind, count] of makers) {
    const pairs = count * (finders.get(kind) ?? 0);
    if (pairs > MOST_PAIRS)
      yield {
        path: ['defects', kind],
        wanted:
          `at most ${exact(MOST_PAIRS)} pairs of a step that makes it and one that finds it; ` +
          'give it another name where it is made and found apart',
        seen: exact(pairs),
        atKey: true,
      };
  }
  for (const maker of created)
    if (
      ![...(lastLook.get(maker.kind) ?? [])].some(
        ([route, last]) => comes(maker.placed.route, maker.placed.index, route) <= last,
      )
    )
      yield {
        path: [...maker.placed.path, 'creates', maker.kind],
        wanted: 'a defect that this or a later step finds; no step does',
        atKey: true,
      };
  for (const finder of sought)
    if (
      ![...(firstMade.get(finder.kind) ?? [])].some(
        ([home, first]) => comes(home, first, finder.placed.route) <= lookOf(finder.placed),
      )
    )
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
  const numberOf = new Map(kinds.map((kind, id) => [kind, id]));
  return {
    count: slots.length,
    names: slots.map((slot) => `${slot.kind ?? 'failed test'} from ${at(steps, slot.step).name}`),
    kind: column(slots, (slot) => (slot.kind === undefined ? -1 : (numberOf.get(slot.kind) ?? -1))),
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
