import { calledThing } from '../../study/constraint/sentence.js';
import { capital, exact, number } from '../../study/format.js';
import { each, eachWorking } from '../../study/planners-unit.js';
import type { ReliefsResults } from '../../study/reliefs/results.js';
import { triedIn } from '../../study/reliefs/sentence.js';
import { boundsOf, negated } from '../../study/statistics/estimate.js';
import { onEveryShift } from '../constraint.js';
import { figure, range } from './figures.js';
import { asking, between, type FirstScreen, gain, howTogether, INPUTS } from './first.js';
import { lastUnitText, planSays } from './last-unit.js';
import { beginWith, leastForMoney, priceText, whatItTakes, withItsPrice } from './offer.js';

type Relief = ReliefsResults['reliefs'][number];

export function reliefsFirst(results: ReliefsResults): FirstScreen {
  const { scenario, base, reliefs, best, rate, rateUnit, level } = results,
    a = ` ${each(rateUnit)}`,
    asked = rate.asked,
    [first, ...rest] = reliefs.filter(({ gain: { low } }) => low !== null && low > 0),
    next = rest.slice(0, 2),
    isAlone = best?.named === 1 && best.others === 0,
    cheapest = leastForMoney(results);
  const none =
    asked !== null &&
    reliefs.every(
      ({ gain: { high } }) =>
        high !== null && base.throughput.high !== null && base.throughput.high + high < asked,
    );
  return {
    question: asking(
      scenario,
      asked === null
        ? `What brings more units to “${scenario.name}”?`
        : `What brings “${scenario.name}” to ${exact(asked)} ${eachWorking(rateUnit)}?`,
    ),
    answer:
      first === undefined
        ? 'Nothing that was tried surely brings more.'
        : none
          ? `No single change reaches ${exact(asked)}.`
          : `${capital(onEveryShift(first.text))}: ${figure(first.gain)}${a} more.`,
    sure:
      `Today it ships ${between(base.throughput)}${a} (${howTogether(base.throughput, level)})` +
      (none && first !== undefined ? `; with the best single change no more than ${most(results)}.` : '.'),
    why: first === undefined ? null : why(results),
    toDo:
      first === undefined
        ? 'Try two changes together.'
        : cheapest !== undefined && cheapest !== first
          ? cheapestFirst(cheapest, first)
          : `${capital(beginWith(onEveryShift(first.text), first.offer))}: ${gain(first.gain, a)}` +
            `${isAlone ? '' : '; others may bring as much'}.` +
            next
              .map(({ text, gain: more }) => ` Or ${onEveryShift(text)}: ${figure(more)} (${range(more)}).`)
              .join('') +
            (next.length === 0 ? '' : ' Each was tried alone: do not add them up.'),
    next: whatItTakes(scenario.file, reliefs, rate.set ?? undefined) ?? {
      what: 'Two of them together',
      command: `rateproof compare ${scenario.file} WHAT-IFS.yaml`,
    },
    whenAndCost: [...dates(results, first), ...costs(results, first)],
    rests: weakest(results),
    besides: INPUTS,
    picture: {
      title: 'What each change brings by itself',
      more: 'Units a working day; right of 0 it ships more.',
    },
  };

  /** What brings most for its price, and what brings most. */
  function cheapestFirst(least: Relief, most: Relief): string {
    return [
      `${capital(beginWith(onEveryShift(least.text), least.offer))}: ${gain(least.gain, a)}, the most for `,
      `the money. The largest gain: ${onEveryShift(most.text)} (${priceText(most.offer)}), `,
      `${gain(most.gain, a)}${isAlone ? '' : '; others may bring as much'}. `,
      'Each was tried alone: do not add them up.',
    ].join('');
  }
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
function why(results: ReliefsResults): string | null {
  const { reliefs, best } = results;
  if (best === null || best.others > 0 || best.named > MOST_NAMED) return null;
  const told = reliefs.slice(0, best.named),
    looked = `of ${exact(triedIn(results))} changes looked at`,
    things = ANY_OF.format([...new Set(told.map(({ of }) => calledThing(of)))]);
  return told.length === 1
    ? `${capital(things)}: ${looked}, ${onEveryShift(told[0]?.text ?? '')} brings the most.`
    : `${capital(things)}: ${looked}, theirs bring the most; which of them is not settled.`;
}

function weakest({ measureNext, assumptions, rateUnit }: ReliefsResults): string {
  if (measureNext === null) return 'No guess or estimate that was varied surely moves it.';
  const { words, basis, now, value, gain: change, path } = measureNext,
    a = ` ${each(rateUnit)}`,
    varied = assumptions.find((one) => one.path === path),
    other = [varied?.low, varied?.high].find((end) => end != null && end.value !== value && end.out === null);
  return (
    `Weakest ${basis}: ${words}, ${now}: with ${value} it ships ${gain(change, a)}` +
    `${other == null ? '' : `; with ${other.value}, ${gain(other.gain)}`}.`
  );
}

function dates({ base: { lastUnit, plannedEnd } }: ReliefsResults, first: Relief | undefined): string[] {
  const out = lastUnitText(lastUnit),
    later = first?.lastUnitDays ?? null;
  if (out === null) return [];
  const { low, high } = boundsOf(later),
    text = onEveryShift(first?.text ?? ''),
    today = `As it is, the last unit is out ${out}${planSays(plannedEnd, lastUnit)}.`;
  if (later === null) return [today];
  if (low <= 0 && high >= 0) return [`${today} With ${text} neither surely sooner nor later.`];
  const by = high < 0 ? negated(later) : later;
  return [`${today} With ${text} ${figure(by)} days ` + `${high < 0 ? 'sooner' : 'later'} (${range(by)}).`];
}

function costs({ base: { costPerUnit, currency } }: ReliefsResults, first: Relief | undefined): string[] {
  if (costPerUnit === null) return ['The scenario gives no prices.'];
  const now = `A unit costs ${figure(costPerUnit)} ${currency ?? ''} today`,
    change = first?.costPerUnit ?? null;
  if (first === undefined || change === null) return [`${now}.`];
  const { low, high } = boundsOf(change),
    text = onEveryShift(first.text);
  if (low <= 0 && high >= 0)
    return [`${now}; with ${text} neither surely more nor less${withItsPrice(change, first.offer)}.`];
  return [
    `${now}. With ${text} it costs ${gain(change, ` ${currency ?? ''}`)}` +
      `${withItsPrice(change, first.offer)}.`,
  ];
}
