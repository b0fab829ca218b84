import type { Change } from '../../../scenario/what-ifs.js';
import type { Estimate } from '../../statistics/estimate.js';
import type { Bound } from '../bound.js';

/** A case: the scenario as it is, or one of its what-ifs. */
export interface CaseResult {
  /** null: the scenario as it is. */
  readonly name: string | null;
  readonly note: string | null;
  readonly changes: readonly Change[];
  /** Over which time its rates are counted, in words. */
  readonly over: string;
  /** Without a limit in any of the spots: mean, in the unit of the study; 0: it stands still all the same. */
  readonly unlimited: number;
  /** The best found for the budget in this case alone, by which losses are told; null for a target. */
  readonly best: readonly number[] | null;
  /** What no places can exceed, by arithmetic; null where it does not tell. */
  readonly bound: Bound | null;
  /** What a target asks in this case, in the unit of the study; null for a budget. */
  readonly asked: number | null;
  /** What the chosen layout ships in it. */
  readonly rate: Estimate;
  /** What the chosen layout ships more than a target asks, paired; null for a budget. */
  readonly aboveAsked: Estimate | null;
  /** The layout that this case alone would take: its number in `layouts`. */
  readonly alone: number;
  /** Whether every layout compared shipped in every replication just what it ships in the first case. */
  readonly isAsBase: boolean;
}

/** A layout in one case. */
export interface InCase {
  /** Units in the unit of the study, mean. */
  readonly rate: number;
  /**
   * What it loses against the best layout found for that case alone, for a target against no limit, as a
   * share of what that ships: 0.02 for 2 %; below 0 it ships more.
   */
  readonly loss: number;
  /** By how much the chosen layout loses less, as a share, paired; null of the chosen one. */
  readonly more: Estimate | null;
}

/** A layout compared in all cases. */
export interface CaseLayout {
  readonly places: readonly number[];
  readonly total: number;
  /** Floor a day; null where `costs` give a place no price. */
  readonly costPerDay: number | null;
  /**
   * What it is: to be built; the best worst case found for the whole budget; the one for the best mean; as it
   * is. That cases take it alone is said by them.
   */
  readonly roles: readonly ('chosen' | 'best' | 'mean' | 'present')[];
  /** By case. */
  readonly cases: readonly InCase[];
  /** The case in which it loses most by the means, its number, and the others that may be that one. */
  readonly weakest: number;
  readonly orElse: readonly number[];
  /** Loss in that case, a share; of the chosen layout with the interval of the worst case. */
  readonly worst: Estimate;
  /** By how much its loss in its weakest case is larger than that of the chosen layout in its own. */
  readonly worstMore: Estimate | null;
  /** Loss in the mean over the cases, a share. */
  readonly mean: number;
  /** By how much that is larger than the mean loss of the chosen layout, paired; null of the chosen one. */
  readonly meanMore: Estimate | null;
}

/** Sizes for several cases at once. */
export interface CasesResult {
  /** Name of the file of what-ifs. */
  readonly file: string;
  /** Fresh ones of every layout in every case, used by nothing else. */
  readonly replications: number;
  /** Level of each interval, so that all of them hold together. */
  readonly eachLevel: number;
  /** The scenario as it is first. */
  readonly cases: readonly CaseResult[];
  /** The chosen one first. */
  readonly layouts: readonly CaseLayout[];
  /** How many layouts there are within the budget, or with fewer places; null: not all were tried. */
  readonly within: number | null;
  /**
   * Whether no other layout compared surely or possibly does better by more than the zone: by the whole
   * interval of its worst case against that of the chosen one. Of a target: whether it is settled.
   */
  readonly isSettled: boolean;
}
