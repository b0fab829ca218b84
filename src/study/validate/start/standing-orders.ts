import type { Model } from '../../../flow/model/model.js';
import type { OpenItem, Order } from '../../../scenario/types/programme.js';
import type { Item } from './open-items.js';
import type { Placed } from './opening.js';

/** A unit of the opening in the words of a scenario. */
export type StandingOrder = Pick<Order, 'build' | 'at' | 'options' | 'doneMin' | 'open' | 'sentBackBy'>;

/** Digits of a chance that are written. */
const DIGITS = 3;

export function standingOrder(
  { unit, step, options, items, sentBy, done }: Placed,
  { steps, slots }: Model,
): StandingOrder {
  const nameOf = (id: number): string => steps.names[id] ?? '';
  const finderOf = (find: number): number => {
    let step = 0;
    while ((steps.findStart[step + 1] ?? Infinity) <= find) step++;
    return step;
  };
  const itemOf = ({ slot, find, chance }: Item): OpenItem => ({
    defect: slot < 0 ? undefined : slots.kindNames[slots.kind[slot] ?? -1],
    madeAt: slot < 0 ? undefined : nameOf(slots.step[slot] ?? -1),
    foundAt: find < 0 ? undefined : nameOf(finderOf(find)),
    chance: Number(chance.toPrecision(DIGITS)),
  });
  return {
    build: unit,
    at: nameOf(step),
    options,
    doneMin: done === 0 ? undefined : Math.round(done * 10) / 10,
    open: items.length === 0 ? undefined : items.map(itemOf),
    sentBackBy: sentBy < 0 ? undefined : nameOf(sentBy),
  };
}
