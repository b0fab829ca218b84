import type { ComparedMeasure, CompareResults, MeasureResult, ZoneResult } from '../study/compare/results.js';
import { count, intervalName, number } from '../study/format.js';
import type { Estimate } from '../study/statistics/estimate.js';

/** A measure with its value in the base and, for each what-if, its value there and the difference. */
export interface MeasureCompared extends MeasureResult {
  readonly zone: ZoneResult;
  readonly base: Estimate;
  readonly whatIfs: readonly (ComparedMeasure & { readonly whatIf: string })[];
}

/** The results of a comparison by measure; they hold them by variant. */
export function byMeasure({ measures, base, whatIfs }: CompareResults): MeasureCompared[] {
  return measures.map((measure) => ({
    ...measure,
    base: measured(base.values, measure).value,
    whatIfs: whatIfs.map(({ name, compared }) => ({ ...measured(compared, measure), whatIf: name })),
  }));
}

/** What a measure is called where there is no room to explain a quantile. */
export const measureName = ({ id, name }: Pick<MeasureResult, 'id' | 'name'>): string =>
  id === 'lead p90' ? 'lead time, nine in ten units' : name;

/** The level and what for: `99.8 % CI, so that all 24 differences hold together with 95 %`. */
export function togetherText({ whatIfs, measures, level, differenceLevel }: CompareResults): string {
  return (
    `${intervalName(differenceLevel)}, so that all ` +
    `${count(whatIfs.length * measures.length, 'difference')} hold together with ${number(level * 100)} %`
  );
}

/** What is held of a measure; there always is something. */
export function measured<Of extends { readonly measure: string }>(
  values: readonly Of[],
  { id }: MeasureResult,
): Of {
  const found = values.find(({ measure }) => measure === id);
  if (found === undefined) throw new RangeError(`measures of a variant: expected ${id}, got none`);
  return found;
}
