import { calledThing } from '../../study/constraint/sentence.js';
import { capital, count, exact, number } from '../../study/format.js';
import { each, eachWorking } from '../../study/planners-unit.js';
import { advised } from '../../study/priced/advised.js';
import type { ReliefsResults } from '../../study/reliefs/results.js';
import { triedIn } from '../../study/reliefs/sentence.js';
import { boundsOf, negated } from '../../study/statistics/estimate.js';
import { changeName } from '../constraint.js';
import { figure, range } from './figures.js';
import {
  about,
  ends,
  type FirstScreen,
  gain,
  gainBetween,
  gainedText,
  how,
  INPUTS,
  type Line,
  NO_LINE,
  sentences,
  together,
} from './first.js';
import { lastUnitLine } from './lines/last-unit.js';
import {
  beginWith,
  FOR_THE_MONEY,
  priceInFull,
  priceText,
  whatItTakes,
  withItsPrice,
} from './lines/offer.js';
import { guessLine } from './lines/weakest.js';

type Relief = ReliefsResults['reliefs'][number];

const nameOf = ({ text, offer }: Relief): string => changeName(text, offer);

export function reliefsFirst(results: ReliefsResults): FirstScreen {
  const { scenario, base, reliefs, rate, rateUnit, level, zone } = results,
    a = ` ${each(rateUnit)}`,
    asked = rate.asked,
    gaining = reliefs.filter(({ gain: { low } }) => low !== null && low > 0),
    [first] = gaining,
    begin = advised(
      gaining.filter(({ gain: more }) => more.mean > zone),
      ({ gain: { low } }) =>
        asked !== null && low !== null && base.throughput.low !== null && base.throughput.low + low >= asked,
    );
  const none =
    asked !== null &&
    reliefs.every(
      ({ gain: { high } }) =>
        high !== null && base.throughput.high !== null && base.throughput.high + high < asked,
    );
  return {
    about: about(scenario),
    question:
      asked === null
        ? 'What brings more units?'
        : `What brings it to ${exact(asked)} ${eachWorking(rateUnit)}?`,
    answer:
      first === undefined
        ? 'Nothing that was tried surely brings more.'
        : none
          ? `No single change reaches ${exact(asked)}. The most: ${figure(first.gain)} more.`
          : `${capital(nameOf(first))}: ${figure(first.gain)}${a} more.`,
    sure: {
      brief:
        `${none && first !== undefined ? 'Today' : 'Today it ships'} ${ends(base.throughput)}${a}` +
        (none && first !== undefined ? `, with any single change at most ${most(results)}` : '') +
        ` (${how(level, base.throughput.n)}).`,
      more: together(level),
    },
    stops: stops(results),
    toDo:
      begin === undefined
        ? { brief: 'Try two changes together.', more: costs(results, undefined) }
        : toDo(results, begin, gaining),
    when: dates(results, begin),
    rests: weakest(results),
    next: whatItTakes(scenario.file, reliefs, rate.set ?? undefined) ?? {
      what: 'Two of them together',
      command: `rateproof compare ${scenario.file} WHAT-IFS.yaml`,
    },
    besides: INPUTS,
    picture: {
      title: 'What each change brings by itself',
      more: 'Units a working day; right of 0 it ships more.',
    },
  };
}

/** What to begin with, and what else there is; the largest gain where that is another one. */
function toDo(results: ReliefsResults, begin: Relief, [first, ...rest]: readonly Relief[]): Line {
  const { best, rateUnit } = results,
    a = ` ${each(rateUnit)}`,
    isAlone = best?.named === 1 && best.others === 0,
    isLeast = begin !== first,
    next = isLeast ? [] : rest.slice(0, 2);
  const brief =
    `${capital(beginWith(nameOf(begin), begin.offer))}: ${gainedText(begin.gain, a)}` +
    `${isLeast ? FOR_THE_MONEY : ''}.`;
  const largest =
    !isLeast || first === undefined
      ? ''
      : `The largest gain: ${nameOf(first)} (${priceText(first.offer)}), ${gain(first.gain, a)}` +
        `${isAlone ? '' : '; others may bring as much'}.`;
  return {
    brief,
    more: sentences(
      `${capital(gainBetween(begin.gain, a))}${isLeast || isAlone ? '' : '; others may bring as much'}.`,
      priceInFull(begin.offer),
      largest,
      ...next.map((other) => `Or ${nameOf(other)}: ${figure(other.gain)} (${range(other.gain)}).`),
      largest === '' && next.length === 0 ? '' : 'Each was tried alone: do not add them up.',
      costs(results, begin),
    ),
  };
}

/** What even the best of them does not surely exceed: both bounds hold together. */
function most({ base, reliefs }: ReliefsResults): string {
  const { high } = boundsOf(base.throughput);
  return number(high + Math.max(...reliefs.map(({ gain }) => boundsOf(gain).high)));
}

/** More would not be read at a glance, and are no cause. */
const MOST_NAMED = 3;
const ANY_OF = new Intl.ListFormat('en-GB', { type: 'disjunction' });

/** Of the one that is told apart from all others, or of a few that are not told apart from each other. */
function stops(results: ReliefsResults): Line {
  const { reliefs, best } = results;
  if (best === null) return NO_LINE;
  const looked = `${count(triedIn(results), 'change')} looked at.`,
    told = reliefs.slice(0, best.named),
    things = ANY_OF.format([...new Set(told.map(({ of }) => calledThing(of)))]);
  if (best.others > 0 || best.named > MOST_NAMED)
    return { brief: 'Not settled: several changes may bring the most.', more: capital(looked) };
  return told.length === 1
    ? {
        brief: `${capital(things)}.`,
        more: `${capital(told[0] === undefined ? '' : nameOf(told[0]))} brings the most of ${looked}`,
      }
    : { brief: `${capital(things)}; not settled which.`, more: `Theirs bring the most of ${looked}` };
}

function weakest({ measureNext, assumptions, rateUnit }: ReliefsResults): Line {
  if (measureNext === null)
    return { brief: 'No guess or estimate that was varied surely moves it.', more: '' };
  const { value, gain: change, path } = measureNext,
    varied = assumptions.find((one) => one.path === path),
    other = [varied?.low, varied?.high].find((end) => end != null && end.value !== value && end.out === null);
  return guessLine(
    { ...measureNext, ends: [{ value, gain: change }, ...(other == null ? [] : [other])] },
    ` ${each(rateUnit)}`,
  );
}

/** Today, and how much sooner with what is begin. */
function dates({ base: { lastUnit, plannedEnd } }: ReliefsResults, begin: Relief | undefined): Line {
  const today = lastUnitLine(lastUnit, { plannedEnd }),
    later = begin?.lastUnitDays ?? null;
  if (later === null || begin === undefined || today.brief === '') return today;
  const { low, high } = boundsOf(later),
    text = `With ${nameOf(begin)}`,
    by = high < 0 ? negated(later) : later,
    side = high < 0 ? 'sooner' : 'later';
  return low <= 0 && high >= 0
    ? { ...today, more: sentences(today.more, `${text} neither surely sooner nor later.`) }
    : {
        brief: `${today.brief} With it ${figure(by)} days ${side}.`,
        more: sentences(today.more, `${text} ${figure(by)} days ${side} (${range(by)}).`),
      };
}

/** What a unit costs today, and with what is begin. */
function costs({ base: { costPerUnit, currency } }: ReliefsResults, begin: Relief | undefined): string {
  if (costPerUnit === null) return 'The scenario gives no prices.';
  const now = `A unit costs ${figure(costPerUnit)} ${currency ?? ''} today`,
    change = begin?.costPerUnit ?? null;
  if (begin === undefined || change === null) return `${now}.`;
  const { low, high } = boundsOf(change),
    text = nameOf(begin);
  return low <= 0 && high >= 0
    ? `${now}; with ${text} neither surely more nor less${withItsPrice(change, begin.offer)}.`
    : `${now}. With ${text} it costs ${gain(change, ` ${currency ?? ''}`)}` +
        `${withItsPrice(change, begin.offer)}.`;
}
