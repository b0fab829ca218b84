import { count, exact } from '../../../study/format.js';
import type { ReachResults, UnpricedResult } from '../../../study/reach/results.js';
import { isPriced, moneyText, setText } from '../../../study/reach/sentence.js';
import { figure, range } from '../figures.js';
import type { Line } from '../first.js';
import { lastUnitLine } from '../lines/last-unit.js';
import { lastOf, nowOf, withThem } from './told.js';

/** When the last unit is out with the changes and today; nothing without a quantity. */
export function dates(results: ReachResults): Line {
  const { steps, plannedEnd } = results;
  return lastUnitLine(
    lastOf(results).lastUnit,
    steps.length === 1
      ? { plannedEnd }
      : { of: withThem(results), plannedEnd, today: nowOf(results).lastUnit },
  );
}

/** What a unit costs before and after; what is paid once is told beside it. */
export function costs(results: ReachResults): string[] {
  const { currency, steps } = results,
    last = lastOf(results),
    { costPerUnit: now } = nowOf(results);
  if (now === null || last.costPerUnit === null) return ['The scenario gives no prices.'];
  const unit = `${figure(last.costPerUnit)} ${currency} (${range(last.costPerUnit)})`;
  if (steps.length === 1) return [`A unit costs ${unit}.`];
  const once =
    last.money === null || !isPriced(results)
      ? '; what the changes cost once is not in it'
      : spread(last.money, last.costPerUnit.mean, now.mean, results);
  return [
    `A unit then costs ${unit}` +
      (last.day === 0 ? '' : `, with the ${exact(last.day)} ${currency} a day of the changes`) +
      `; today ${figure(now)}` +
      `${once}.`,
  ];
}

/** What is paid once, shared out over the units of the programme: whether it is worth while. */
function spread(money: number, then: number, now: number, { quantity, currency }: ReachResults): string {
  if (quantity === null) return `; the ${moneyText(money, currency)} paid once are not in it`;
  const whole = then + money / quantity,
    more = whole - now;
  return (
    `. With the ${moneyText(money, currency)} spread over ${count(quantity, 'unit')} it is ` +
    `${roughTo(whole)}, ${roughTo(Math.abs(more))} ${more >= 0 ? 'more' : 'less'} than today`
  );
}

/** To ten, as what it is worked out of is known no better. */
const roughTo = (value: number): string => exact(Math.round(value / 10) * 10);

/** What quotes for changes without a price would be good for. */
export const worth = (results: ReachResults): string[] =>
  results.unpriced.map((each) => worthText(each, results));

export function worthText(
  { names, made, money, worth: most }: UnpricedResult,
  { outcome, currency }: ReachResults,
): string {
  const asked = names.map((name) => `“${name}”`).join(' and '),
    others = made.filter(({ name }) => !names.includes(name)),
    rest =
      others.length === 0
        ? 'it would do with nothing else'
        : `it would do with ${setText(others)}, for ${moneyText(money, currency)}`;
  return (
    `The price of ${asked} is not given: with ${names.length === 1 ? 'it' : 'them'} ${rest}` +
    (most !== null
      ? `, so ${names.length === 1 ? 'it is' : 'they are'} worth up to ${moneyText(most, currency)}.`
      : outcome === 'not reached'
        ? '; without, no set does.'
        : '.')
  );
}
