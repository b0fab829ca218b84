import type { BufferResults } from '../../study/buffers/results.js';
import { exact, number } from '../../study/format.js';
import { lastUnitText, planSays } from './last-unit.js';

/** What to do: the places of each spot, and that parts of it were not tried. */
export const placesText = ({ spots }: BufferResults, isSettled: boolean): string =>
  `${isSettled ? 'Have' : 'Try more builds; if they settle it, have'} waiting places at ` +
  `${spots.map(({ name, chosen, present }) => `${name} ${chosen} (today ${present})`).join(', ')}. ` +
  'Do all of it or none: parts of it were not tried.';

/** When the last unit is out with the layout chosen; nothing without a quantity. */
export function dates({ lastUnit: { chosen, present }, plannedEnd }: BufferResults): string[] {
  const [out, today] = [chosen, present].map(lastUnitText);
  if (out == null) return [];
  const asToday = today == null ? '' : today === out ? ', as today' : `; today ${today}`;
  return [`Last unit out ${out}${asToday}${planSays(plannedEnd, chosen)}.`];
}

/** What the floor for the waiting places costs a day. */
export function floor({ chosen, present, currency }: BufferResults): string[] {
  if (chosen.costPerDay === null || present.costPerDay === null)
    return ['The scenario gives a waiting place no price.'];
  return [
    `Floor for the ${exact(chosen.total)} costs ${number(chosen.costPerDay)} ${currency ?? ''} a day, ` +
      `${number(present.costPerDay)} for today’s ${exact(present.total)}; what the move costs is not known ` +
      'here.',
  ];
}
