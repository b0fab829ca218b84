import { number } from '../format.js';
import type { ShareOf } from './goal.js';
import type { BufferResults } from './results.js';

/** `4.5 units a working day`, `98 % of what unlimited places ship (4.66 units a working day)`. */
export function askedText({ goal, unit }: Pick<BufferResults, 'goal' | 'unit'>): string {
  if (goal.kind === 'budget') return '';
  const rate = `${number(goal.rate)} ${unit}`;
  return goal.relative === null ? rate : `${shareText(goal.relative)} (${rate})`;
}

/** `98 % of what unlimited places ship`. */
export const shareText = ({ share, of }: { readonly share: number; readonly of: ShareOf }): string =>
  `${number(100 * share)} % of what ` +
  (of === 'unlimited' ? 'unlimited places ship' : 'the layout as it is ships');
