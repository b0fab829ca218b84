import { describe, expect, it } from 'vitest';
import { CalendarBook } from '../../../src/scenario/calendar/book.js';
import { runSpan } from '../../../src/scenario/programme/span.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';

/** Invented. */
const read = (start: string, hours = '06:00-14:00'): Scenario => {
  const { scenario } = readScenario(
    `
scenario: a day
programme: { start: ${start}, quantity: 2, rate: { per day: 1 } }
calendars: { days: { hours: ["${hours}"], overtime: [{ hours: ["14:00-15:00"] }] } }
sites: { a: { calendar: days, stations: { s: {} } } }
route: [{ step: one, at: s, work: 1 h }]
`,
    'day.yaml',
    () => '',
  );
  if (scenario === undefined) throw new Error('expected a scenario, got problems');
  return scenario;
};
const rosterOf = (scenario: Scenario, zone = 'UTC') =>
  new CalendarBook(scenario, runSpan(scenario)).roster('days', zone);

describe('calendars of a scenario with one thing changed', () => {
  it('are expanded once', () => {
    const scenario = read('2027-04-05');
    expect(rosterOf({ ...scenario })).toBe(rosterOf(scenario));
  });

  it('are expanded anew where the calendar, the zone or the span is another', () => {
    const scenario = read('2027-04-05'),
      [first] = rosterOf(scenario),
      later = { ...read('2027-05-03'), calendars: scenario.calendars },
      without = {
        ...scenario,
        calendars: { days: { ...scenario.calendars.days, overtime: [] } },
      };
    expect(rosterOf(later)).toEqual(rosterOf(read('2027-05-03')));
    expect(rosterOf(later)).not.toEqual(rosterOf(scenario));
    // A window a day for the shift, and one for the hour behind it.
    expect(rosterOf(scenario)).toHaveLength(2 * rosterOf(without).length);
    expect(rosterOf(scenario, 'America/New_York')[0].start).not.toBe(first.start);
    expect(rosterOf(scenario)).toEqual(rosterOf(read('2027-04-05')));
  });
});
