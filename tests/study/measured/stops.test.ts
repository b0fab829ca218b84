import { describe, expect, it } from 'vitest';
import { prepare } from '../../../src/flow/plan.js';
import { readStops } from '../../../src/records/table/stopped.js';
import { tableLines } from '../../../src/records/table/table.js';
import { dayNumber } from '../../../src/scenario/calendar/date.js';
import { failingPlaces, knownStations, minutesOf } from '../../../src/study/measured/failing.js';
import { stopsResults } from '../../../src/study/measured/stops.js';
import { modelFrom } from '../../../src/study/validate/start/standing-start.js';
import { scenarioOf } from '../validate/shop.js';

const yaml = `
scenario: Stops by hand
programme: { start: 2027-03-01, arrivals: 8 h, quantity: 10 }
calendars: { days: { hours: ['06:00-14:00'], on: Mon-Fri } }
sites:
  works:
    calendar: days
    stations:
      press: { failures: { every: 60 h, repair: 1 h, hours: days } }
      saw: { places: 2, failures: [{ every: 60 h, by: calendar time, repair: 1 h }] }
      bench: {}
route: [{ step: press, at: press, work: 1 h }, { step: saw, at: saw, work: 1 h }, { step: hand, at: bench, work: 1 h }]
`;
const scenario = scenarioOf(yaml),
  RAW = {
    sites: { works: { stations: { press: { failures: {} }, saw: { failures: [{}] } } } },
  },
  places = failingPlaces(scenario, RAW),
  begun = modelFrom(scenario, dayNumber('2027-03-01'), dayNumber('2027-04-01')),
  { calendars } = prepare(begun.model),
  at = (day: string, time = '00:00'): number => Date.parse(`${day}T${time}Z`) / 60_000;

function fitted(rows: string, days?: readonly [string, string], inUse = 1) {
  const read = readStops(
    tableLines(new TextEncoder().encode(`station,from,to\n${rows}`)),
    {},
    knownStations(places),
  );
  return stopsResults(read, {
    ...{ file: 'stops.csv', places, inUse },
    watch: () => ({ from: days && at(days[0]), to: days && at(days[1]) }),
    minutesOf: (station) => minutesOf(station, places.get(station)!, begun, calendars),
  });
}

/** By hand: 8 working hours a day, Monday 1 March to Friday 12 March. */
describe('stops of a station', () => {
  const ROWS = 'press,2027-03-03 10:00,2027-03-03 11:00\npress,2027-03-05 13:00,2027-03-08 07:00\n';

  it('count in the hours of the station, repairs in theirs, over nights and weekends', () => {
    const [press] = fitted(ROWS, ['2027-03-01', '2027-03-13']);
    // 10 days of 480 min, less 1 h and 1 h + 1 h of repair.
    expect(press.running).toBe(10 * 480 - 180);
    expect(press.failures).toBe(2);
    expect(press.toRepair.mean?.value).toBe(90);
    expect(press.toFailure.mean?.value).toBe((10 * 480 - 180) / 2);
    expect(press.entries.map(({ path }) => path)).toEqual([
      'sites.works.stations.press.failures.every',
      'sites.works.stations.press.failures.repair',
    ]);
    expect(fitted(ROWS, ['2027-03-01', '2027-03-13'], 0.5)[0].running).toBe((10 * 480 - 180) / 2);
  });

  it('begin with the first of them where nobody says since when it is watched', () => {
    const [press] = fitted(`${ROWS}press,2027-03-12 13:00,\n`);
    // 11:00 on the 3rd to 13:00 on the 5th: 18 h; 07:00 on the 8th to 13:00 on the 12th: 38 h.
    expect(press.running).toBe(56 * 60);
    expect(press.failures).toBe(2);
    expect(press.toRepair).toMatchObject({ ended: 2, cut: 1 });
    expect(press.told.join(' ')).toMatch(/watched from the end of its first stop.*last stop has no end/);
  });

  it('of several places are a rate over all, by the clock where the scenario says so', () => {
    const [saw] = fitted('saw,2027-03-02 06:00,2027-03-02 08:00\nsaw,2027-03-02 07:00,2027-03-02 08:00\n', [
      ...(['2027-03-01', '2027-03-03'] as const),
    ]);
    expect(saw).toMatchObject({ counted: 'calendar time', failures: 2, running: 2 * 2880 - 180 });
    expect(saw.toFailure).toMatchObject({ chosen: 'exponential', weibull: null });
    expect(saw.entries[0].path).toBe('sites.works.stations.saw.failures[0].every');
  });

  it('are told, with what to add, where the scenario has no failures', () => {
    const [bench] = fitted(
      'bench,2027-03-02 08:00,2027-03-02 09:00\nbench,2027-03-04 08:00,2027-03-04 09:00\n',
    );
    expect(bench.entries).toEqual([]);
    expect(bench.notWritten[0]).toMatch(/does not fail in the scenario.*failures: \{ every: \{ exponential/);
  });
});
