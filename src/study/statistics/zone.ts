import { boundsOf, type Estimate } from './estimate.js';

/**
 * Where a difference lies by its interval, against a zone around 0 within which no difference matters: beyond
 * the zone by the whole interval; on one side of 0 by the whole interval, but not surely beyond the zone;
 * within the zone by the whole interval; or open, which more replications may settle.
 */
export type Standing =
  | 'more'
  | 'at least a little more'
  | 'within'
  | 'open'
  | 'at least a little less'
  | 'less';

/** The edge belongs to the zone, to nine digits: 3.03 against 3 is 1 % more, whatever the last bits. */
const EDGE = 1 + 1e-9;

/**
 * One interval says both whether there is a difference and whether it matters (indifference zone: Bechhofer
 * 1954, Ann. Math. Stat. 25, 16-39; equivalence by two one-sided tests: Schuirmann 1987, J. Pharmacokinet.
 * Biopharm. 15, 657-680; from memory). Two one-sided tests at alpha say "within" if the interval of level
 * 1 - 2 alpha lies within the zone. Here it is the interval shown, of level 1 - alpha, so "within" is wrong
 * at most half as often. As long as the interval holds the true difference, no standing is wrong.
 * @param zone at least 0, in the unit of the difference; 0: any difference matters
 */
export function standingOf(difference: Estimate, zone: number): Standing {
  const { low, high } = boundsOf(difference),
    edge = zone * EDGE;
  if (low >= -edge && high <= edge) return 'within';
  if (low > 0) return low > edge ? 'more' : 'at least a little more';
  if (high < 0) return high < -edge ? 'less' : 'at least a little less';
  return 'open';
}
