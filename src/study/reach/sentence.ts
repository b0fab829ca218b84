import { exact, withInterval } from '../format.js';
import { defined, listed } from '../lists.js';
import { rateText, unitsEach } from '../planners-unit.js';
import { mapped } from '../statistics/estimate.js';
import type { MadeResult, ReachGoal, ReachResults, SearchResult, StepResult } from './results.js';

/** `2 × “one painter more”`. */
export const madeText = ({ name, times }: Pick<MadeResult, 'name' | 'times'>): string =>
  `${times === 1 ? '' : `${times} × `}“${name}”`;

/** `“A”, 2 × “B” and “C”`. */
export const setText = (made: readonly Pick<MadeResult, 'name' | 'times'>[]): string =>
  made.length === 0 ? 'nothing' : listed(made.map(madeText), 'and');

/** `456,000 EUR`; nothing to buy is for nothing. */
export const moneyText = (money: number | null, currency: string): string =>
  money === null ? 'at a price that is not given' : `${exact(Math.round(money))} ${currency}`.trim();

/** The goal as it is spoken of: `4 a day`, `the last unit out by 2028-03-10`. */
export const goalText = ({ goal, rateUnit }: Pick<ReachResults, 'goal' | 'rateUnit'>): string =>
  goal.kind === 'rate' ? rateText(goal.perDay, rateUnit) : `the last unit out by ${goal.date}`;

/** What is made on the way, in its order. */
export const madeOnTheWay = ({ steps }: Pick<ReachResults, 'steps'>): MadeResult[] =>
  steps.flatMap(({ made }) => made ?? []);

/** Whether any change has a price; else the fewest changes are looked for. */
export const isPriced = ({ possible }: Pick<ReachResults, 'possible'>): boolean =>
  possible.some(({ price }) => price !== null);

type Finalist = SearchResult['finalists'][number];

/** Finalists beside the set that is told of which it is not known that they fall short; of a set that was
 * chosen they are cheaper. */
export function undecided(results: Pick<ReachResults, 'search' | 'steps'>): Finalist[] {
  const chosen = keyOf(madeOnTheWay(results));
  return results.search.finalists.filter(({ made, side }) => side !== 'below' && keyOf(made) !== chosen);
}

const keyOf = (made: readonly MadeResult[]): string =>
  JSON.stringify(made.map(({ name, times }) => [name, times]).toSorted());

/** How far it is known that no cheaper set does. */
function cheaperText(results: Pick<ReachResults, 'search' | 'steps' | 'possible' | 'currency'>): string {
  const [other] = undecided(results),
    cheaper = isPriced(results) ? 'every cheaper set' : 'every set of fewer changes';
  if (!results.search.isProven) return cheaper.replace('every', 'not every') + ' was tried';
  return other === undefined
    ? `${cheaper} falls short`
    : `whether ${other.made.length === 0 ? 'the build as it is' : setText(other.made)}` +
        `${other.made.length === 0 ? '' : forMoney(other.money, results)} would do is not settled`;
}

/** ` for 456,000 EUR`; nothing where no change has a price. */
const forMoney = (money: number | null, results: Pick<ReachResults, 'possible' | 'currency'>): string =>
  !isPriced(results) ? '' : money === null ? '' : ` for ${moneyText(money, results.currency)}`;

/** The answer in one sentence or two. */
export function reachSentence(results: Omit<ReachResults, 'answer'>): string {
  const { outcome, goal, steps, search, constraint } = results,
    last = defined(steps.at(-1)),
    made = madeOnTheWay(results),
    set = setText(made),
    reach = (isSingular: boolean): string =>
      goal.kind === 'rate' ? (isSingular ? 'reaches' : 'reach') : isSingular ? 'has' : 'have',
    asked = goalText(results),
    does = goal.kind === 'rate' ? `it is ${shipsText(results)}` : outText(last, goal);
  switch (outcome) {
    case 'holds already':
      return goal.kind === 'rate'
        ? `${asked} holds as it is: nothing has to be changed`
        : `the last unit is out by ${goal.date} as it is: nothing has to be changed`;
    case 'reached':
      return (
        (goal.kind === 'rate'
          ? `${set} ${isOne(made) ? 'holds' : 'hold'} ${asked}`
          : `${set} ${reach(isOne(made))} ${asked}`) +
        `${forMoney(last.money, results)}: ${cheaperText(results)}`
      );
    case 'not settled':
      return (
        `whether ${made.length === 0 ? 'it' : set} ${reach(made.length === 0 || isOne(made))} ${asked} ` +
        `${made.length === 0 ? 'as it is, ' : ''}is too close to tell: ${does}`
      );
    case 'not reached':
      return (
        `${search.isProven ? 'no set of changes that may be made' : 'none of the sets that were tried'} ` +
        `${reach(true)} ${asked}: ` +
        `${made.length === 0 ? 'as it is,' : `with ${set}`} ${does}` +
        (constraint.culprit === null ? '' : `. ${constraint.sentence}`)
      );
  }
}

/** `3.9 units a working day (95 % CI 3.8 to 4)`: what the build at the end of the way ships. */
const shipsText = ({ steps, rateUnit }: Omit<ReachResults, 'answer'>): string =>
  withInterval(
    mapped(defined(steps.at(-1)).throughput, (value) => value * rateUnit.workingDays),
    unitsEach(rateUnit),
  );

/** When the last unit is out in as many builds as are asked. */
function outText({ lastUnit }: StepResult, { sure }: Extract<ReachGoal, { kind: 'date' }>): string {
  const date = lastUnit.find(({ p }) => p === sure)?.date ?? null;
  return date === null
    ? 'the day is not known'
    : `it is out by ${date} in ${exact(Math.round(100 * sure))} of 100 builds`;
}

const isOne = (made: readonly MadeResult[]): boolean => made.length === 1 && made[0]?.times === 1;
