import { describe, expect, it } from 'vitest';
import { DOWN, OFF_SHIFT, STATE_COUNT } from '../../../src/flow/floor/states.js';
import type { Observation } from '../../../src/measure/observe.js';
import { compile } from '../../../src/scenario/compile.js';
import { minutes, programme, scenario, site, station, step } from '../../scenario/compile-scenario.js';
import { observation } from '../made-observation.js';
import { summarise } from '../summarise.js';

/** Always open, in UTC; the booth down from the 3rd to the 4th of May. */
const down = scenario({
  programme: programme({ zone: 'UTC', quantity: 40, until: '2027-06-01' }),
  sites: {
    works: site(
      {
        booth: station({
          failures: [{ every: minutes(100), by: 'operating time', repair: minutes(5), hours: undefined }],
        }),
        bay: station(),
      },
      { zone: 'UTC' },
    ),
  },
  outages: [
    {
      stations: ['booth'],
      site: undefined,
      lanes: [],
      from: { day: '2027-05-03', minute: undefined },
      to: { day: '2027-05-04', minute: undefined },
      ...{ everyDays: undefined, times: undefined },
      note: undefined,
    },
  ],
  route: [step('paint', 'booth', { work: minutes(10) }), step('fit', 'bay', { work: minutes(5) })],
});
function seen(replication: number): Observation {
  const base = observation(down, replication),
    shares = base.stationShares.slice();
  shares.set([0.2, 0, 0, 0, 0, 0, 0, 0, 0.3, 0.1, 0.4], 0);
  return {
    ...base,
    outcome: 'ended',
    stationShares: shares,
    failures: {
      count: Float64Array.of(6, 0),
      repairs: Float64Array.of(5, 0),
      minutes: Float64Array.of(600, 0),
      longest: Float64Array.of(240, 0),
    },
  };
}
const results = summarise({
  scenario: down,
  model: compile(down),
  observations: [seen(1)],
  file: 'down.yaml',
  seed: 'made',
  level: 0.95,
});

describe('failures', () => {
  it('are those of stations that fail: number, hours of a repair, the longest, and the share of time on shift in which a place is not down', () => {
    expect([DOWN, OFF_SHIFT, STATE_COUNT]).toEqual([9, 10, 11]);
    const { failures } = results;
    expect(failures.map(({ name, site, places }) => [name, site, places])).toEqual([['booth', 'works', 1]]);
    expect(failures[0]).toMatchObject({
      failures: { mean: 6 },
      downHours: { mean: 2 },
      longestDownHours: { mean: 4 },
    });
    expect(failures[0].availability.mean).toBeCloseTo(1 - 0.1 / 0.6, 12);
  });
});

describe('outages', () => {
  it('are listed with what they close and when, and with nothing beside where nothing was run without them', () => {
    expect(results.outages).toEqual([
      {
        name: 'booth',
        stations: ['booth'],
        lanes: [],
        from: '2027-05-03T00:00:00',
        to: '2027-05-05T00:00:00',
        days: 2,
      },
    ]);
    expect(results.recoveries).toEqual([]);
  });
});
