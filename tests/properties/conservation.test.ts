import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { STATE_COUNT } from '../../src/flow/floor/states.js';
import { UNLIMITED } from '../../src/flow/model/model.js';
import { play, visits } from '../flow/run-yaml.js';
import { randomScenario, toYaml } from './random-scenario.js';

const SLOW = 120_000;
const replication = fc.integer({ min: 1, max: 1_000_000 });

/** `play` also audits each run: place-time, Little's identity, nobody claimed twice. */
describe('any small scenario', () => {
  it(
    'keeps its units, its time and its spaces',
    () => {
      const outcomes = { finished: 0, ended: 0, gridlock: 0 };
      fc.assert(
        fc.property(randomScenario, replication, (drawn, r) => {
          const played = play(toYaml(drawn), 'kept', r),
            { seen, model, run } = played;
          outcomes[seen.outcome]++;

          const inside = run.units.all.filter(
            ({ alive, step, location }) => alive && step.route.isMain && location >= 0,
          ).length;
          expect(seen.entered).toBe(seen.shipped + seen.scrapped + inside);
          if (seen.outcome === 'finished') {
            // An order built again enters anew.
            expect(seen.entered).toBe(drawn.quantity + (drawn.replaced ? seen.scrapped : 0));
            expect(seen.shipped).toBe(drawn.replaced ? drawn.quantity : drawn.quantity - seen.scrapped);
            // Whoever was not scrapped came to the end of the route, once.
            expect(visits(played, `end ${drawn.sites.length - 1}`)).toBe(seen.shipped);
          } else {
            expect(seen.outcome).toBe('gridlock');
            expect(seen.standstill.ring.length).toBeGreaterThan(0);
          }
          expect(Array.from(seen.shippedAt).filter((time) => !Number.isNaN(time)).length).toBe(seen.shipped);

          for (let s = 0; s < model.stations.count; s++) {
            const shares = Array.from(seen.stationShares.subarray(s * STATE_COUNT, (s + 1) * STATE_COUNT));
            expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
            if (seen.minutes > 0) expect(Math.abs(shares.reduce((a, b) => a + b, 0) - 1)).toBeLessThan(1e-9);
          }
          expectSpacesKept(played);
        }),
        { seed: 20270301, numRuns: 120 },
      );
      // The drawing is worth something only if most scenarios run to their end and some do not.
      expect(outcomes.finished).toBeGreaterThan(60);
      expect(outcomes.gridlock).toBeGreaterThan(0);
    },
    SLOW,
  );
});

/** No buffer or bank ever held more than its spaces. */
function expectSpacesKept({ seen, model }: ReturnType<typeof play>): void {
  const { stations, lanes } = model,
    { bufferLevelsFrom: from } = seen;
  const spaces = [
    ...Array.from(stations.buffer, (n, s) => n + Math.max(0, stations.reworkBuffer[s])),
    ...lanes.bank,
  ];
  spaces.forEach((most, b) => {
    if (most >= UNLIMITED) return;
    const over = seen.bufferLevels.subarray(from[b], from[b + 1]).subarray(most + 1);
    expect(
      over.reduce((a, c) => a + c, 0),
      `buffer ${b} of ${most}`,
    ).toBe(0);
  });
}
