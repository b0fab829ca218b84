import type { PricedLayout } from '../study/buffers/around/results.js';
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
