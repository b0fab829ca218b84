import { workingDaysBetween } from './release-calendar.js';
import type { Results } from './results.js';
import { ratio, type Sample } from './sample.js';

/** Units shipped over the time observed, per working day of the first station's site and per hour of the clock. */
export function throughput(sample: Sample): Results['throughput'] {
  return {
    perDay: sample.amount(({ shipped, endedAt, minutes }) => ratio(shipped, workingDaysBetween(sample.calendar.workingDays, endedAt - minutes, endedAt))),
    perHour: sample.amount(({ shipped, minutes }) => ratio(60 * shipped, minutes)),
  };
}
