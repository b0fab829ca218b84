import { sumOf } from '../statistics/sums.js';
import type { Spot } from './spots.js';

/** What a share of throughput is a share of: no limit in the spots studied, or the layout as it is. */
export type ShareOf = 'unlimited' | 'present';

/** What is asked: the most places; a rate; or a share of what another layout ships, 0.98 for 98 %. */
export type BufferGoal =
  | { readonly kind: 'budget'; readonly places: number }
  | { readonly kind: 'target'; readonly rate: number }
  | { readonly kind: 'share'; readonly share: number; readonly of: ShareOf };

/** Whether a goal can be asked of these spots; a RangeError says what can be. */
export function checkGoal(goal: BufferGoal, spots: readonly Spot[]): void {
  const least = sumOf(spots, (spot) => spot.least);
  if (goal.kind === 'budget' && goal.places < least)
    throw new RangeError(
      `budget: expected at least ${least} places, without which the scenario cannot run, got ${goal.places}`,
    );
}
