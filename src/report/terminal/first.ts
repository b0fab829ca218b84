import { intervalName } from '../../study/format.js';
import { type FirstScreen, linesOf, whole } from '../first/first.js';
import type { Piece } from './lines.js';

/**
 * What the first screen of the page says, with its words and figures: the answer, which is a paragraph of its
 * own and always the first; then its lines with all that is told behind them; then the answer with all that
 * was found. `notes` stand just under the answer.
 */
export const firstPieces = (first: FirstScreen, inFull: string, notes: readonly string[] = []): Piece[] => [
  first.answer,
  '',
  ...notes,
  ...linesOf(first).map((line) => `${line.name}: ${plainly(whole(line))}`),
  `${first.next.what}: ${first.next.command}`,
  `Besides: ${plainly(first.besides)}`,
  '',
  `In full: ${plainly(inFull)}`,
];

/** Without the short form of an interval's name. */
export const plainly = (text: string): string => text.replaceAll('% CI', '% interval');

/** Head of a column of intervals: `between (95 %)`. */
export const betweenHead = (level: number): string => `between (${intervalName(level).replace(' CI', '')})`;

/** Head of a column of intervals that all hold together. */
export const BETWEEN_ALL = 'between, all together';

/** A quantile of builds, or of units: `half of the builds`, `four of five builds`, `nine in ten units`. */
export function shareOf(p: number, what: 'builds' | 'units'): string {
  if (p === 0.5) return `half of the ${what}`;
  if (p === 0.8) return `four of five ${what}`;
  if (p === 0.95) return `19 of 20 ${what}`;
  return p === 0.9 ? `nine in ten ${what}` : `${Number((100 * p).toPrecision(3))} of 100 ${what}`;
}
