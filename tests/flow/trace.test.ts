import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/flow/engine.js';
import { BLOCKED, OFF_SHIFT, UNATTENDED, WORKING } from '../../src/flow/floor/states.js';
import { prepare } from '../../src/flow/plan.js';
import { IN_BANK, IN_BUFFER, ON_LOADING, ON_ROAD, ON_UNLOADING, traceUnit } from '../../src/flow/trace.js';
import { modelOf } from './run-yaml.js';

const told = (yaml: string, unit: number) =>
  traceUnit(prepare(modelOf(yaml)), 'trace', 1, unit).map(({ from, to, step, state }) => [
    from,
    to,
    step,
    state,
  ]);

describe('the way of one unit', () => {
  it('is told part by part: waits, work, what runs by itself, room and road', () => {
    const yaml = `
scenario: way
programme: { arrivals: 20 min, quantity: 2 }
sites: { a: { zone: UTC, stations: { one: { buffer: 1 }, two: {} } }, b: { zone: UTC, stations: { three: {} } } }
lanes: { road: { from: a, to: b, trucks: 1, capacity: 2, load: 4 min, drive: 30 min, unload: 6 min, leaves: { when full or after: 10 min } } }
route:
  - { step: coat, at: one, work: 15 min, process: 10 min }
  - { step: trim, at: two, work: 30 min }
  - { lane: road }
  - { step: last, at: three, work: 5 min }
`;
    // Unit 1: coat 20-45, trim 45-75, bank 75-85 (longest wait), loading to 89, on the road to 119, unloading
    // to 125, last to 130.
    expect(told(yaml, 1)).toEqual([
      [20, 35, 0, WORKING],
      [35, 45, 0, UNATTENDED],
      [45, 75, 1, WORKING],
      [75, 85, 2, IN_BANK],
      [85, 89, 2, ON_LOADING],
      [89, 119, 2, ON_ROAD],
      [119, 125, 2, ON_UNLOADING],
      [125, 130, 3, WORKING],
    ]);
    // Unit 2: released at 40, waits to 45, coat to 70, blocked to 75, trim to 105; the truck is back at 125
    // and its wait is over.
    expect(told(yaml, 2)).toEqual([
      [40, 45, 0, IN_BUFFER],
      [45, 60, 0, WORKING],
      [60, 70, 0, UNATTENDED],
      [70, 75, 1, BLOCKED],
      [75, 105, 1, WORKING],
      [105, 125, 2, IN_BANK],
      [125, 129, 2, ON_LOADING],
      [129, 159, 2, ON_ROAD],
      [159, 165, 2, ON_UNLOADING],
      [165, 170, 3, WORKING],
    ]);
  });

  it('is off shift outside the hours of the work, as the account of the place', () => {
    const yaml = `
scenario: nights
programme: { start: 2027-03-01, rate: { per day: 1 }, quantity: 1 }
calendars: { days: { hours: ["06:00-14:00"], breaks: ["10:00-10:30"] } }
sites: { hall: { zone: UTC, calendar: days, stations: { bench: {} } } }
route: [{ step: fit, at: bench, work: 9 h }]
`;
    // Monday 06:00 to 14:00 less half an hour, and 90 min on Tuesday.
    expect(told(yaml, 1)).toEqual([
      [360, 600, 0, WORKING],
      [600, 630, 0, OFF_SHIFT],
      [630, 840, 0, WORKING],
      [840, 1800, 0, OFF_SHIFT],
      [1800, 1890, 0, WORKING],
    ]);
  });

  it('adds up to the lead time exactly, for every unit of a line with chance, and leaves the run as it is to the last bit', () => {
    const plan = prepare(
      modelOf(`
scenario: chance
programme: { start: 2027-03-01, rate: { per day: 20 }, quantity: 60, options: { colour: { red: 50 %, white: 50 % } }, replace scrapped: true }
calendars: { days: { hours: ["06:00-14:00"], breaks: ["10:00-10:30"] } }
defects: { runs: {} }
sites: { hall: { zone: Europe/Oslo, calendar: days, crews: { painters: 2 }, stations: { booth: { buffer: 2, rework buffer: unlimited, changeover: { on: colour, work: 3 min } }, oven: { places: 3, buffer: unlimited, unattended: true, lot: { least: 1, most: 3, longest wait: 20 min } }, bay: { buffer: unlimited } } } }
route:
  - { step: coat, at: booth, crew: { painters: 2 }, passes: { count: 2, work: { exponential: { mean: 5 min } }, settle: 3 min }, creates: { runs: 30 % } }
  - { step: bake, at: oven, process: 25 min }
  - { step: look, at: bay, crew: { painters: 1 }, work: { exponential: { mean: 8 min } }, finds: { runs: { chance: 90 %, back to: coat, limit: 3 } }, fails: { chance: 5 %, scrap: true } }
`),
    );
    const run = simulate(plan, 'trace', 1);
    expect(run.tally.scrapped).toBeGreaterThan(0);
    for (let unit = 1; unit <= 60; unit++) {
      const parts = traceUnit(plan, 'trace', 1, unit);
      expect(parts[0].from).toBe(run.enteredAt[unit - 1]);
      expect(parts.at(-1)!.to).toBe(run.shippedAt[unit - 1]);
      parts.slice(1).forEach((part, i) => {
        expect(part.from).toBe(parts[i].to);
      });
      for (const { from, to } of parts) expect(to).toBeGreaterThan(from);
    }
  });

  it('is empty for a unit that never came', () => {
    expect(
      told(
        'scenario: one\nprogramme: { arrivals: 1 h, quantity: 1 }\nsites: { hall: { stations: { bench: {} } } }\nroute: [{ step: fit, at: bench, work: 1 h }]\n',
        2,
      ),
    ).toEqual([]);
  });
});
