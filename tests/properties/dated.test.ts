import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Observation } from '../../src/measure/observe.js';
import { cannotComeMidway, compile } from '../../src/scenario/compile.js';
import type { Scenario } from '../../src/scenario/types/scenario.js';
import { scenarioOf } from '../flow/dated/played.js';
import { playModel } from '../flow/run-yaml.js';
import { type RandomScenario, randomScenario, toYaml } from './random-scenario.js';

const SLOW = 120_000,
  DAY = 1440;
const replication = fc.integer({ min: 1, max: 1_000_000 });

/** What is more, or shorter, of everything that was drawn. */
const changes = fc.record({
  places: fc.integer({ min: 0, max: 2 }),
  spaces: fc.boolean(),
  quicker: fc.boolean(),
  people: fc.boolean(),
  trucks: fc.integer({ min: 0, max: 2 }),
  load: fc.integer({ min: 1, max: 3 }),
  dollies: fc.integer({ min: 0, max: 2 }),
  stock: fc.integer({ min: 0, max: 1 }),
  earlier: fc.boolean(),
});
type Changes = typeof changes extends fc.Arbitrary<infer T> ? T : never;

/**
 * The scenario drawn, and the same with changes that can come midway. An order built again enters anew, which
 * would hide when it did first.
 */
const both = fc
  .tuple(
    randomScenario.map((drawn) => ({ ...drawn, replaced: false })),
    changes,
  )
  .map(([drawn, more]) => [scenarioOf(toYaml(drawn)), scenarioOf(withMore(drawn, more))] as const);

function withMore(drawn: RandomScenario, more: Changes): string {
  const sites = drawn.sites.map((site) => ({
    ...site,
    // With three people a site may have a team, which is no change that comes midway.
    crew: drawn.team ? site.crew : site.crew + Number(more.people),
    shifts:
      drawn.team && more.people
        ? site.shifts.replace('[2, 3]', '[3, 2]').replace('[3, 4]', '[4, 5]')
        : site.shifts,
    stations: site.stations.map((station) => ({
      ...station,
      places: station.places + more.places,
      buffer: station.buffer === 0 && more.spaces ? 2 : station.buffer,
      work: more.quicker ? station.work.replace('10 min', '7 min') : station.work,
    })),
  }));
  const changed: { readonly [Key in keyof RandomScenario]?: unknown } = {
    ...drawn,
    sites,
    trucks: drawn.trucks + more.trucks,
    capacity: drawn.banks.includes('bank: 3') ? drawn.capacity : more.load,
    dollies: drawn.dollies === 0 ? 0 : drawn.dollies + more.dollies,
    stock: drawn.stock === 0 ? 0 : drawn.stock + more.stock,
  };
  const text = toYaml(changed as RandomScenario);
  return more.earlier ? text.replace('hours: ["06:00-14:30"]', 'hours: ["05:00-14:30"]') : text;
}

const play = (scenario: Scenario, r: number): Observation => playModel(compile(scenario), 'dated', r).seen;
const from = (until: string, base: Scenario, after: Scenario): Scenario => ({
  ...after,
  before: [{ until, scenario: base }],
});
const upTo = (times: Float64Array, end: number): number[] =>
  Array.from(times, (time) => (time < end ? time : NaN));

/** `play` also audits each run: place-time, truck-time, Little's identity, nobody claimed twice. */
describe('changes on a date', () => {
  it('at the start or before it are the changed scenario', () => {
    fc.assert(
      fc.property(both, ([base, after]) => {
        expect(compile(from('2027-03-01', base, after))).toEqual(compile({ ...after, before: undefined }));
      }),
      { seed: 20270301, numRuns: 20 },
    );
  });

  it(
    'come midway, and keep units, time and claims',
    () => {
      let later = 0;
      fc.assert(
        fc.property(both, replication, ([base, after], r) => {
          expect(cannotComeMidway(after, [{ until: '2027-03-02', scenario: base }])).toBeNull();
          const seen = play(from('2027-03-02', base, after), r),
            without = play(base, r);
          if (seen.endedAt > DAY) later++;
          // What has happened before midnight is what happens without the change, up to a gridlock there.
          const end = Math.min(DAY, without.outcome === 'gridlock' ? without.endedAt : DAY);
          expect(upTo(seen.enteredAt, end)).toEqual(upTo(without.enteredAt, end));
          expect(upTo(seen.shippedAt, end)).toEqual(upTo(without.shippedAt, end));
          expect(seen.entered).toBeGreaterThanOrEqual(seen.shipped + seen.scrapped);
        }),
        { seed: 20270301, numRuns: 60 },
      );
      expect(later).toBeGreaterThan(20);
    },
    SLOW,
  );

  it(
    'after the end change nothing that happens',
    () => {
      let finished = 0;
      fc.assert(
        fc.property(both, replication, ([base, after], r) => {
          const without = play(base, r),
            seen = play(from('2040-01-01', base, after), r);
          if (without.outcome !== 'finished') return;
          finished++;
          for (const what of ['outcome', 'endedAt', 'shippedAt', 'enteredAt', 'stepVisits'] as const)
            expect(seen[what], what).toEqual(without[what]);
          for (const what of ['bufferMean', 'crewBusy', 'utilisation', 'activePeriod', 'stockMean'] as const)
            expect(seen[what], what).toEqual(without[what]);
          for (const what of [
            'kept',
            'lanes',
            'supplies',
            'failures',
            'pulseLines',
            'reworkMinutes',
          ] as const)
            expect(seen[what], what).toEqual(without[what]);
        }),
        { seed: 20270302, numRuns: 60 },
      );
      expect(finished).toBeGreaterThan(25);
    },
    SLOW,
  );
});
