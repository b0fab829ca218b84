import { dayNumber, isoDate } from '../../scenario/calendar/date.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { count } from '../format.js';
import { holdingOf, SHIPS_ENOUGH } from '../held/holding.js';
import { type PlannersUnit, rateText } from '../planners-unit.js';
import { rampOf } from './at-rate.js';
import type { Line } from './line.js';
import type { RampResult, RateVerdict } from './results.js';
import { leastThatHolds } from './search.js';

/** Beyond the lead time: WIP comes to rest behind the first unit. */
export const REST_WEEKS = 4;
const WEEKS_A_YEAR = 52;

/**
 * Bisection over the weeks of a year from the programme's start: in each the last phase begins on the same
 * weekday as the start.
 */
export async function ramp(
  scenario: Scenario,
  line: Line,
  perDay: number | null,
  weeks: number,
  settleWeeks: number,
  unit: PlannersUnit,
): Promise<RampResult> {
  // After a lead time what comes out has to be what goes in; there is no rest behind it, since learning goes
  // on in it.
  const leadWeeks = Math.max(1, settleWeeks - REST_WEEKS),
    none = { perDay, begins: null, week: null, settleWeeks: leadWeeks, tried: [] };
  if (perDay === null)
    return {
      ...none,
      outcome: 'no rate',
      sentence: 'Ramp: no rate holds, so there is none to lead up to.',
    };
  const at = rateText(perDay, unit);
  if (rampOf(scenario).length === 1)
    return {
      ...none,
      outcome: 'no ramp',
      sentence: `Ramp: the programme has a single phase, so ${at} is asked from the start.`,
    };
  const begins = (week: number): string => isoDate(dayNumber(scenario.programme.start) + 7 * week);
  const tried = new Map<number, RampResult['tried'][number]>();
  const week = await leastThatHolds(WEEKS_A_YEAR, async (each): Promise<RateVerdict> => {
    const { readings, kept, window } = await line.at({
      perDay,
      begins: begins(each),
      settleWeeks: leadWeeks,
      weeks,
    });
    const replications = readings.length,
      { keptUp } = kept,
      verdict = holdingOf({ ...kept, isWhole: window.counting.isWhole, canShip: SHIPS_ENOUGH }),
      why = `${keptUp.count} of ${count(replications, 'build')} keep up`;
    tried.set(each, { week: each, begins: begins(each), verdict, why, replications, keptUp });
    return verdict;
  });
  const known = { ...none, week, tried: [...tried.values()].sort((a, b) => a.week - b.week) };
  if (week === null)
    return {
      ...known,
      outcome: 'not within a year',
      sentence:
        tried.get(WEEKS_A_YEAR)?.verdict === 'not settled'
          ? `Ramp: whether ${at} holds even where it is first asked a year after the start is not settled.`
          : `Ramp: ${at} does not hold even where it is first asked a year after the start.`,
    };
  return {
    ...known,
    outcome: week === 0 ? 'from the start' : 'from a week on',
    begins: begins(week),
    sentence:
      week === 0
        ? `Ramp: ${at} holds where it is asked from the first day on.`
        : `Ramp: ${at} holds where it is first asked in week ${week + 1} of the programme, ` +
          `${begins(week)}; a week earlier ` +
          (tried.get(week - 1)?.verdict === 'not settled' ? 'is not settled.' : 'it does not.'),
  };
}
