import { bounds, mean, number } from '../../format.js';
import { defined } from '../../lists.js';
import { boundsOf, type Estimate, mapped, negated } from '../../statistics/estimate.js';
import type { CaseLayout, CaseResult, CasesResult } from './results.js';

/** `“ferry out”`, `the scenario as it is`. */
export const caseName = ({ name }: Pick<CaseResult, 'name'>): string =>
  name === null ? 'the scenario as it is' : `“${name}”`;

/** What losses are told of. */
export const lostOf = ({ cases }: CasesResult): string =>
  cases.some(({ best }) => best !== null)
    ? 'what the best places found for that case alone ship'
    : 'what no limit ships in that case';

/** The case in which a layout loses most, by the means. */
export const weakestName = ({ weakest }: CaseLayout, { cases }: CasesResult): string =>
  caseName(defined(cases[weakest]));

/** The other cases that may be that one; without those in which all goes as in the scenario as it is. */
export const orElseNames = ({ orElse }: CaseLayout, { cases }: CasesResult): string[] =>
  orElse
    .map((c) => defined(cases[c]))
    .filter(({ isAsBase }) => !isAsBase)
    .map(caseName);

export const layoutFor = (
  { layouts }: CasesResult,
  role: CaseLayout['roles'][number],
): CaseLayout | undefined => layouts.find(({ roles }) => roles.includes(role));

/** In per cent. */
export const percentOf = (share: Estimate): Estimate => mapped(share, (value) => 100 * value);

/** `loses 3.1 % (1.2 to 5) more`, `.. less`; both ways where the interval lies across 0. */
export function compared(verb: string, more: Estimate): string {
  const { low, high } = boundsOf(more),
    less = negated(more);
  if (low > 0) return `${verb} ${mean(more, 100)} % (${bounds(more, 100)}) more`;
  if (high < 0) return `${verb} ${mean(less, 100)} % (${bounds(less, 100)}) less`;
  return low === 0 && high === 0
    ? `${verb} as much`
    : `${verb} between ${number(-100 * low)} % less and ${number(100 * high)} % more`;
}

/** Layouts that lose less in their weakest case by more than the zone, surely or perhaps, within a budget. */
export const rivalsOf = ({ layouts }: CasesResult, places: number, zone: number): CaseLayout[] =>
  layouts.filter(
    ({ worstMore, total }) => worstMore !== null && total <= places && boundsOf(worstMore).low < -zone,
  );
