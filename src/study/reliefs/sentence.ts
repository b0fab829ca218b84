import { count, number, withInterval } from '../format.js';
import { USUAL_SURE } from '../held/sure.js';
import { each, unitsEach } from '../planners-unit.js';
import { boundsOf, negated } from '../statistics/estimate.js';
import { sumOf } from '../statistics/sums.js';
import type { ReliefsResults } from './results.js';
import { surelyGains } from './runs.js';

type Results = Omit<ReliefsResults, 'answer'>;

/** So many of the best are named; the others are counted. */
const NAMED = 3;

/** The answer in two or three sentences: what gains most, and which number to measure next. */
export function reliefsSentence(results: Results): string {
  const { base, reliefs, rate, rateUnit } = results,
    units = unitsEach(rateUnit),
    from = `${withInterval(base.throughput)} ${units}`,
    sure = reliefs.filter(({ gain, out }) => out === null && surelyGains(gain)).length,
    best = bestText(results);
  return [
    best === null
      ? `Of ${count(triedIn(results), 'relief')} none surely ships more than ${from}.`
      : `${best} than ${from}; ${count(sure, 'relief')} of ${triedIn(results)} surely ` +
        `ship${sure === 1 ? 's' : ''} more.`,
    ...(base.keptUp === null || base.keptUp.low < USUAL_SURE
      ? []
      : [
          `${base.keptUp.count} of ${count(base.keptUp.n, 'build')} keep up with the ` +
            `${number(rate.asked ?? 0)} ${each(rateUnit)} asked, so little can be gained; --rate asks for ` +
            'more.',
        ]),
    ...losesText(results),
    ...measureText(results),
  ].join(' ');
}

/** Reliefs that were tried, by themselves or with others. */
export const triedIn = ({ reliefs, groups }: Pick<Results, 'reliefs' | 'groups'>): number =>
  reliefs.length + sumOf(groups, (group) => group.reliefs.length);

/** What surely costs more than matters: more of a thing is not always better. */
function losesText({ reliefs, rateUnit, zone }: Results): string[] {
  const losing = reliefs
    .filter(({ gain: { high } }) => high !== null && high < -zone)
    .sort((a, b) => a.gain.mean - b.gain.mean);
  const [worst] = losing;
  if (worst === undefined) return [];
  const others = losing.length - 1,
    rest = others === 0 ? '' : `, and ${count(others, 'other')} ${others === 1 ? 'does' : 'do'} too`;
  return [
    `With ${worst.text} it ships ${withInterval(negated(worst.gain))} ${unitsEach(rateUnit)} less${rest}.`,
  ];
}

/**
 * `The best single relief is A or B, which are not told apart: 0.31 (95 % CI ..), 0.29 (..) units a working
 * day more`; null where none surely gains.
 */
export function bestText({ reliefs, best, rateUnit }: Results): string | null {
  if (best === null) return null;
  const named = reliefs.slice(0, Math.min(NAMED, best.named)),
    others = best.named - named.length + best.others,
    names = [
      ...named.map(({ text }) => text),
      ...(others === 0 ? [] : [others === 1 ? 'one other' : `one of ${others} others`]),
    ],
    gains = named.map(({ gain }) => withInterval(gain)).join(', ');
  return (
    `The best single relief is ${names.join(' or ')}` +
    `${names.length > 1 ? ', which are not told apart' : ''}: ${gains} ${unitsEach(rateUnit)} more`
  );
}

/** What the value does that is to be measured next, or that none does. */
function measureText(results: Results): string[] {
  const {
    assumptions,
    values: { left },
    zone,
  } = results;
  if (assumptions.length === 0) return [];
  const next = nextText(results),
    notVaried = left.length === 0 ? '' : `; ${left.length} were not`;
  if (next !== null) return [`${next}.`];
  const isWithin = assumptions
    .flatMap(({ low, high }) => [low, high])
    .every((end) => {
      if (end === null) return true;
      if (end.out !== null) return end.out !== 'behind';
      const { low, high } = boundsOf(end.gain);
      return low >= -zone && high <= zone;
    });
  if (isWithin)
    return [
      (left.length === 0
        ? 'No guess or estimate'
        : `None of the ${assumptions.length} guesses and estimates that were varied`) +
        ` moves it by more than ${number(zone)} at either end of its range${notVaried}.`,
    ];
  return [
    `Whether one of the guesses and estimates that were varied moves it by more than ${number(zone)} ` +
      `cannot be told without more replications${notVaried}.`,
  ];
}

/** `Measure next: the work of build (guess, 2 h); at 2.4 h it ships 0.31 (95 % CI ..) units a week less`. */
export function nextText({ measureNext, rateUnit }: Results): string | null {
  if (measureNext === null) return null;
  const { words, basis, now, value, gain } = measureNext,
    isLess = gain.mean < 0;
  return (
    `Measure next: ${words} (${basis}, ${now}); at ${value} it ships ` +
    `${withInterval(isLess ? negated(gain) : gain)} ${unitsEach(rateUnit)} ${isLess ? 'less' : 'more'}`
  );
}
