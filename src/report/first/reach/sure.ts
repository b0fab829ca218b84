import { inWords } from '../../../study/answer/answer.js';
import { capital, count, exact, mean } from '../../../study/format.js';
import { each, rateText } from '../../../study/planners-unit.js';
import type { ReachResults } from '../../../study/reach/results.js';
import { isPriced, undecided } from '../../../study/reach/sentence.js';
import type { Proportion } from '../../../study/statistics/proportion.js';
import { AT_LEAST, COUNTS, dateText, ends, how, type Line, sentences, shipIt, surely } from '../first.js';
import { forMoney, inPlanners, lastOf, nowOf, setOrAsIs } from './told.js';

/** How many builds do what is asked, and what it ships; behind it what is known of other sets. */
export function sure(results: ReachResults): Line {
  const { keptUp, goal } = results,
    isTold = keptUp !== null || goal.kind === 'date';
  return {
    brief: sentences(kept(results), ships(results, isTold)),
    more: sentences(keptUp === null ? '' : COUNTS, today(results), othersTold(results), hurtsTold(results)),
  };
}

const isKnown = (results: ReachResults): boolean =>
  lastOf(results).throughput.needs === undefined && nowOf(results).throughput.needs === undefined;

/** What it ships on average at the end of the way. */
function ships(results: ReachResults, isBehind: boolean): string {
  const last = inPlanners(lastOf(results).throughput, results),
    a = isBehind && results.goal.kind === 'rate' ? '' : ` ${each(results.rateUnit)}`,
    sureness = isBehind ? surely(last.level) : how(last.level, last.n);
  return isKnown(results)
    ? `On average ${ends(last)}${a} (${sureness}).`
    : `On average about ${mean(last)}${a}; ${count(last.n, 'simulated build')} are too few to say how far ` +
        'chance moves that.';
}

/** What the build as it is ships, where another one is told. */
function today(results: ReachResults): string {
  const now = inPlanners(nowOf(results).throughput, results);
  return results.steps.length === 1
    ? ''
    : `Today it ships ${isKnown(results) ? ends(now) : `about ${mean(now)}`} ${each(results.rateUnit)}.`;
}

/** Builds that do what is asked: what the answer is judged by. */
function kept(results: ReachResults): string {
  const { goal, keptUp, outcome, rateUnit } = results,
    { byDate } = lastOf(results);
  if (goal.kind === 'date')
    return byDate === null
      ? ''
      : `${capital(outText(byDate))} the last unit out by ${dateText(goal.date)}; asked are surely ` +
          `${inHundred(goal.sure)} in 100.`;
  return keptUp === null
    ? ''
    : `${capital(shipIt(keptUp))} ${AT_LEAST} ${rateText(goal.perDay, rateUnit)}` +
        (keptUp.share >= CLEARLY || outcome === 'not reached' ? '.' : ', and surely half must.');
}

/** `none of 20 builds has`, `36 of 40 builds have`. */
function outText({ count: some, n }: Proportion): string {
  const builds = count(n, 'build');
  return some === 0 ? `none of ${builds} has` : `${exact(some)} of ${builds} ${some === 1 ? 'has' : 'have'}`;
}

/** Below this share of the builds it is said why the rate holds none the less. */
const CLEARLY = 0.9;

const inHundred = (share: number): string => exact(Math.round(100 * share));

/** What is known of the other sets: of cheaper ones, or of all. */
function othersTold(results: ReachResults): string {
  const { outcome, search } = results,
    [other, ...more] = undecided(results),
    cheaper = isPriced(results) ? 'cheaper set' : 'set of fewer changes';
  if (outcome === 'holds already') return '';
  if (outcome === 'not settled')
    return other === undefined
      ? ''
      : `${capital(inWords(more.length + 1))} other ${more.length === 0 ? 'set' : 'sets'} may do as well.`;
  if (!search.isProven) return `Not every ${outcome === 'reached' ? cheaper : 'set'} was tried.`;
  if (outcome === 'not reached') return 'Every set that may be made falls short, if no change does harm.';
  if (other === undefined) return `Every ${cheaper} falls short, if no change does harm.`;
  return (
    'Whether less would do is not settled: ' +
    (other.made.length === 0 ? 'it may as it is' : setOrAsIs(other.made) + forMoney(other, results)) +
    `${more.length === 0 ? '' : `, and ${count(more.length, 'other set')}`}.`
  );
}

/** What is said of other sets leans on that a set does no less than a part of it. */
function hurtsTold({ outcome, search: { hurts } }: ReachResults): string {
  const [first] = hurts;
  if (first === undefined || outcome === 'holds already') return '';
  const harm = first.with.filter((name) => !first.without.includes(name)).map((name) => `“${name}”`);
  return `${harm.join(' and ') || 'One change'} did harm in what was tried: look at it by itself.`;
}
