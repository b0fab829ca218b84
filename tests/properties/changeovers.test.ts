import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CHANGEOVER } from '../../src/flow/floor/states.js';
import { minutesIn, play } from '../flow/run-yaml.js';
import { randomScenario, toYaml } from './random-scenario.js';

describe('any small scenario', () => {
  it('keeps the stays of its first replication in order on each place, one for each unit that took it', () => {
    let batches = 0,
      changes = 0,
      settings = 0;
    fc.assert(
      fc.property(randomScenario, fc.integer({ min: 1, max: 1_000_000 }), (drawn, seed) => {
        const played = play(toYaml(drawn), `stays ${seed}`),
          { model, seen } = played;
        model.stations.names.forEach((station, s) => {
          const stays = seen.stays[s];
          if (model.stations.changeoverValues[s].length === 0) {
            expect(stays).toEqual([]);
            return;
          }
          batches += Number(model.stations.batchMost[s] > 0);
          // One that keeps its place for another setting has two stays in it.
          const bySetting = model.stations.changeoverOption[s] < 0;
          settings += Number(bySetting);
          if (bySetting) expect(stays.length).toBeGreaterThanOrEqual(seen.taken[s]);
          else expect(stays.length).toBe(seen.taken[s]);
          for (const place of new Set(stays.map((stay) => stay.place))) {
            const here = stays.filter((stay) => stay.place === place);
            here.forEach(({ from, value, changedFrom, changeFrom, changeTo, to }, i) => {
              const before = here.at(i - 1)!;
              // Whoever still stands there at a gridlock has no end.
              if (i > 0) expect(from).toBeGreaterThanOrEqual(before.to);
              if (changedFrom < 0) return;
              changes++;
              // All places of a lot are set up for it, also where nobody stood.
              const was = model.stations.lotMost[s] > 0 ? changedFrom : before.value;
              expect([changedFrom, changedFrom === value]).toEqual([was, false]);
              expect([from, changeFrom, changeTo, to].filter((time) => !Number.isNaN(time))).toEqual(
                [from, changeFrom, changeTo, to].filter((time) => !Number.isNaN(time)).sort((a, b) => a - b),
              );
            });
          }
          const first = model.stations.changeoverStart[s],
            end = model.stations.changeoverStart[s + 1];
          expect(stays.filter(({ changedFrom }) => changedFrom >= 0).length).toBe(
            seen.changeovers.subarray(first, end).reduce((a, b) => a + b, 0),
          );
          // Nothing is half done at the end.
          if (seen.outcome === 'finished') {
            const worked = stays.flatMap(({ pieces }) => pieces.map(([from, to]) => to - from));
            expect(worked.reduce((a, b) => a + b, 0)).toBeCloseTo(
              seen.changeoverMinutes.subarray(first, end).reduce((a, b) => a + b, 0),
              4,
            );
            // Who is in a lot shares its changeover.
            if (model.stations.lotMost[s] > 0) return;
            expect(minutesIn(played, station, CHANGEOVER)).toBeCloseTo(
              seen.changeoverMinutes.subarray(first, end).reduce((a, b) => a + b, 0),
              4,
            );
          }
        });
      }),
      { seed: 20270304, numRuns: 100 },
    );
    expect(changes).toBeGreaterThan(100);
    expect(batches).toBeGreaterThan(2);
    expect(settings).toBeGreaterThan(10);
  }, 120_000);
});
