import type { MeasureResult, ZoneResult } from '../study/compare/results.js';
import { toldCombination } from '../study/factors/best.js';
import type {
  CombinationResult,
  EffectMeasure,
  EffectResult,
  FactorsResults,
} from '../study/factors/results.js';
import { count, intervalName, number } from '../study/format.js';
import type { Estimate } from '../study/statistics/estimate.js';
import { type MeasureCompared, measured } from './compare.js';

/** A measure with its value in the scenario as it is, each effect on it and each combination. */
export interface MeasureByFactors extends MeasureResult {
  readonly zone: ZoneResult;
  readonly base: Estimate;
  readonly effects: readonly (EffectMeasure & { readonly effect: EffectResult })[];
  readonly combinations: readonly (CombinationResult['compared'][number] & {
    readonly combination: CombinationResult;
  })[];
}

/** The results of an experiment by measure. */
export function byMeasureOf({ measures, base, effects, combinations }: FactorsResults): MeasureByFactors[] {
  return measures.map((measure) => ({
    ...measure,
    base: measured(base.values, measure).value,
    effects: effects.map((effect) => ({ ...measured(effect.measures, measure), effect })),
    combinations: combinations.map((combination) => ({
      ...measured(combination.compared, measure),
      combination,
    })),
  }));
}

/** The level and what for: `99.9 % CI, so that all 60 intervals .. hold together with 95 %`. */
export const togetherFactors = ({ eachLevel, intervals, level }: FactorsResults): string =>
  `${intervalName(eachLevel)}, so that all ${count(intervals, 'effect')} and differences hold ` +
  `together with ` +
  `${number(level * 100)} %`;

/** Of two together: better than the sum of both, and so on. */
export const togetherWords = (words: string): string =>
  /better|worse/.test(words)
    ? `${words} than the sum`
    : words === 'no difference that matters'
      ? 'the sum, within what matters'
      : words;

/** It may be what two other factors, or two of them, do together. */
export const isMixed = ({ mixedWith }: EffectResult): boolean => mixedWith.some((word) => word.length <= 2);

/** What of a combination is other than today, `colour booths 2`; all of it where none of them is today. */
export function changesOf({ combinations, factors }: FactorsResults, c: number): string {
  const { name = '', levels = [] } = combinations[c] ?? {},
    today = combinations.find(({ isBase }) => isBase)?.levels;
  if (today === undefined) return name;
  return levels
    .flatMap((l, f) =>
      l === today[f] ? [] : [`${factors[f]?.name ?? ''} ${factors[f]?.levels[l]?.name ?? ''}`],
    )
    .join(', ');
}

/** The combination that is told, as a comparison has its what-ifs. */
export function onlyTold(
  { combinations, ...measure }: MeasureByFactors,
  results: FactorsResults,
): MeasureCompared {
  const c = toldCombination(results);
  return {
    ...measure,
    whatIfs: combinations.slice(c, c + 1).map((each) => ({ ...each, whatIf: changesOf(results, c) })),
  };
}

/** `with “colour booths 2”`: on which combination things were tried; null: on the scenario as it is. */
export function triedOn(results: FactorsResults): string | null {
  const c = toldCombination(results);
  return results.combinations[c]?.isBase === true ? null : `with “${changesOf(results, c)}”`;
}
