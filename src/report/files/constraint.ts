import type { ConstraintResult, Tried } from '../../study/constraint/results.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { rungsOf, trialVerdict, waitingFor } from '../constraint.js';
import { estimate, type FileTable, fileTable } from './folder/csv.js';

interface Line {
  readonly row: 'arithmetic allows' | 'cause' | 'shipped';
  readonly cause: string;
  readonly perDay: Estimate | { readonly mean: number; readonly low: null; readonly high: null };
}

/**
 * From the rate that arithmetic allows to the rate shipped: a row each, and between them one a cause, units a
 * working day, losses below 0, so that all rows but the last add up to it; null where there is no ladder.
 */
export function lossesData(found: ConstraintResult | null): FileTable | null {
  const ladder = found?.ladder ?? null;
  if (ladder === null) return null;
  const { of, allowedPerDay, shippedPerDay } = ladder;
  const lines: Line[] = [
    { row: 'arithmetic allows', cause: '', perDay: { mean: allowedPerDay, low: null, high: null } },
    ...rungsOf(ladder).map(({ cause, change }): Line => ({ row: 'cause', cause, perDay: change })),
    { row: 'shipped', cause: '', perDay: shippedPerDay },
  ];
  return fileTable(lines, [
    ['row', 'row'],
    ['kind', () => of.kind],
    ['name', () => of.name],
    ['site', () => of.site],
    ['cause', 'cause'],
    ['per_day_mean', ({ perDay }) => perDay.mean],
    ['per_day_low', ({ perDay }) => perDay.low],
    ['per_day_high', ({ perDay }) => perDay.high],
  ]);
}

/** One row a trial, by gain; null where nothing was tried. */
export function trialsData(found: ConstraintResult | null): FileTable | null {
  if (found === null || found.tried.length === 0) return null;
  return fileTable(found.tried, [
    ['tried', 'what'],
    ['kind', ({ thing }) => thing.kind],
    ['name', ({ thing }) => thing.name],
    ['site', ({ thing }) => thing.site],
    ...estimate('gain_per_day', ({ gain }: Tried) => gain),
    ['level', ({ gain }) => gain.level],
    ['verdict', (tried) => trialVerdict(tried, found)],
    ['waiting_units', (tried) => waitingFor(tried, found)],
  ]);
}
