import { CARRY, REPAIR, SCRAP, SEND_BACK, type Model } from '../flow/model.js';
import { column, entriesOf, starts } from './compile-columns.js';
import type { Draws } from './compile-draws.js';
import type { Names } from './compile-names.js';
import type { LaidRoutes, LaidStep } from './compile-route.js';
import { makesNote } from './quality-of-step.js';
import type { Chance, Find } from './scenario.js';

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
            `expected a known step to send back to, saw '${then.to}'; the scenario must be checked before it is compiled`,
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
