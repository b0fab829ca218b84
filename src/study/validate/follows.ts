import type { Judged } from './judge.js';
import { LEFT_TO_IT, type Measure, OF_THOSE_THERE, ON_THE_ROAD, THAT_COMES } from './seen/measures.js';
import { type MostPeople, wholeOf } from './seen/people-compared.js';

const kindOf = (what: string, end: string): string | null =>
  what.endsWith(end) ? what.slice(0, -end.length) : null;

/**
 * Whether a gap is, or may be, what another gap brings about. Of a road: a truck that waits for a fuller load
 * waits longer behind a slower line. Of people: fewer meet where there is less to do. Of finds: what one
 * inspection misses comes to the next, and whatever comes to the first is left to the last in part.
 */
export function follows(
  { measure }: Judged,
  others: readonly Judged[],
  most: ReadonlyMap<Measure, MostPeople>,
): boolean {
  const { topic, of, what } = measure;
  if (topic === 'people') {
    const own = most.get(measure);
    return (
      own !== undefined &&
      own.real < own.simulated &&
      !own.isCut &&
      others.some((other) => isFirm(other, most))
    );
  }
  if (topic === 'minutes') return what === ON_THE_ROAD && others.some((other) => isFirm(other, most));
  const left = kindOf(what, LEFT_TO_IT),
    comes = kindOf(what, THAT_COMES);
  return others.some(({ measure: other }) => {
    const missed = kindOf(other.what, OF_THOSE_THERE);
    if (missed !== null) return missed === left || (missed === comes && other.of === of);
    return left !== null && kindOf(other.what, THAT_COMES) === left;
  });
}

/** A gap that less to do does not bring about. */
function isFirm({ measure }: Judged, most: ReadonlyMap<Measure, MostPeople>): boolean {
  if (measure.topic === 'people') return most.get(measure)?.isCut === true;
  return measure.what !== ON_THE_ROAD;
}

/** Of a crew that differs in the whole period its second half says nothing more. */
export const isToldAlready = (
  { measure: { topic, of, what } }: Judged,
  others: readonly Judged[],
): boolean => {
  const whole = topic === 'people' ? wholeOf(what) : null;
  return (
    whole !== null &&
    others.some(({ measure }) => measure.topic === topic && measure.of === of && measure.what === whole)
  );
};
