import type { Chance, Find } from '../types/steps.js';
import type { Finding } from '../types/problem.js';
import { CARRY, REPAIR, SCRAP, SEND_BACK } from '../../flow/model/model.js';
import type { Model } from '../../flow/model/model.js';

import type { Scenario } from '../types/scenario.js';
import { column, entriesOf, starts } from '../whole/columns.js';
import type { Draws } from '../whole/draws.js';
import type { Names } from '../whole/ids.js';
import { findsOf, isAlways, joinIndex, routesOf, sendBacksOf, stepsOf } from '../whole/placed.js';
import type { PlacedRoute, PlacedStep } from '../whole/placed.js';
import { makesNote } from './finds.js';
import type { LaidRoutes, LaidStep } from './route.js';

/** Defects that nothing can find, inspections with nothing to find, loops that cannot end. */
export function defectFindings(scenario: Scenario): Finding[] {
  const routes = routesOf(scenario);
  return [...unmatched(scenario, routes), ...routes.flatMap(endless)];
}

interface Mark {
  readonly route: PlacedRoute;
  readonly placed: PlacedStep;
  readonly kind: string;
}

function unmatched(scenario: Scenario, routes: readonly PlacedRoute[]): Finding[] {
  const marks = (kinds: (placed: PlacedStep) => string[]): Mark[] =>
    routes.flatMap((route) =>
      stepsOf(route).flatMap((placed) =>
        kinds(placed)
          .filter((kind) => Object.hasOwn(scenario.defects, kind))
          .map((kind) => ({ route, placed, kind })),
      ),
    );
  const created = marks(({ step }) => Object.keys(step.creates));
  const sought = marks(({ step }) => Object.keys(step.finds));
  const furthest = new Map(routes.map((route) => [route, furthestBack(route)]));

  /**
   * Can an item made at `maker`, or brought by what is made there, be open when `finder` looks? Also by a
   * loop that leads back to a finder before it.
   */
  const meets = (maker: Mark, finder: Mark): boolean => {
    if (maker.kind !== finder.kind) return false;
    const looked = finder.placed.index,
      made = maker.route === finder.route ? maker.placed.index : joinIndex(routes, maker.route, finder.route);
    return made !== undefined && made <= Math.max(looked, furthest.get(finder.route)![looked]!);
  };
  const lost = created.filter((maker) => !sought.some((finder) => meets(maker, finder)));
  const idle = sought.filter((finder) => !created.some((maker) => meets(maker, finder)));
  return [
    ...lost.map(
      ({ placed, kind }): Finding => ({
        path: [...placed.path, 'creates', kind],
        wanted: 'a defect that this or a later step finds; no step does',
        atKey: true,
      }),
    ),
    ...idle.map(
      ({ placed, kind }): Finding => ({
        path: [...placed.path, 'finds', kind],
        wanted: 'a defect that this or an earlier step creates; no step does',
        atKey: true,
      }),
    ),
  ];
}

/** For each entry of a route: the last one from which units are sent back to it or past it; -1 if none. */
export function furthestBack(route: PlacedRoute): number[] {
  const furthest = route.entries.map(() => -1);
  for (const { from, to } of sendBacksOf(route)) furthest[to] = Math.max(furthest[to]!, from);
  for (let i = 1; i < furthest.length; i++) furthest[i] = Math.max(furthest[i]!, furthest[i - 1]!);
  return furthest;
}

/** Every unit would go round until the limit, or be scrapped. */
function endless(route: PlacedRoute): Finding[] {
  const steps = stepsOf(route);
  return steps.flatMap((placed) => {
    if (placed.step.sample !== undefined || placed.step.rework !== 'both') return [];
    return findsOf(placed).flatMap(({ path, kind, find }): Finding[] => {
      if (!isAlways(find.chance)) return [];
      const below = (why: string): Finding[] => [
        { path: [...path, 'chance'], wanted: `a chance below 100 %: ${why}`, seen: '100 %' },
      ];
      const { then } = find;
      if (then.kind === 'scrap' && kind === undefined) return below('every unit would be scrapped');
      if (then.kind !== 'back') return [];
      if (kind === undefined) return below('every unit would fail and go back until the limit');
      const target = steps.find(({ step }) => step.name === then.to)?.index ?? Infinity;
      const again = steps.some(({ step, index }) => {
        const chance = Object.hasOwn(step.creates, kind) ? step.creates[kind] : undefined;
        return (
          index >= target &&
          index <= placed.index &&
          chance !== undefined &&
          isAlways(chance) &&
          step.rework !== 'skip' &&
          step.sample === undefined &&
          Object.keys(step.when).length === 0
        );
      });
      return again
        ? below('the defect is always made again, so every unit would go back until the limit')
        : [];
    });
  });
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
    names: slots.map((slot) => `${slot.kind ?? 'failed test'} from ${steps[slot.step].name}`),
    kind: column(slots, (slot) => (slot.kind === undefined ? -1 : kinds.indexOf(slot.kind))),
    step: column(slots, (slot) => slot.step),
    kindNames: kinds,
  };
}

/** Chances by option, numbered as they are added. */
export class Chances {
  private readonly rows: Chance[] = [];
  constructor(private readonly names: Names) {}

  add(chance: Chance): number {
    return this.rows.push(chance) - 1;
  }

  columns(): Model['chances'] {
    const { rows, names } = this;
    const optionOf = (option: string): number => names.option.get(option) ?? -1;
    return {
      base: Float64Array.from(rows, (row) => row.usual),
      start: starts(rows, (row) => row.byOption),
      option: entriesOf(
        rows,
        (row) => row.byOption,
        (entry) => optionOf(entry.option),
      ),
      value: entriesOf(
        rows,
        (row) => row.byOption,
        (entry) => names.value(entry.option, entry.value),
      ),
      chance: Float64Array.from(rows.flatMap((row) => row.byOption.map((entry) => entry.chance))),
    };
  }
}

interface Then {
  readonly kind: number;
  readonly repairDraw: number;
  readonly target: number;
  readonly limit: number;
  readonly scrapAtLimit: boolean;
}

/** What follows finds, numbered as they are added. */
export class Thens {
  private readonly rows: Then[] = [];
  constructor(
    private readonly draws: Draws,
    private readonly routes: LaidRoutes,
  ) {}

  /** `what` is the kind of defect, or the failed test, for the stream of the repair. */
  add(step: string, what: string, { then }: Find): number {
    const none = { repairDraw: -1, target: -1, limit: 0, scrapAtLimit: false };
    switch (then.kind) {
      case 'repair':
        return this.push({
          ...none,
          kind: REPAIR,
          repairDraw: this.draws.add(`${step}/repair ${what}`, then.work),
        });
      case 'carry':
        return this.push({
          ...none,
          kind: CARRY,
          repairDraw: this.draws.add(`${step}/carried ${what}`, then.work),
        });
      case 'scrap':
        return this.push({ ...none, kind: SCRAP });
      case 'back': {
        const target = this.routes.stepId.get(then.to);
        if (target === undefined)
          throw new Error(
            `expected a known step to send back to, saw '${then.to}'; the scenario must be checked ` +
              'before it is compiled',
          );
        return this.push({
          ...none,
          kind: SEND_BACK,
          target,
          limit: then.limit,
          scrapAtLimit: then.atLimit === 'scrap',
        });
      }
    }
  }

  columns(): Model['thens'] {
    const { rows } = this;
    return {
      count: rows.length,
      kind: column(rows, (row) => row.kind),
      repairDraw: column(rows, (row) => row.repairDraw),
      target: column(rows, (row) => row.target),
      limit: column(rows, (row) => row.limit),
      scrapAtLimit: Uint8Array.from(rows, (row) => Number(row.scrapAtLimit)),
    };
  }

  private push(row: Then): number {
    return this.rows.push(row) - 1;
  }
}
