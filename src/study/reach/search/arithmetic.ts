import { arithmeticOf } from '../../loads/loads.js';
import type { Changed } from '../../reliefs/changes.js';

/** Arithmetic takes whole days and means; so much beyond it nothing was ever seen to ship. */
const MARGIN = 0.02;

/**
 * Whether a build is short of a rate whatever the chance, units a working day: where its arithmetic is a
 * limit. It is none where hours of overtime come on top, where processes run on outside of shifts, and where
 * people still learn, so that the last units take less than the mean.
 */
export function isShortByArithmetic(changed: Changed, perDay: number): boolean {
  if (!(perDay > 0)) return false;
  const {
      scenario: { calendars },
      model: { steps, stations, overtime },
    } = changed,
    runsOn = steps.processDraw.some((draw, step) => {
      const station = steps.station[step] ?? -1;
      return draw >= 0 && station >= 0 && (stations.calendar[station] ?? -1) >= 0;
    });
  const isLimit =
    overtime.length === 0 &&
    Object.values(calendars).every((calendar) => calendar.overtime.length === 0) &&
    !runsOn &&
    steps.learnExponent.every((exponent) => exponent === 0);
  return isLimit && arithmeticOf(changed).ceiling * (1 + MARGIN) < perDay;
}
