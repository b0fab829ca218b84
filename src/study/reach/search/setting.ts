import { MINUTES_PER_DAY } from '../../../flow/model/time.js';
import type { Observation } from '../../../measure/observe.js';
import { dayNumber } from '../../../scenario/calendar/date.js';
import { compile } from '../../../scenario/compile.js';
import { midnightOf, runSpan } from '../../../scenario/programme/span.js';
import { over } from '../../constraint/trial.js';
import { allowedIn, unitsOut, wholeUnits } from '../../held/keep-up.js';
import { askedMore } from '../../held/more-asked.js';
import { judgeRate } from '../../held/rate-held.js';
import { lastUnitDay } from '../../programme/dates.js';
import { stretchOf } from '../../programme/judged-window.js';
import { shippedPerDay } from '../../programme/series.js';
import type { Changed } from '../../reliefs/changes.js';
import { type Replicator, type Variant, whole } from '../../run/replicator.js';
import { planned } from '../../sample/planned.js';
import type { ReachGoal } from '../results.js';
import { dateGoal, type Goal, rateGoal } from './goal.js';

/** What a set is judged by in the search, and how it is run for it. */
export interface Criterion {
  readonly goal: Goal;
  readonly variantOf: (made: Changed) => Variant<number>;
}
/** A set reaches the goal if it meets each of them; by the first, sets are ordered. */
export type Setting = readonly [Criterion, ...Criterion[]];

/** Share of the builds in which the last unit is to be out by the day asked. */
export const SURE_OF_DATE = 0.8;

/** So many times the rate is asked to see what a set can ship in the long run, see `withShippable`. */
const TIMES = 1.1;
/** Replications by which the weeks are found. */
const TO_SEE = 8;

/**
 * Of a rate it is the two halves of what it means that it holds, on average over the builds: that what is
 * asked in the weeks judged is shipped in them, and that in the long run as much can be shipped. Of a line
 * that is never short of units it is what it ships.
 *
 * The weeks in which sets are judged are those of the build with every change made, at the rate asked: it
 * settles soonest.
 * @param full with every change made
 * @param from no week that begins sooner is judged, minutes since the start
 * @throws RangeError where there is nothing to judge by
 */
export async function settingOf(
  goal: ReachGoal,
  full: Changed,
  { from, level }: { readonly from: number | undefined; readonly level: number },
  replicator: Replicator,
): Promise<Setting> {
  const plain = (read: (made: Changed) => (seen: Observation) => number) => (made: Changed) => ({
    ...{ key: made.key, model: made.model },
    read: read(made),
  });
  if (goal.kind === 'date') {
    const latest = midnightOf(dayNumber(goal.date) + 1, runSpan(full.scenario)) / MINUTES_PER_DAY;
    return [
      {
        goal: dateGoal(latest, goal.sure),
        variantOf: plain(() => (seen) => {
          const day = lastUnitDay(seen);
          return Number.isNaN(day) ? Infinity : day;
        }),
      },
    ];
  }
  const plan = planned(full.scenario, full.model),
    { perDay } = goal;
  if (full.scenario.programme.release.kind === 'saturated')
    return [
      {
        goal: rateGoal(perDay, perDay),
        variantOf: plain((made) => shippedPerDay(planned(made.scenario, made.model).calendar)),
      },
    ];
  const seen = await replicator.row({ key: `${full.key} seen`, model: full.model, read: whole }, 1, TO_SEE),
    { window, counting } = judgeRate(plan, seen, level, from);
  if (window === null || counting === null)
    throw new RangeError(
      'programme: expected whole weeks at the rate asked after the floor has filled, got none' +
        `${from === undefined ? '' : ' from that day on'}; give more units, or an earlier day`,
    );
  const stretch = stretchOf(plan, window),
    days = window.workingDays,
    keptUp: Criterion = {
      goal: rateGoal((window.asked - allowedIn(window.asked, counting)) / days, perDay),
      variantOf: plain(() => (each) => counting.shipped(each) / days),
    },
    canShip: Criterion = {
      goal: rateGoal((window.asked - wholeUnits(counting)) / days, perDay),
      variantOf: (made) => {
        const scenario = askedMore(made.scenario, TIMES * perDay, window),
          model = over(compile(scenario), stretch.from, stretch.to),
          units = unitsOut(model, counting);
        return {
          key: `${made.key} at ${TIMES * perDay} to ${stretch.to}`,
          model,
          // A build that stands still ships nothing more.
          read: (each) => (each.outcome === 'gridlock' ? 0 : units(each) / days),
        };
      },
    };
  return [keptUp, canShip];
}
