import type { Distribution } from '../../../random/distribution.js';
import { meanOf } from '../../../random/distribution.js';
import { log } from '../../../random/elementary.js';
import type { Mixture } from '../../../random/kinds/mixture.js';
import { number } from '../../format.js';
import { Draws } from '../goodness/draws.js';
import { SequentialP } from '../goodness/sequential-p.js';
import { familyOf } from '../kinds/families.js';
import type { Family } from '../kinds/family.js';
import { hasNoSpread, type Sample, sampleOf } from '../kinds/sample.js';
import { type TwoNormals, twoNormals } from './em.js';
import { WARNED_BELOW, type Warning } from './warning.js';

/**
 * Of fewer times two kinds cannot be told from one; and of each kind there must be so many, and this share.
 */
const FEWEST = 20,
  FEWEST_OF_EACH = 3,
  LEAST_SHARE = 0.05;
/**
 * Two humps are apart where their means are 2 sd from each other (K. M. Ashman, C. M. Bird & S. E. Zepf,
 * Astronomical Journal 108, 1994, 2348-2361; from memory); closer ones are one skewed hump as well.
 */
const LEAST_APART = 2;
/** To tell p below 0.01 it takes that hardly any simulated ratio is as great: three are enough to end. */
const SIMULATED = 199,
  ENOUGH = 3;

export interface TwoPopulations {
  readonly mixture: Mixture;
  /** Twice the log-likelihood of two lognormals less that of the one family. */
  readonly ratio: number;
  readonly p: number;
}

/**
 * Whether two kinds of work may be mixed: two lognormals against one family, the one that fits best of all,
 * by the likelihood ratio. Its law is not chi-square, since the parameters of a part that is not there mean
 * nothing; so p is by parametric bootstrap (G. J. McLachlan, Applied Statistics 36, 1987, 318-324; from
 * memory). Undefined where the two would not be apart.
 * @param one what was fitted of the one family
 * @param unit times were rounded to multiples of it; 0 where not
 */
export function twoPopulations(
  sample: Sample,
  one: Distribution,
  { stream, unit }: { readonly stream: string; readonly unit: number },
): TwoPopulations | undefined {
  const family = familyOf(one);
  if (family === undefined || sample.n < FEWEST || !(sample.least > 0) || hasNoSpread(sample))
    return undefined;
  const two = twoNormals(sample.values.map((x) => log(x)));
  if (!areApart(two, sample.n)) return undefined;
  const own = ratioOf(sample, two, family, one),
    draws = new Draws(one, sample.n, stream, unit),
    test = new SequentialP(SIMULATED, ENOUGH);
  for (let k = 0; k < 3 * SIMULATED && !test.isDone; k++) {
    const again = sampleOf(draws.next()),
      refitted = again.least > 0 && !hasNoSpread(again) ? family.fit(again) : undefined;
    if (refitted === undefined) continue;
    test.add(ratioOf(again, twoNormals(again.values.map((x) => log(x))), family, refitted) >= own);
  }
  return { mixture: mixtureOf(two), ratio: own, p: test.p };
}

function areApart({ share, means, sds }: TwoNormals, n: number): boolean {
  const fewer = Math.min(share, 1 - share),
    spread = Math.sqrt((sds[0] * sds[0] + sds[1] * sds[1]) / 2);
  return fewer * n >= FEWEST_OF_EACH && fewer >= LEAST_SHARE && means[1] - means[0] >= LEAST_APART * spread;
}

/** The density of a time is that of its logarithm over the time. */
function ratioOf({ values, n, meanLog }: Sample, two: TwoNormals, family: Family, one: Distribution): number {
  const { logDensity } = family.curve(one);
  let single = 0;
  for (let i = 0; i < n; i++) single += logDensity(values[i]);
  return 2 * (two.logLikelihood - n * meanLog - single);
}

const mixtureOf = ({ share, means, sds }: TwoNormals): Mixture => ({
  kind: 'mixture',
  parts: [
    { kind: 'lognormal', mu: means[0], sigma: sds[0] },
    { kind: 'lognormal', mu: means[1], sigma: sds[1] },
  ],
  weights: [share, 1 - share],
});

export function warningOfPopulations(found: TwoPopulations | undefined): Warning[] {
  if (found === undefined || found.p >= WARNED_BELOW) return [];
  const { mixture, p } = found,
    parts = mixture.parts.map(
      (part, k) => `${number(100 * mixture.weights[k])} % of the times are about ${number(meanOf(part))} min`,
    );
  return [
    {
      kind: 'two populations',
      p,
      mixture,
      told:
        `Two kinds of work seem to be mixed: ${parts.join(', ')}. ` +
        `Find what tells them apart; until then a mixture of the two can stand for them.`,
    },
  ];
}
