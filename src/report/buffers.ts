import type { BufferResults } from '../study/buffers/results.js';
import { intervalName, number } from '../study/format.js';

/** The level of the intervals of the layouts compared, and what for. */
export const togetherText = ({ eachLevel, level }: BufferResults): string =>
  `${intervalName(eachLevel)}, so that what the chosen layout ships and all differences to it hold ` +
  `together with ${number(level * 100)} %`;

/** Of the layout for the whole budget: the best only where all were tried. */
export const mostNamed = ({ best, search }: Pick<BufferResults, 'best' | 'search'>): string =>
  `${search.within === null ? 'found for' : 'best of'} ${best?.total ?? ''}`;
