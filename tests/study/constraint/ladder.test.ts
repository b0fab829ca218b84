import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/flow/engine.js';
import { prepare } from '../../../src/flow/plan.js';
import { observe } from '../../../src/measure/observe.js';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { capacity } from '../../../src/study/capacity/capacity.js';
import { ladder } from '../../../src/study/constraint/ladder.js';
import type { LadderResult } from '../../../src/study/constraint/results.js';
import { over } from '../../../src/study/constraint/trial.js';
import { shippedPerDay } from '../../../src/study/programme/series.js';
import { planned } from '../../../src/study/sample/planned.js';
import { randomScenario, toYaml } from '../../properties/random-scenario.js';

function read(yaml: string): Scenario {
  const { scenario, problems } = readScenario(yaml, 'test.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
}

/** Ladders of all rows of the capacity table, by name, from replications over the whole run. */
function laddersOf(yaml: string, replications = 2): Map<string, LadderResult | null> {
  const scenario = read(yaml),
    model = over(compile(scenario), 0, DAYS_SEEN * 1440),
    plan = planned(scenario, model),
    seen = Array.from({ length: replications }, (_, r) =>
      observe(simulate(prepare(model), 'ladder', r + 1), r + 1),
    ),
    perDay = seen.map(shippedPerDay(plan.calendar));
  return new Map(
    capacity(model, scenario).rows.map((row) => [row.name, ladder(plan, row, seen, perDay, 0.95)]),
  );
}

const lossesOf = (found: LadderResult | null | undefined): Record<string, number> =>
  Object.fromEntries((found?.losses ?? []).map(({ cause, perDay }) => [cause, perDay.mean]));

const DAYS = 'calendars: { days: { hours: ["07:00-15:00"], on: Mon-Sun } }';
/** From a Monday, 480 minutes a day; the run is cut off after twenty days. */
const untilDay20 = (rate: number): string =>
  `programme: { start: 2027-03-01, until: 2027-05-01, rate: { per day: ${rate} } }`;
const DAYS_SEEN = 20;

describe('the ladder from what arithmetic allows to what is shipped', () => {
  it('adds up exactly on any scenario, for whatever may be the constraint', () => {
    let ladders = 0;
    fc.assert(
      fc.property(randomScenario, (drawn) => {
        for (const found of laddersOf(toYaml(drawn), 1).values()) {
          if (found === null || !(found.shippedPerDay.n > 0)) continue;
          const lost = found.losses.reduce((sum, { perDay }) => sum + perDay.mean, 0);
          expect(found.allowedPerDay - lost).toBeCloseTo(
            found.shippedPerDay.mean,
            // To nine digits of the largest figure in it.
            9 - Math.ceil(Math.log10(Math.max(1, found.allowedPerDay))),
          );
          ladders++;
        }
      }),
      { seed: 11, numRuns: 60 },
    );
    expect(ladders).toBeGreaterThan(200);
  }, 120_000);

  it('of a crew of five for threes: the two that nobody can ask for are no loss', () => {
    // 120 min of three people a unit in 480 min a day: 4 a day by arithmetic, one unit at a time. 2 a day are
    // asked and shipped, so the three are idle half of the time.
    const found = laddersOf(`
scenario: threes
${untilDay20(2)}
${DAYS}
sites: { a: { calendar: days, crews: { builders: 5 }, stations: { s: { buffer: unlimited, places: 2 } } } }
route: [{ step: one, at: s, crew: { builders: 3 }, work: 120 min }]
`).get('builders');
    expect(found?.allowedPerDay).toBeCloseTo(4, 9);
    expect(lossesOf(found)).toEqual({ 'idle, nothing to work on': expect.closeTo(2, 9) as number });
  });

  it('of a station that is asked for less than it can: the rest of its time it is starved', () => {
    // 120 min a unit in 480 min a day: 4 a day by arithmetic. 2 a day are asked and shipped, so it stands half
    // of the time.
    const found = laddersOf(`
scenario: idle
${untilDay20(2)}
${DAYS}
sites: { a: { calendar: days, stations: { s: { buffer: unlimited } } } }
route: [{ step: one, at: s, work: 120 min }]
`).get('s');
    expect(found?.allowedPerDay).toBeCloseTo(4, 9);
    expect(found?.shippedPerDay.mean).toBeCloseTo(2, 9);
    expect(lossesOf(found)).toEqual({ 'starved, no unit to work on': expect.closeTo(2, 9) as number });
  });

  it('of a station before a slower one: it is blocked', () => {
    // s could do 4 a day, t does 2 (240 min): with no room between them s is blocked when it is not at work.
    const found = laddersOf(`
scenario: blocked
${untilDay20(4)}
${DAYS}
sites: { a: { calendar: days, stations: { s: { buffer: unlimited }, t: { buffer: 0 } } } }
route: [{ step: one, at: s, work: 120 min }, { step: two, at: t, work: 240 min }]
`).get('s');
    // t ships at 360 min, then every 240 of 9600 working minutes: 1 + floor(9240 / 240) = 39, 1.95 a day.
    expect(found?.shippedPerDay.mean).toBeCloseTo(1.95, 9);
    // s works on 41 units, the last at 120 + 39 * 240 = 9480 min until the end: 41 * 120 min, all done at 9600.
    // Blocked: 9600 - 4920 = 4680 min = 39 units of 120 min: 1.95 a day. Two units have passed it and are not
    // out: 2 / 20 = 0.1 a day.
    expect(lossesOf(found)).toEqual({
      'blocked, no room ahead': expect.closeTo(1.95, 9) as number,
      'units done here, not yet out': expect.closeTo(0.1, 9) as number,
    });
  });

  it('of a station that breaks down as often as arithmetic says: nothing is lost beyond the mean', () => {
    // Fails after every 300 min of work for 60 min: fit for 5/6 of the time, 100 min of work cost 120: 4 a day.
    // In 9600 min there are 80 units and 26 whole failures (26 * 360 = 9360); the 27th would come at 9660.
    // Work: 9600 - 26 * 60 = 8040 min, 80.4 units. Shipped 80: 4 a day.
    const found = laddersOf(`
scenario: failures
${untilDay20(6)}
${DAYS}
sites: { a: { calendar: days, stations: { s: { buffer: unlimited, failures: [{ every: 300 min, by: operating time, repair: 60 min }] } } } }
route: [{ step: one, at: s, work: 100 min }]
`).get('s');
    expect(found?.allowedPerDay).toBeCloseTo(4, 9);
    expect(found?.shippedPerDay.mean).toBeCloseTo(4, 9);
    const losses = lossesOf(found);
    // Down for 26 * 60 = 1560 min where 80 units cost 1600 by plan: 40 min less, over 120 a unit and 20 days.
    expect(losses['failures and outages beyond the average']).toBeCloseTo(-40 / 120 / 20, 9);
    // The 81st unit has been worked on for 40 min.
    expect(
      losses['units done here, not yet out'] + (losses['work and process times beyond the average'] ?? 0),
    ).toBeCloseTo(40 / 120 / 20, 9);
  });

  it('of parts that come in time but are not all used, and of parts that are late', () => {
    // A lot of 14 every 7 days is 2 a day; 1 a day is asked: the other stays in stock. Day 20 is a Saturday,
    // lots come on days 0, 7 and 14: 42 parts in 20 days are 2.1 a day.
    const found = laddersOf(`
scenario: parts
${untilDay20(1)}
${DAYS}
sites: { a: { calendar: days, stations: { s: { buffer: unlimited } } } }
supplies: { packs: { site: a, at start: 0, deliveries: { lot: 14, every: 7 days } } }
route: [{ step: one, at: s, parts: { packs: 1 }, work: 60 min }]
`).get('packs');
    expect(found?.allowedPerDay).toBeCloseTo(2, 9);
    expect(found?.shippedPerDay.mean).toBeCloseTo(1, 9);
    expect(lossesOf(found)).toEqual({
      'fewer parts came than planned': expect.closeTo(-0.1, 9) as number,
      'parts left in stock': expect.closeTo(1.1, 9) as number,
    });
  });
});
