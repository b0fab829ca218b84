import { number } from '../../../study/format.js';
import type { Compared, ValidateResults } from '../../../study/validate/results.js';

/** A measure that was judged: the log has it, and builds of the model have it. */
export interface Judged extends Compared {
  readonly real: number;
  readonly simulated: NonNullable<Compared['simulated']>;
  readonly agrees: boolean;
}

export const isJudged = (each: Compared): each is Judged =>
  each.real !== null && each.simulated !== null && each.agrees !== null;

/** A share as per cent, anything else as it is. */
export function valueText({ topic }: Pick<Compared, 'topic'>, value: number | null): string {
  if (value === null) return '';
  return isShare(topic) ? `${number(100 * value)} %` : number(value);
}

export const isShare = (topic: Compared['topic']): boolean =>
  topic === 'quality' || topic === 'finds' || topic === 'people';

/** `141 to 159`: where a build of the model lies. */
export const boundsText = (each: Compared): string =>
  each.simulated === null
    ? ''
    : `${valueText(each, each.simulated.low)} to ${valueText(each, each.simulated.high)}`;

export const agreesText = ({ agrees }: Pick<Compared, 'agrees'>): string =>
  agrees === null ? 'not judged' : agrees ? 'yes' : 'no';

/** `weld: working minutes`, `lead time: mean days`. */
export const measureName = ({ topic, of, what }: Named): string =>
  `${topic === 'lead time' ? topic : of}: ${what}`;

type Named = Pick<Compared, 'topic' | 'of' | 'what'>;

/** What of it, where the name of the place does not say it. */
export const whatText = ({ topic, what }: Named): string =>
  topic === 'lead time' ? `lead time, ${what}` : what;

/** `working minutes of weld`, `sent back at inspect`, `units shipped a working day`. */
export const measureWords = (each: Named): string =>
  each.of === 'whole line'
    ? whatText(each)
    : `${each.what} ${each.topic === 'minutes' ? 'of' : 'at'} ${each.of}`;

/** People are told in the words of causes: the share behind them says nothing by itself. */
export const shownOf = ({ measures }: ValidateResults): readonly Compared[] =>
  measures.filter(({ topic }) => topic !== 'people');

/**
 * Where the log lies in the band of a measure: 0 at the middle of the model, 1 and -1 at its ends, so that
 * different units stand side by side. Infinite beyond an end at which the band has no width.
 */
export function positionOf({ real, simulated: { middle, low, high } }: Judged): number {
  const away = real - middle,
    half = away < 0 ? middle - low : high - middle;
  return Math.abs(away) < 1e-9 * Math.abs(middle) || away === 0 ? 0 : away / half;
}

/**
 * How near to an end of its band, or how far out of it. What agrees and can go no farther, such as a share
 * of nothing, is near to no end.
 */
function nearness(each: Judged): number {
  const { real, agrees, simulated } = each,
    isAtLimit = real <= simulated.low || real >= simulated.high;
  return agrees && isAtLimit ? 0 : Math.abs(positionOf(each));
}

/** Those out of their bands first, the farthest ahead, then those nearest to an end. */
export const byPosition = (all: readonly Judged[]): Judged[] =>
  all.toSorted((a, b) => Number(a.agrees) - Number(b.agrees) || nearness(b) - nearness(a) || 0);

/** `yes: rates up to that of the log (the log agrees)` */
export const useLines = ({ uses }: ValidateResults): string[] =>
  uses.map(({ use, may, why }) => `${mayText(may)}: ${use} (${why})`);

export const mayText = (may: boolean | null): string => (may === null ? 'not told' : may ? 'yes' : 'no');

/** Its last day: ISO date. */
export const lastDay = ({ period: { to } }: Pick<ValidateResults, 'period'>): string =>
  new Date(Date.parse(to) - 86_400_000).toISOString().slice(0, 10);
