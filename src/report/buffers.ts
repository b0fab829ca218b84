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
