import { number } from '../format.js';
import { follows, isToldAlready } from './follows.js';
import type { Judged } from './judge.js';
import type { Cause, Compared } from './results.js';
import { isInput, type Measure } from './seen/measures.js';
import type { MostPeople } from './seen/people-compared.js';

const known = (value: number): number | null => (Number.isFinite(value) ? value : null);

export const comparedOf = ({ measure, middle, low, high, adjusted, agrees }: Judged): Compared => {
  const { topic, of, what, value, n } = measure,
    isJudged = Number.isFinite(middle);
  return {
    topic,
    of,
    what,
    real: known(value),
    n,
    simulated: isJudged ? { middle, low, high } : null,
    adjusted: known(adjusted),
    agrees: isJudged ? agrees : null,
  };
};

/** A share or a number as one would say it. */
export const figure = ({ topic }: Pick<Measure, 'topic'>, value: number): string =>
  topic === 'quality' || topic === 'finds' || topic === 'people' ? `${number(value * 100)} %` : number(value);

export function wordsOf({ measure, middle }: Judged, most: ReadonlyMap<Measure, MostPeople>): string {
  const { topic, of, what, value } = measure,
    people = most.get(measure);
  if (topic === 'people' && people !== undefined) {
    const { real, simulated } = people,
      where = what === '' ? of : `${of}, ${what}`;
    return real > simulated
      ? `people of ${where}: ${real} at work at once in the log, never more than ${simulated} in the model`
      : `people of ${where}: never more than ${real} at work at once in the log, ` +
          `up to ${simulated} in the model`;
  }
  const model = figure(measure, middle);
  if (topic !== 'minutes')
    return `${what} at ${of}: ${figure(measure, value)} in the log, ${model} in the model`;
  const change = Math.round((value / middle - 1) * 100),
    than = change === 0 ? '' : `, ${Math.abs(change)} % ${change > 0 ? 'longer' : 'shorter'}`;
  return `${what} of ${of}: ${figure(measure, value)} in the log, ${model} in the model${than}`;
}

/** Inputs that do not agree: the strongest evidence first, those that follow from others last. */
export function causesOf(
  judged: readonly Judged[],
  most: ReadonlyMap<Measure, MostPeople>,
): (Cause & { readonly judged: Judged })[] {
  const all = judged.filter(({ measure, agrees }) => isInput(measure.topic) && !agrees),
    out = all.filter((each) => !isToldAlready(each, all));
  return out
    .map((each) => ({
      ...comparedOf(each),
      words: wordsOf(each, most),
      follows: follows(
        each,
        out.filter((other) => other !== each),
        most,
      ),
      judged: each,
    }))
    .sort((a, b) => Number(a.follows) - Number(b.follows) || b.judged.t - a.judged.t);
}
