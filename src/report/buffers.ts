import type { BufferResults } from '../study/buffers/results.js';
import { intervalName, number } from '../study/format.js';

/** The level of the intervals of the layouts compared, and what for. */
export const togetherText = ({ eachLevel, level }: BufferResults): string =>
  `${intervalName(eachLevel)}, so that what the chosen layout ships and all differences to it hold ` +
  `together with ${number(level * 100)} %`;
