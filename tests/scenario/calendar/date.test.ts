import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { dayNumber, isoDate, isoWeek, weekday } from '../../../src/scenario/calendar/date.js';

describe('dates as day numbers', () => {
  it('names ISO 8601 weeks as the standard does at the turn of a year', () => {
    // Cases of the usual table of ISO 8601 week dates at new year (from memory; the next test asks Temporal).
    const cases = {
      '2005-01-01': '2004-W53',
      '2007-01-01': '2007-W01',
      '2008-12-29': '2009-W01',
      '2009-12-31': '2009-W53',
      '2010-01-03': '2009-W53',
      '2027-06-07': '2027-W23',
    };
    for (const [date, week] of Object.entries(cases)) expect(isoWeek(dayNumber(date))).toBe(week);
  });

  it('agrees with Temporal on weekday, week and date over six years', () => {
    const first = dayNumber('2024-01-01');
    for (let day = first; day < first + 6 * 366; day += 5) {
      const date = Temporal.PlainDate.from(isoDate(day));
      expect(dayNumber(date.toString())).toBe(day);
      expect(weekday(day)).toBe(date.dayOfWeek);
      expect(isoWeek(day)).toBe(`${date.yearOfWeek}-W${String(date.weekOfYear).padStart(2, '0')}`);
    }
  });

  it('refuses a date that does not exist', () => {
    expect(() => dayNumber('2027-02-29')).toThrow(RangeError);
  });
});
