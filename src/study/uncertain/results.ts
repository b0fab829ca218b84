import type { UncertainInput, WhyLeft } from './inputs.js';
import type { RandomEffects, VarianceShare } from './random-effects.js';

/** What is told with the inputs drawn anew. */
export type InputsMeasureId = 'shipped' | 'lead time' | 'last unit';

/** A mean, with an interval that covers what is not known of the measured inputs too. */
export interface InputsMeasure {
  readonly id: InputsMeasureId;
  /** `units a working day`, `days`, `days since the start`. */
  readonly unit: string;
  /** Pairs of replications that share a draw of the inputs, and have a value both. */
  readonly pairs: number;
  readonly level: number;
  readonly mean: number;
  /** Null of fewer than two pairs. */
  readonly low: number | null;
  readonly high: number | null;
  /** The same for chance alone, with the inputs at these draws. */
  readonly chanceAlone: { readonly low: number; readonly high: number } | null;
  /** Of one replication: in the square of the unit. */
  readonly variance: { readonly input: number; readonly chance: number };
  /** What input has of the variance behind the interval, and of that of one replication. */
  readonly inputOfInterval: VarianceShare | null;
  readonly inputOfReplication: VarianceShare | null;
  /** Of the last unit: the same as ISO dates. */
  readonly dates?:
    | { readonly mean: string | null; readonly low: string | null; readonly high: string | null }
    | undefined;
}

/** What is known of the inputs that were measured, and what that means for the results. */
export interface InputsResult {
  /** Draws of all inputs; each is used in two replications. */
  readonly draws: number;
  readonly drawn: readonly (Pick<UncertainInput, 'path' | 'words' | 'n'> & {
    readonly kind: UncertainInput['of']['kind'];
  })[];
  /** Values of which the scenario speaks that stay as written. */
  readonly left: readonly { readonly path: string; readonly words: string; readonly why: WhyLeft }[];
  readonly measures: readonly InputsMeasure[];
}

/** As a measure. */
export function measureOf(
  id: InputsMeasureId,
  unit: string,
  found: RandomEffects,
  level: number,
): InputsMeasure {
  const { groups, mean, half, halfWithin, ofGroups, ofValues, shareOfInterval, shareOfValue } = found;
  return {
    ...{ id, unit, pairs: groups, level, mean },
    low: half === null ? null : Math.max(0, mean - half),
    high: half === null ? null : mean + half,
    chanceAlone:
      halfWithin === null ? null : { low: Math.max(0, mean - halfWithin), high: mean + halfWithin },
    variance: { input: ofGroups, chance: ofValues },
    inputOfInterval: shareOfInterval,
    inputOfReplication: shareOfValue,
  };
}
