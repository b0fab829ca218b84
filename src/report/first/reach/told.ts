import { exact } from '../../../study/format.js';
import { defined } from '../../../study/lists.js';
import { eachWorking, inUnit, rateText } from '../../../study/planners-unit.js';
import type {
  BuildResult,
  FrontierResult,
  MadeResult,
  PossibleResult,
  ReachResults,
  StepResult,
} from '../../../study/reach/results.js';
import {
  isPriced,
  madeOnTheWay,
  madeText,
  moneyText,
  setText,
  undecided,
} from '../../../study/reach/sentence.js';
import { boundsOf, type Estimate, mapped } from '../../../study/statistics/estimate.js';
import { onEveryShift } from '../../constraint.js';

/** How often changes are made in all, each as often as it is. */
export const timesIn = (made: readonly MadeResult[]): number =>
  made.reduce((sum, { times }) => sum + times, 0);

/** The build at the end of the way. */
export const lastOf = ({ steps }: Pick<ReachResults, 'steps'>): StepResult => defined(steps.at(-1));
/** The build as it is. */
export const nowOf = ({ steps }: Pick<ReachResults, 'steps'>): StepResult => defined(steps[0]);

/** Units a working day as units of the planner's time. */
export const inPlanners = (perDay: Estimate, { rateUnit }: Pick<ReachResults, 'rateUnit'>): Estimate =>
  mapped(perDay, (value) => value * rateUnit.workingDays);

/** `465,000 EUR`, `at a price that is not given`; '' where no change has a price. */
export const moneyOf = (
  { money }: Pick<BuildResult, 'money'>,
  results: Pick<ReachResults, 'possible' | 'currency'>,
): string => (isPriced(results) ? moneyText(money, results.currency) : '');

/** ` for 465,000 EUR`, ` at a price that is not given`; '' where no change has a price. */
export function forMoney(
  { money }: Pick<BuildResult, 'money'>,
  results: Pick<ReachResults, 'possible' | 'currency'>,
): string {
  const text = moneyOf({ money }, results);
  return text === '' ? '' : money === null ? ` ${text}` : ` for ${text}`;
}

/** `as it is`, `“A” and 2 × “B”`. */
export const setOrAsIs = (made: readonly MadeResult[]): string =>
  made.length === 0 ? 'as it is' : setText(made);

/** What a step is called: `as it is`, `2 × “a painter more”`. */
export const stepName = ({ made }: StepResult): string => (made === null ? 'as it is' : madeText(made));

/** What a change does in words, `one person more on every shift in painters`; '': it is not known. */
export const whatIs = (name: string, possible: readonly PossibleResult[]): string =>
  onEveryShift(possible.find((each) => each.name === name)?.what ?? '');

/** How often a change is made on the way; 0: it is not. */
export const timesMade = (name: string, results: Pick<ReachResults, 'steps'>): number =>
  timesIn(madeOnTheWay(results).filter((made) => made.name === name));

/** What a step does to what is shipped, by the whole interval of its gain. */
export type StepVerdict = 'brings more' | 'no gain seen' | 'ships less';

/** null: of the build as it is. */
export function stepVerdict({ gain }: StepResult): StepVerdict | null {
  if (gain === null) return null;
  const { low, high } = boundsOf(gain);
  return low > 0 ? 'brings more' : high < 0 ? 'ships less' : 'no gain seen';
}

/** Later changes on the way that a step is needed for. */
export function neededBy({ made }: StepResult, { possible, steps }: ReachResults): string[] {
  return made === null
    ? []
    : possible
        .filter(
          ({ name, requires }) => requires.includes(made.name) && steps.some((s) => s.made?.name === name),
        )
        .map(({ name }) => name);
}

/** The rate or the day that is asked, short: `4`, `10 March 2028` as an ISO date. */
export const askedShort = ({ goal, rateUnit }: Pick<ReachResults, 'goal' | 'rateUnit'>): string =>
  goal.kind === 'rate' ? exact(inUnit(goal.perDay, rateUnit)) : goal.date;

/** `with these changes`. */
export const withThem = (results: Pick<ReachResults, 'steps'>): string =>
  timesIn(madeOnTheWay(results)) === 1 ? 'with this change' : 'with these changes';

/** `at 4.4 a day`, `with these changes at 4.4 a day`: on which build it was tried what stops it. */
export function triedOnWay(results: Pick<ReachResults, 'steps' | 'constraint' | 'rateUnit'>): string {
  const { askedPerDay } = results.constraint,
    at = askedPerDay === null ? '' : `at ${rateText(askedPerDay, results.rateUnit)}`;
  return madeOnTheWay(results).length === 0 ? at || 'as it is' : `${withThem(results)} ${at}`.trim();
}

/** The day on which the last unit is out in so many of the builds, ISO; null: not known. */
export const outBy = ({ lastUnit }: Pick<BuildResult, 'lastUnit'>, share: number): string | null =>
  lastUnit.find(({ p }) => p === share)?.date ?? null;

/** `4 a working day`, `20 a week`. */
export const askedWorking = (perDay: number, { rateUnit }: Pick<ReachResults, 'rateUnit'>): string =>
  `${exact(inUnit(perDay, rateUnit))} ${eachWorking(rateUnit)}`;

/** Every cheaper set falls short, as far as no change does harm: no part of the set would do. */
export const isLeast = (results: ReachResults): boolean =>
  results.outcome === 'reached' && results.search.isProven && undecided(results).length === 0;

/** How much a set comes to: what its place on the axis of a picture is, `of` money or changes. */
export const sumOf = (
  build: Pick<FrontierResult, 'money' | 'made'>,
  results: Pick<ReachResults, 'possible'>,
): number | null => (isPriced(results) ? build.money : timesIn(build.made));

/** The command that would be asked the same, with another rate or more replications. */
export function sameCommand(
  { scenario, goal, by, ordered, budget, atMost, rateUnit }: ReachResults,
  { times = 1, replications }: { readonly times?: number; readonly replications?: number } = {},
): string {
  return [
    `rateproof reach ${scenario.file}`,
    goal.kind === 'rate'
      ? `--rate ${Number((inUnit(goal.perDay, rateUnit) * times).toPrecision(4))}`
      : `--date ${goal.date}`,
    ...(by === null ? [] : [`--by ${by}`]),
    ...(ordered === null ? [] : [`--ordered ${ordered}`]),
    ...(budget === null ? [] : [`--budget ${budget}`]),
    ...(atMost === null ? [] : [`--at-most ${atMost}`]),
    ...(replications === undefined ? [] : [`--replications ${replications}`]),
  ].join(' ');
}

/** Whether a change has no price while others have. */
export const hasUnpriced = (results: Pick<ReachResults, 'possible'>): boolean =>
  isPriced(results) && results.possible.some(({ price }) => price === null);
