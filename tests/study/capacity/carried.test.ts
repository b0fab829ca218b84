import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/flow/engine.js';
import { STATE_COUNT } from '../../../src/flow/floor/states.js';
import { prepare } from '../../../src/flow/plan.js';
import { observe } from '../../../src/measure/observe.js';
import { compile } from '../../../src/scenario/compile.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import type { StationStep } from '../../../src/scenario/types/steps.js';
import { demand } from '../../../src/study/capacity/demand.js';
import {
  back,
  carry,
  chance,
  feeder,
  minutes,
  programme,
  repair,
  scenario,
  site,
  station,
  step,
} from '../../scenario/compile-scenario.js';

const roomy = (parts: Pick<Scenario, 'route'> & Partial<Scenario>): Scenario => {
  const routes = [parts.route, ...Object.values(parts.feeders ?? {}).map(({ route }) => route)];
  const names = new Set(
    routes
      .flat()
      .filter((entry): entry is StationStep => entry.kind === 'step')
      .map(({ at }) => at),
  );
  return scenario({
    sites: {
      yard: site(
        Object.fromEntries([...names].map((name) => [name, station({ places: 60, buffer: undefined })])),
      ),
    },
    defects: { crack: { note: undefined }, dent: { note: undefined }, gap: { note: undefined } },
    programme: programme({ quantity: 20_000, release: { kind: 'interval', interval: minutes(5) } }),
    ...parts,
  });
};
const attendedAt = (of: Scenario, name: string): number => {
  const model = compile(of);
  return demand(model).attended[model.steps.names.indexOf(name)];
};

describe('carried items in the arithmetic', () => {
  it('are what the feeder leaves: of n parts with residual chance r, 1 - (1 - r)^n', () => {
    // Made 0.3, gauge finds 0.6: r = 0.12. Two axles: 1 - 0.88^2 = 0.2256; found with 0.5, 10 min each:
    // 1.128.
    const of = roomy({
      feeders: {
        axles: feeder(
          [
            step('weld', 'bench', { work: minutes(3), creates: { crack: chance(0.3) } }),
            step('gauge', 'bench', { finds: { crack: repair(0.6, minutes(1)) } }),
          ],
          { target: 30 },
        ),
      },
      route: [
        step('fit', 'line', { work: minutes(5), parts: { axles: 2 } }),
        step('look', 'gate', { finds: { crack: repair(0.5, minutes(10)) } }),
      ],
    });
    expect(attendedAt(of, 'look')).toBeCloseTo(0.5 * (1 - 0.88 ** 2) * 10, 10);
  });

  it('come through kits, and with own parts', () => {
    const of = roomy({
      feeders: {
        axles: feeder([step('weld', 'bench', { work: minutes(3), creates: { crack: chance(0.3) } })], {
          target: 30,
        }),
        kits: feeder(
          [
            step('assemble', 'bench', {
              work: minutes(1),
              parts: { axles: 1 },
              finds: { crack: repair(0.5, minutes(2)) },
            }),
          ],
          { target: 30 },
        ),
        doors: feeder([step('trim', 'bench', { work: minutes(4), creates: { dent: chance(0.2) } })], {
          kind: 'own',
          target: 0,
        }),
      },
      route: [
        step('off', 'line', { work: minutes(5), takesOff: ['doors'] }),
        step('fit', 'line', { work: minutes(5), parts: { kits: 1, doors: 'own' } }),
        step('look', 'gate', { finds: { crack: repair(1, minutes(10)), dent: repair(0.5, minutes(7)) } }),
      ],
    });
    expect(attendedAt(of, 'assemble')).toBeCloseTo(1 + 0.3 * 0.5 * 2, 10);
    expect(attendedAt(of, 'look')).toBeCloseTo(0.15 * 10 + 0.1 * 7, 10);
  });

  it('visit the hold as often as something is noted, and are mended there', () => {
    // 0.3 x 0.8 and 0.5 x 0.4 noted: held 1 - 0.76 x 0.8 = 0.392; mending 0.24 x 30 + 0.2 x 20 = 11.2.
    const of = roomy({
      route: [
        step('make', 'mill', { work: minutes(5), creates: { crack: chance(0.3), dent: chance(0.5) } }),
        step('look', 'gate', { finds: { crack: carry(0.8, minutes(30)), dent: carry(0.4, minutes(20)) } }),
        step('hold', 'hold area', { hold: { mend: undefined } }),
      ],
    });
    const model = compile(of),
      asks = demand(model),
      hold = model.steps.names.indexOf('hold');
    expect(asks.visits[hold]).toBeCloseTo(0.392, 10);
    expect(asks.attended[hold]).toBeCloseTo(11.2, 10);
  });

  it('and everything about them agree with 20,000 units through the engine at every step', {
    timeout: 60_000,
  }, () => {
    const of = roomy({
      feeders: {
        axles: feeder(
          [
            step('weld', 'weld bench', { work: minutes(3), creates: { crack: chance(0.3) } }),
            step('gauge', 'gauge', { work: minutes(1), finds: { crack: back(0.7, 'weld', { limit: 1 }) } }),
          ],
          { target: 60, atStart: 0 },
        ),
        doors: feeder(
          [
            step('trim', 'trim bench', { work: minutes(4), creates: { dent: chance(0.25) } }),
            step('feel', 'trim bench', { work: minutes(1), finds: { dent: carry(0.5, minutes(12)) } }),
          ],
          { kind: 'own', target: 0 },
        ),
      },
      route: [
        step('off', 'strip', { work: minutes(2), takesOff: ['doors'] }),
        step('coat', 'booth', { work: minutes(9), creates: { gap: chance(0.4) } }),
        step('look', 'gate', {
          work: minutes(2),
          finds: { gap: carry(0.5, minutes(25)) },
          fails: carry(0.1, minutes(8)),
        }),
        step('fit', 'line', { work: minutes(5), parts: { axles: 2, doors: 'own' } }),
        step('second look', 'second gate', {
          work: minutes(2),
          finds: { gap: repair(0.5, minutes(6)), crack: back(0.6, 'fit', { limit: 3 }) },
          comparesWith: { step: 'look', differs: minutes(15) },
        }),
        step('hold', 'hold area', { hold: { mend: minutes(45) } }),
        step('last look', 'last gate', {
          work: minutes(2),
          finds: { crack: repair(0.9, minutes(30)), dent: repair(0.9, minutes(11)) },
        }),
      ],
    });
    const model = compile(of),
      expected = demand(model),
      run = simulate(prepare(model), 'carried against engine', 1),
      seen = observe(run, 1);
    const off = model.steps.names
      .map((name, s) => ({ name, visits: seen.stepVisits[s] / 20_000, expected: expected.visits[s] }))
      .filter((row) => Math.abs(row.visits - row.expected) > 0.025);
    expect(off).toEqual([]);
    // Minutes worked a unit at each station; their standard deviation is at most 40, so the mean's is 0.28:
    // 0.9 is 3.2 of them.
    const worked = model.stations.names.map((name, station) => ({
      name,
      seen:
        (seen.stationShares[station * STATE_COUNT] * seen.minutes * model.stations.places[station]) / 20_000,
      expected: expected.attended.reduce(
        (sum, each, s) => (model.steps.station[s] === station ? sum + each : sum),
        0,
      ),
    }));
    expect(worked.filter((row) => Math.abs(row.seen - row.expected) > 0.9)).toEqual([]);
    expect(worked.find(({ name }) => name === 'hold area')!.expected).toBeGreaterThan(8);
  });
});
