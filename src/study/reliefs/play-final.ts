import { defined } from '../lists.js';
import type { Replicator, Variant } from '../run/replicator.js';
import { familyLevel } from '../statistics/difference.js';
import { effectOf, gainPerCost } from './effects.js';
import { finalists, movesMost, notBehind, othersAsGood, type Seen } from './final.js';
import type { Forecast } from './forecast.js';
import type { Relief } from './relief.js';
import type { Effect, ReliefResult, ReliefsResults } from './results.js';
import type { Compared } from './runs.js';
import type { ValueEnd } from './values/values.js';

type Member<Of> = Seen<Variant<Compared> & { readonly of: Of }>;

export interface FinalAsked extends Pick<ReliefsResults, 'zone' | 'keep' | 'replications'> {
  readonly base: Variant<Compared>;
  /** Of the base, those that the others were set against. */
  readonly ofBase: readonly Compared[];
  /** See `byGain`. */
  readonly reliefs: readonly Member<Relief>[];
  readonly ends: readonly Member<ValueEnd>[];
  /** At which all that the final says holds together, and that of each interval of the reliefs. */
  readonly level: number;
  readonly eachLevel: number;
  /** Reliefs that were given up together with others. */
  readonly inGroups: number;
  readonly replicator: Replicator;
  readonly forecast: Forecast;
}

export interface FinalPlayed extends Pick<ReliefsResults, 'best' | 'measureNext'> {
  /** In the order of the results; the ranks are still to come. */
  readonly reliefs: readonly ReliefResult[];
  readonly level: number;
  /** Replications that it took. */
  readonly run: number;
}

/**
 * Who was chosen for its gain was lucky too, so that gain is told too high. The first few, and the value that
 * moves it most, are run once more with the replications that follow those by which they were chosen; what is
 * told of them is from these alone.
 */
export async function playFinal(asked: FinalAsked): Promise<FinalPlayed> {
  const { base, ofBase, reliefs, ends, zone, keep, replications: most, eachLevel, inGroups } = asked,
    inFinal = finalists(reliefs, keep),
    end = movesMost(ends, zone),
    members = [...inFinal, ...(end === undefined ? [] : [end])],
    variants = members.length === 0 ? [] : [base, ...members.map(({ member }) => member)];
  asked.forecast.finalists(variants.length);
  const [again = [], ...rows] = await asked.replicator.rows(variants, most + 1, 2 * most),
    // The gains, and of the reliefs the differences to the best.
    level = familyLevel(asked.level, members.length + Math.max(0, inFinal.length - 1)),
    fresh = inFinal.map((each, i) => {
      const row = defined(rows[i]);
      return resultOf({ ...each, row, effect: effectOf(again, row, null, level) }, again, true);
    }),
    isBest = notBehind(rows.slice(0, inFinal.length), level),
    best = fresh.filter((_, i) => isBest[i] === true),
    [first] = best;
  return {
    reliefs: [
      ...best,
      ...fresh.filter((each) => !best.includes(each)),
      ...reliefs.filter((each) => !inFinal.includes(each)).map((each) => resultOf(each, ofBase, false)),
    ],
    best:
      first === undefined
        ? null
        : {
            named: best.length,
            others: othersAsGood(reliefs, inFinal, first.gain, { level: eachLevel, zone, inGroups }),
          },
    measureNext:
      end === undefined ? null : valueOf(end.member.of, effectOf(again, defined(rows.at(-1)), null, level)),
    level,
    run: variants.length * most,
  };
}

const resultOf = (
  { member: { of }, row, effect }: Member<Relief>,
  base: readonly Compared[],
  isFresh: boolean,
): ReliefResult => ({
  rank: 0,
  kind: of.kind,
  text: of.text,
  of: of.of,
  ...(of.offer !== undefined && { offer: of.offer }),
  isFresh,
  ...effect,
  gainPerCost: gainPerCost(base, row, effect),
  rankPerCost: null,
});

function valueOf({ varied, side }: ValueEnd, { gain }: Effect): ReliefsResults['measureNext'] {
  const { path, words, basis, value: now } = varied.assumption;
  return { path, words, basis, now, value: defined(varied[side]).value, gain };
}
