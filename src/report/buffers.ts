import type { PricedLayout } from '../study/buffers/around/results.js';
import type { CaseLayout, CasesResult } from '../study/buffers/cases/results.js';
import type { BufferResults } from '../study/buffers/results.js';
import { count, intervalName, number } from '../study/format.js';

/** The level of the intervals of the layouts compared, and what for. */
export const togetherText = ({ eachLevel, level }: BufferResults): string =>
  `${intervalName(eachLevel)}, so that what the chosen layout ships and all differences to it hold ` +
  `together with ${number(level * 100)} %`;

/** Which spots were not looked at place by place, and why; nothing where all were. */
export function leftOutText({ placeByPlace, unit }: BufferResults): string[] {
  const left = placeByPlace?.leftOut ?? null;
  if (left === null) return [];
  return [
    `Left out, as a place more or fewer changed at most ${number(left.most)} ${unit} there in a first look ` +
      `of ${count(left.replications, 'replication')}: ${left.names.join(', ')}`,
  ];
}

/** Of the layout for the whole budget: the best only where all were tried. */
export const mostNamed = ({ best, search }: Pick<BufferResults, 'best' | 'search'>): string =>
  `${search.within === null ? 'found for' : 'best of'} ${best?.total ?? ''}`;

/** What a layout is beside the chosen one; that for the budget is the best only where all were tried. */
export const roleName = ({ role }: PricedLayout, { search }: Pick<BufferResults, 'search'>): string =>
  role === 'best' && search.within === null ? 'found' : role;

/** What a layout is, of those compared in several cases: `chosen`, `as it is`, `alone: ferry out`. */
export function caseRole(layout: CaseLayout, { layouts, cases }: CasesResult): string {
  const names = {
      chosen: 'chosen',
      best: 'for the whole budget',
      mean: 'by the mean',
      present: 'as it is',
    } as const,
    alone = cases.filter((each) => layouts[each.alone] === layout).map(({ name }) => name ?? 'as it is');
  return [
    ...layout.roles.map((role) => names[role]),
    ...(alone.length === 0 ? [] : [`alone: ${alone.join(', ')}`]),
  ].join('; ');
}

/** A share that is lost, `2.3 %`: a mean, with no more digits than its interval bears as a rule. */
export const lostText = (share: number): string => `${number(Math.round(1000 * share) / 10)} %`;

/** The level of the intervals of layouts in several cases, and what for. */
export const casesTogether = ({ eachLevel }: CasesResult, level: number): string =>
  `${intervalName(eachLevel)}, so that all of them hold together with ${number(level * 100)} %`;
