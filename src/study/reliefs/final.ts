import { difference } from '../statistics/difference.js';
import { boundsOf, type Estimate } from '../statistics/estimate.js';
import { effectOf } from './effects.js';
import type { Effect } from './results.js';
import { type Compared, type Screened, surelyGains } from './runs.js';

/** What was screened, with what it does by the replications of the screen. */
export interface Seen<Member> extends Screened<Member> {
  readonly effect: Effect;
}

export const seenBy = <Member>(
  base: readonly Compared[],
  all: readonly Screened<Member>[],
  level: number,
): Seen<Member>[] => all.map((each) => ({ ...each, effect: effectOf(base, each.row, each.out, level) }));

/** By gain, those compared to the end first. */
export const byGain = <Member>(all: readonly Seen<Member>[]): Seen<Member>[] =>
  [...all].sort(
    (a, b) => Number(a.out !== null) - Number(b.out !== null) || b.effect.gain.mean - a.effect.gain.mean,
  );

/**
 * Who goes into the final: the first of those compared to the end; nobody where none of these surely gains.
 * @param ordered see `byGain`
 */
export function finalists<Member>(ordered: readonly Seen<Member>[], most: number): Seen<Member>[] {
  const compared = ordered.filter(({ out }) => out === null);
  return compared.some(({ effect }) => surelyGains(effect.gain)) ? compared.slice(0, most) : [];
}

/**
 * Of rows of the same replications those that no other one is surely ahead of. The best is among them with
 * at least the level of k - 1 such differences: it is left out only if one of the others comes out ahead of
 * it by a slip (as in comparisons with the best: Hsu 1984, Ann. Stat. 12, 1136-1144; from memory).
 */
export function notBehind(rows: readonly (readonly Compared[])[], level: number): boolean[] {
  return rows.map((row) => rows.every((other) => other === row || !isAhead(other, row, level)));
}

/**
 * How many of those that were not in the final may be as good as the best: compared to the end and not surely
 * behind the first of the final; or dropped because they gain less than the zone, where the best may too.
 * @param best gain of the best in the final
 */
export function othersAsGood<Member>(
  ordered: readonly Seen<Member>[],
  inFinal: readonly Seen<Member>[],
  best: Estimate,
  {
    level,
    zone,
    inGroups,
  }: { readonly level: number; readonly zone: number /** Given up together. */; readonly inGroups: number },
): number {
  const [first] = inFinal,
    isSmall = boundsOf(best).low <= zone;
  if (first === undefined) return 0;
  const alone = ordered.filter(
    (each) =>
      !inFinal.includes(each) &&
      (each.out === null ? !isAhead(first.row, each.row, level) : each.out === 'no effect' && isSmall),
  ).length;
  return alone + (isSmall ? inGroups : 0);
}

function isAhead(one: readonly Compared[], other: readonly Compared[], level: number): boolean {
  const of = (row: readonly Compared[]): number[] => row.map(({ throughput }) => throughput);
  return surelyGains(difference(of(other), of(one), level).difference);
}

/**
 * The change that moves it most either way, of those that surely do and by more than the zone; undefined:
 * none does.
 */
export function movesMost<Member>(all: readonly Seen<Member>[], zone: number): Seen<Member> | undefined {
  return all
    .filter(({ out, effect: { gain } }) => {
      const { low, high } = boundsOf(gain);
      return out === null && Math.abs(gain.mean) > zone && (low > 0 || high < 0);
    })
    .sort((a, b) => Math.abs(b.effect.gain.mean) - Math.abs(a.effect.gain.mean))
    .at(0);
}
