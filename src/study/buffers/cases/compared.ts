import { defined } from '../../lists.js';
import { familyLevel } from '../../statistics/difference.js';
import { boundsOf } from '../../statistics/estimate.js';
import { meanInterval } from '../../statistics/interval.js';
import { amount } from '../../statistics/skewed-interval.js';
import { mean } from '../../statistics/sums.js';
import type { Prepared } from '../prepare.js';
import type { Trials } from '../search/trials.js';
import { isSameLayout, type Layout, placesOf } from '../spots.js';
import type { Yardstick } from './case-trials.js';
import { type Kept, keptOf, lessBy, lossOf, moreOf, weakestOf, worstMoreOf } from './paired-cases.js';
import type { CaseLayout, CaseResult, CasesResult } from './results.js';
import type { Cases } from './spots-of-all.js';

/** What was found for all cases, run in all of them on fresh replications. */
export interface Told {
  readonly cases: Cases;
  /** The scenario as it is first. */
  readonly prepared: readonly Prepared[];
  /** Of each case: nothing of these replications was used before. */
  readonly told: readonly Trials[];
  /** The layout to be built first; each once. */
  readonly layouts: readonly Layout[];
  /** For the whole budget the best worst case, and for the best mean; null for a target. */
  readonly best: Layout | null;
  readonly forMean: Layout | null;
  readonly alone: readonly Layout[];
  /** What a target asks, or by what a budget is measured. */
  readonly yardstick: Yardstick;
  readonly isTarget: boolean;
  readonly zone: number;
  readonly level: number;
  /** The most places in all; Infinity for a target. */
  readonly most: number;
  readonly within: number | null;
}

/** Sets the layouts against each other in all cases. All intervals hold together (Bonferroni). */
export function casesResult(study: Told): CasesResult {
  const { cases, prepared, told, layouts, yardstick, isTarget, alone, zone, level } = study,
    chosen = defined(layouts[0]),
    n = prepared.length,
    // What the chosen layout ships and keeps in each case, and is above what is asked; what the others keep
    // less in each case than it does in each, and in the mean.
    each = n * (2 + Number(isTarget)) + (layouts.length - 1) * (n * n + 1),
    eachLevel = familyLevel(level, each);
  const values = (layout: Layout, c: number): readonly number[] => defined(told[c]).values(layout),
    { unlimited } = defined(prepared[0]).hunt,
    against = (c: number): Layout => (isTarget ? unlimited : (yardstick.of?.[c] ?? unlimited)),
    kept = layouts.map((layout) => told.map((each, c) => keptOf(each.values(layout), values(against(c), c)))),
    ofChosen = defined(kept[0]);
  const shares = ofChosen.map((each) => meanInterval(each, eachLevel)),
    weakest = weakestOf(shares);
  const compared = layouts.map((layout, l): CaseLayout => {
    const its = defined(kept[l]),
      more = ofChosen.map((one) => its.map((other) => moreOf(one, other, eachLevel))),
      inSame = more.map((row, c) => defined(row[c])),
      its_ = l === 0 ? weakest : weakestOf(inSame.map((each, c) => lessBy(defined(shares[c]), each)));
    return {
      ...{ places: layout, total: placesOf(layout) },
      costPerDay: defined(prepared[0]).prices?.floorOf(layout) ?? null,
      roles: rolesOf(study, layout),
      cases: its.map((each, c) => ({
        rate: mean(values(layout, c)),
        loss: 1 - mean(each),
        more: l === 0 ? null : defined(inSame[c]),
      })),
      weakest: its_.at,
      orElse: its_.orElse,
      worst: lossOf(its_.kept),
      worstMore: l === 0 ? null : worstMoreOf(weakest, its_, more),
      mean: mean(its.map((each) => 1 - mean(each))),
      meanMore: l === 0 ? null : moreOf(overall(ofChosen), overall(its), eachLevel),
    };
  });
  const of = (c: number): CaseResult => {
    const whatIf = cases.whatIfs[c - 1],
      asks = isTarget ? wanted(yardstick, defined(told[c]), c) : null;
    return {
      name: whatIf?.name ?? null,
      note: whatIf?.note ?? null,
      changes: whatIf?.changes ?? [],
      over: defined(prepared[c]).measure.over,
      unlimited: mean(values(unlimited, c)),
      best: isTarget ? null : against(c),
      bound: defined(prepared[c]).bound,
      asked: asks === null ? null : mean(asks),
      rate: amount(values(chosen, c), eachLevel),
      aboveAsked: asks === null ? null : moreOf(values(chosen, c), asks, eachLevel),
      alone: layouts.findIndex((layout) => isSameLayout(layout, defined(alone[c]))),
      isAsBase:
        c > 0 &&
        [...layouts, unlimited].every((layout) =>
          values(layout, c).every((rate, r) => rate === values(layout, 0)[r]),
        ),
    };
  };
  const all = prepared.map((_, c) => of(c));
  return {
    file: cases.file,
    replications: defined(told[0]).values(chosen).length,
    eachLevel,
    cases: all,
    layouts: compared,
    within: study.within,
    isSettled: !isTarget
      ? compared.every(
          ({ worstMore, total }) =>
            worstMore === null || total > study.most || boundsOf(worstMore).low > -zone,
        )
      : all.every(({ aboveAsked }) => boundsOf(aboveAsked).low >= 0) ||
        all.some(({ aboveAsked }) => boundsOf(aboveAsked).high < 0),
  };
}

/** Mean over the cases, by replication. */
const overall = (kept: Kept): number[] =>
  defined(kept[0]).map((_, r) => mean(kept.map((row) => defined(row[r]))));

/** What a target asks in a case, by replication. */
const wanted = ({ of, times }: Yardstick, told: Trials, c: number): number[] =>
  of === null
    ? Array.from({ length: told.most }, () => times)
    : told.values(defined(of[c])).map((rate) => times * rate);

function rolesOf({ layouts, best, forMean, prepared }: Told, layout: Layout): CaseLayout['roles'] {
  const is = (other: Layout | null | undefined): boolean => other != null && isSameLayout(other, layout);
  return [
    ...(is(layouts[0]) ? (['chosen'] as const) : []),
    ...(is(best) ? (['best'] as const) : []),
    ...(is(forMean) ? (['mean'] as const) : []),
    ...(is(prepared[0]?.hunt.present) ? (['present'] as const) : []),
  ];
}
