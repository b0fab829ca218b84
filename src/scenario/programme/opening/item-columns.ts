import type { Model } from '../../../flow/model/model.js';
import { noItems, type OpenItemColumns } from '../../../flow/model/orders.js';
import { at, ragged } from '../../lookup/columns.js';
import { type Compilation, NO_DRAW } from '../../lookup/compilation.js';
import { joinIndex } from '../../lookup/joins.js';
import { routesOf } from '../../lookup/placed.js';
import type { Slot } from '../../steps/defects.js';
import type { OpenItem, Order } from '../../types/programme.js';
import type { Scenario } from '../../types/scenario.js';
import type { RouteEntry } from '../../types/steps.js';
import { makersOf, type StandsAt, senderOf, stateOf } from './items.js';

/** What items are numbered by. */
export interface ItemIds {
  readonly slots: readonly Slot[];
  readonly steps: Model['steps'];
}

const nameOf = (entry: RouteEntry): string => (entry.kind === 'lane' ? entry.lane : entry.name);
const standsAt = ({ route }: Scenario, order: Order): StandsAt => ({
  order,
  index: route.findIndex((entry) => nameOf(entry) === order.at),
});

/** By unit of the opening: the step that sent it back; -1. */
export const senderIds = ({ scenario, laid }: Compilation, opening: readonly Order[]): Int32Array =>
  Int32Array.from(opening, (order) => {
    const sender = senderOf(scenario, standsAt(scenario, order));
    return sender === undefined ? -1 : laid.stepId(sender.step.name);
  });

/** The items of the units of the opening, in the order of the model. */
export function itemColumns(all: Compilation & ItemIds, opening: readonly Order[]): OpenItemColumns {
  if (opening.every(({ open }) => open === undefined)) return noItems(opening.length);
  const items = ragged(opening, (order) => {
    const stands = standsAt(all.scenario, order);
    return (order.open ?? []).map((item) => itemRow(all, stands, item));
  });
  return {
    start: items.start,
    slot: items.column(({ slot }) => slot),
    state: Uint8Array.from(items.entries, ({ state }) => state),
    find: items.column(({ find }) => find),
    cameAt: items.column(({ cameAt }) => cameAt),
    chance: Float64Array.from(items.entries, ({ chance }) => chance),
    draw: items.entries.some(({ chance }) => chance < 1) ? all.draws.chance('opening/hidden items') : NO_DRAW,
  };
}

interface ItemRow {
  readonly slot: number;
  readonly state: number;
  readonly find: number;
  readonly cameAt: number;
  readonly chance: number;
}

function itemRow(
  { scenario, laid, slots, steps }: Compilation & ItemIds,
  stands: StandsAt,
  item: OpenItem,
): ItemRow {
  const { defect, madeAt, foundAt, chance } = item,
    state = stateOf(scenario, stands, item),
    maker =
      defect === undefined
        ? undefined
        : makersOf(scenario, stands, defect, foundAt).find(
            ({ step }) => madeAt === undefined || step.name === madeAt,
          );
  if (typeof state === 'string' || (defect !== undefined && maker === undefined))
    throw new Error('expected open items that were checked, got others; check the scenario first');
  const made =
      maker === undefined
        ? -1
        : laid.steps.findIndex((one) => one.kind === 'step' && one.name === maker.step.name),
    slot = slots.findIndex(({ kind, step }) => defect !== undefined && kind === defect && step === made),
    [unit] = routesOf(scenario),
    joins = maker === undefined || maker.route === unit ? undefined : joinIndex(scenario, maker.route, unit);
  return {
    slot,
    state,
    find: foundAt === undefined ? -1 : findRow(steps, laid.stepId(foundAt), slot),
    cameAt: joins === undefined ? -1 : laid.stepId(nameOf(at(unit.entries, joins))),
    chance,
  };
}

/** The row of a step's finds for a slot; of a failed test -1. */
function findRow({ findStart, findSlot }: Model['steps'], step: number, slot: number): number {
  for (let find = at(findStart, step); find < at(findStart, step + 1); find++)
    if (at(findSlot, find) === slot) return find;
  throw new Error(`expected step ${step} to find slot ${slot}, got none; check the scenario first`);
}
