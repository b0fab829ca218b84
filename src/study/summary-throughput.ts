import type { Observation } from '../measure/observation.js';
import { workingDaysBetween, type ReleaseCalendar } from './release-calendar.js';
import type { Later } from './later.js';
import type { Estimate } from './results.js';
import { ratio, type Sample } from './sample.js';

/** Units shipped a working day of the first station's site, over the whole time observed; NaN where there was no such day. */
export const shippedPerDay =
  ({ workingDays }: Pick<ReleaseCalendar, 'workingDays'>) =>
  ({ shipped, endedAt, minutes }: Pick<Observation, 'shipped' | 'endedAt' | 'minutes'>): number =>
    ratio(shipped, workingDaysBetween(workingDays, endedAt - minutes, endedAt));

/** Units shipped over the time observed, per working day of the first station's site and per hour of the clock. */
export function throughput(sample: Sample): {
  readonly perDay: Later<Estimate>;
  readonly perHour: Later<Estimate>;
} {
  return {
    perDay: sample.amount(shippedPerDay(sample.calendar)),
    perHour: sample.amount(({ shipped, minutes }) => ratio(60 * shipped, minutes)),
  };
}
