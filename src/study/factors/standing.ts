import { boundsOf } from '../statistics/estimate.js';
import type { EffectMeasure, EffectResult, FactorsResults } from './results.js';

/** An effect as it is on the throughput. */
export interface Shipped extends EffectMeasure {
  readonly effect: EffectResult;
}
type Results = Pick<FactorsResults, 'effects' | 'factors' | 'design'>;

/** What each factor, and each two together, do to the throughput. */
export const shippedOf = ({ effects }: Pick<Results, 'effects'>): Shipped[] =>
  effects.flatMap((effect) =>
    effect.measures
      .filter(({ measure }) => measure === 'throughput')
      .map((each): Shipped => ({ ...each, effect })),
  );

/** Surely more or less than none, however little. */
export const isSeen = ({ verdict }: EffectMeasure): boolean => /better|worse/.test(verdict);
const isWithin = ({ verdict }: EffectMeasure): boolean => verdict === 'no difference that matters';

/** How large an effect may be without its sign, at the least and at the most. */
function sizeOf({ difference }: EffectMeasure): { readonly least: number; readonly most: number } {
  const { low, high } = boundsOf(difference);
  return { least: Math.max(0, low, -high), most: Math.max(high, -low) };
}

/** What the effects of the factors by themselves say of which matters. */
export interface Ranking {
  /** By the largest effect of each: seen, the largest first. */
  readonly seen: readonly Shipped[];
  /** How many of the first may be the largest: 1 where it surely is; 0 where none is seen. */
  readonly leaders: number;
  /** Factors by numbers, of which all is within the zone: by themselves and with each other one. */
  readonly idle: readonly number[];
  /** Within the zone by themselves, but perhaps not with another, or not told from others. */
  readonly level: readonly number[];
  readonly open: readonly number[];
}

/**
 * A factor is said to be the largest, or not to matter, only by whole intervals, which hold together. Not to
 * matter takes all that it does with each other factor too, and a design in which nothing of that may be
 * something else of one factor or two.
 */
export function rankingOf(results: Results): Ranking {
  const all = shippedOf(results),
    { resolution } = results.design,
    isClear = resolution === null || resolution === 'V';
  const ofFactor = (f: number): Shipped[] =>
    all.filter(({ effect: { kind, factors } }) => kind === 'alone' && factors[0] === f);
  const largest = results.factors.flatMap((_, f) =>
    ofFactor(f)
      .filter(isSeen)
      .sort((a, b) => Math.abs(b.difference.mean) - Math.abs(a.difference.mean))
      .slice(0, 1),
  );
  const seen = largest.sort((a, b) => Math.abs(b.difference.mean) - Math.abs(a.difference.mean)),
    [first] = seen,
    others = all.filter(
      ({ effect: { kind, factors } }) => kind === 'alone' && factors[0] !== first?.effect.factors[0],
    ),
    rivals = first === undefined ? [] : others.filter((each) => sizeOf(each).most >= sizeOf(first).least);
  const rivalFactors = new Set(rivals.map(({ effect }) => effect.factors[0])),
    numbers = [...results.factors.keys()],
    within = numbers.filter((f) => ofFactor(f).every(isWithin)),
    idle = within.filter(
      (f) => isClear && all.filter(({ effect }) => effect.factors.includes(f)).every(isWithin),
    );
  return {
    seen: [
      ...seen.slice(0, 1),
      ...seen.slice(1).filter(({ effect }) => rivalFactors.has(effect.factors[0])),
      ...seen.slice(1).filter(({ effect }) => !rivalFactors.has(effect.factors[0])),
    ],
    leaders: first === undefined ? 0 : 1 + rivalFactors.size,
    idle,
    level: within.filter((f) => !idle.includes(f)),
    open: numbers.filter((f) => !within.includes(f) && !ofFactor(f).some(isSeen)),
  };
}

/** What two factors do together on the throughput: more than their sum, less, within the zone, or open. */
export function togetherOf(results: Results): {
  readonly more: readonly Shipped[];
  readonly less: readonly Shipped[];
  readonly within: readonly Shipped[];
  readonly open: readonly Shipped[];
} {
  const all = shippedOf(results)
    .filter(({ effect: { kind } }) => kind === 'together')
    .sort((a, b) => Math.abs(b.difference.mean) - Math.abs(a.difference.mean));
  return {
    more: all.filter((each) => isSeen(each) && each.difference.mean > 0),
    less: all.filter((each) => isSeen(each) && each.difference.mean < 0),
    within: all.filter(isWithin),
    open: all.filter((each) => !isSeen(each) && !isWithin(each)),
  };
}
