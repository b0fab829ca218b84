import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { MINUTES_PER_DAY } from '../../../src/flow/model/time.js';
import { dayNumber, isoDate } from '../../../src/scenario/calendar/date.js';
import { ZoneClock } from '../../../src/scenario/calendar/zone.js';

/** The reference: Temporal's own conversion, 'compatible' at gaps and overlaps. */
function reference(day: number, minute: number, zone: string): number {
  const local = Temporal.PlainDate.from(isoDate(day)).toPlainDateTime().add({ minutes: minute });
  return local.toZonedDateTime(zone, { disambiguation: 'compatible' }).epochMilliseconds / 60_000;
}

// Zones with change in spring and autumn, in the southern half, by half an hour, twice around Ramadan, and
// never.
const zones = [
  'Europe/Oslo',
  'America/Chicago',
  'Australia/Lord_Howe',
  'Africa/Casablanca',
  'Asia/Kolkata',
  'UTC',
];

describe('ZoneClock', () => {
  it.each(zones)('turns every half hour of %s around each change into the instant Temporal gives', (zone) => {
    const first = dayNumber('2027-01-01'),
      last = dayNumber('2027-12-31');
    const clock = new ZoneClock(zone, first, last);
    const offsetAt = (day: number): number => clock.instant(day * MINUTES_PER_DAY) - day * MINUTES_PER_DAY;
    let checked = 0;
    for (let day = first; day <= last; day++) {
      if (offsetAt(day) === offsetAt(day + 1) && day % 61 !== 0) continue;
      for (let minute = 0; minute < MINUTES_PER_DAY; minute += 15) {
        const instant = clock.instant(day * MINUTES_PER_DAY + minute);
        expect(instant).toBe(reference(day, minute, zone));
        const back = Temporal.Instant.fromEpochMilliseconds(instant * 60_000)
          .toZonedDateTimeISO(zone)
          .toPlainDateTime();
        expect(clock.local(instant)).toBe(
          Temporal.PlainDateTime.from('1970-01-01').until(back, { largestUnit: 'minutes' }).minutes,
        );
        checked++;
      }
    }
    expect(checked).toBeGreaterThan(400);
  });
});
