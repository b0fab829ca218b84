import type { Scenario } from '../../scenario/types/scenario.js';
import { wholeUnits } from '../held/keep-up.js';
import { allowedUnits } from '../held/shortfall.js';
import { weekOf } from '../loads/counting.js';
import type { Load } from '../loads/load.js';
import type { Arithmetic } from '../loads/loads.js';
import { type Covered, upset } from '../loads/upset.js';
import { weightsOver, wholeCycles } from '../loads/weights.js';
import { slowestText } from '../loads/words.js';
import { type PlannersUnit, rateText } from '../planners-unit.js';
import { releaseCalendar } from '../sample/planned.js';
import { watched } from './line.js';

/** How long a rate is watched where nothing asks for more, and at most without being told to. */
export const USUAL_WEEKS = 26;
const MOST_WEEKS = 104,
  WEEKS_LOOKED_AT = 1000;
/** Below so many units a window cannot show 2 %. */
export const LEAST_UNITS = 50;

/**
 * Weeks in which the lowest rate can be judged, and with it the others: those given, or else the usual number
 * or more. That is, in which at least 50 units are released and two cycles of each load go, and, if none are
 * given, in which loads alone can upset the count by no more than may be missing. A step of the rate has to
 * make more in them than whole units and loads may hide. Trucks fill slowest at the lowest rate. Parts from
 * outside may be short at higher rates alone; where their lots come too seldom for the window, that rate is
 * not settled.
 * @param lowest rate, units a working day
 * @param step from one rate to the next, units a working day; Infinity: there is one rate
 * @param given by the planner; undefined: as many as it takes
 * @throws RangeError `programme: expected ..` where those given are too few, also for the step, or it takes
 * more than two years
 */
export function weeksFor(
  base: Scenario,
  lowest: number,
  step: number,
  settleWeeks: number,
  given: number | undefined,
  arithmetic: Arithmetic,
  unit: PlannersUnit,
): number {
  const weeks = given ?? USUAL_WEEKS,
    { share } = weekOf({ scenario: base, calendar: releaseCalendar(base) });
  const { units, workingDays, counting } = watched(base, { perDay: lowest, settleWeeks, weeks }, arithmetic),
    takes = (isSure: boolean): number =>
      weeksTaken(counting.loads, isSure, {
        perDay: lowest,
        step,
        ceiling: arithmetic.ceiling,
        week: { days: workingDays / weeks, share },
      });
  if (given === undefined) {
    const most = Math.max(weeks, takes(true));
    if (most <= MOST_WEEKS) return most;
    throw new RangeError(
      isTold(step, MOST_WEEKS * (workingDays / weeks), 0)
        ? `programme: expected rates that can be judged in ${MOST_WEEKS} weeks, got ` +
            `${rateText(lowest, unit)}, which takes ${most}; give a higher rate, or --weeks ${most}`
        : `programme: expected rates that can be told apart in ${MOST_WEEKS} weeks, got ` +
            `${rateText(step, unit)} from one to the next, which takes ${most}; give a wider --step, or ` +
            `--weeks ${most}`,
    );
  }
  if (units < LEAST_UNITS)
    throw new RangeError(
      `programme: expected at least ${LEAST_UNITS} units in a window of ${weeks} weeks at ` +
        `${rateText(lowest, unit)}, got ${units}; give more --weeks or a higher rate`,
    );
  if (!counting.isWhole)
    throw new RangeError(
      `programme: expected a window of at least ${takes(false)} weeks at ${rateText(lowest, unit)}, where ` +
        `${slowestText(counting.loads)}, got ${weeks}; give more --weeks or a higher rate`,
    );
  if (!isTold(step, workingDays, counting.upset)) {
    const finest = wholeUnits(counting) / workingDays;
    throw new RangeError(
      `programme: expected rates at least ${rateText(roundedUp(finest), unit)} apart, which is as fine as ` +
        `${weeks} weeks can tell, got ${rateText(step, unit)}; give a wider --step, or more --weeks`,
    );
  }
  return weeks;
}

/** Whether a step makes as many units in a window as may be hidden in it; to nine digits. */
const isTold = (step: number, workingDays: number, upset: number): boolean =>
  step * workingDays * (1 + 1e-9) >= wholeUnits({ upset });

/** To two digits. */
function roundedUp(value: number): number {
  const scale = 10 ** (1 - Math.floor(Math.log10(value)));
  return Math.ceil(value * scale - 1e-9) / scale;
}

/** @param isSure loads alone are not to upset the count by more than may be missing */
function weeksTaken(
  loads: readonly Load[],
  isSure: boolean,
  flow: Pick<Covered, 'perDay' | 'ceiling' | 'week'> & { readonly step: number },
): number {
  const { perDay, week, step } = flow,
    cycles = loads.map(({ cycleDays }) => cycleDays);
  let weeks = Math.max(isSure ? USUAL_WEEKS : 1, Math.ceil(LEAST_UNITS / (perDay * week.days)));
  for (; weeks <= WEEKS_LOOKED_AT; weeks++) {
    const days = weeks * week.days,
      boxes = wholeCycles(cycles, { days, week: week.days });
    if (boxes === null) continue;
    if (!isSure) return weeks;
    const most = upset(loads, weightsOver(days, boxes), { ...flow, days, cells: Math.round(days) });
    if (most <= allowedUnits(perDay * days) && isTold(step, days, most)) return weeks;
  }
  return weeks;
}
