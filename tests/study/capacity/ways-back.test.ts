import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import { capacity } from '../../../src/study/capacity/capacity.js';
import { stayDemands } from '../../../src/study/capacity/carriers.js';
import { dailyMinutes } from '../../../src/study/capacity/days.js';
import { demand } from '../../../src/study/capacity/demand.js';
import { type Played, play } from '../../flow/run-yaml.js';

/**
 * Painted in 30 min, out in 5-60-5 min, looked at in 5 min and tested in 20 min: one in five goes back to be
 * painted (1.25 passes a unit), home in 10-120-10 min. Room and trucks for all.
 */
const plants = (keys: string): string => `
scenario: plants
programme: { start: 2027-03-01, rate: { per day: 60 }, quantity: 3000 }
sites:
  paint shop: { stations: { booth: { places: 9 } } }
  final plant: { crews: { testers: 60 }, stations: { gate: { places: 9 }, bay: { places: 9 } } }
lanes:
  out: { from: paint shop, to: final plant, trucks: 50, capacity: 1, load: 5 min, drive: 60 min, unload: 5 min, return: 60 min }
  home: { from: final plant, to: paint shop, trucks: 50, capacity: 1, load: 10 min, drive: 120 min, unload: 10 min, return: 120 min, arrival bank: 4 }
${keys}
route:
  - { step: paint, at: booth, work: 30 min }
  - { lane: out }
  - { step: look, at: gate, work: 5 min }
  - { step: test, at: bay, work: 20 min, fails: { chance: 20 %, back to: paint, limit: unlimited } }
`;

/** 3000 units with room for all: about 1 % by chance; 4 % of those sent back alone. */
const near = (seen: number, said: number, within = 0.03): void => {
  expect(Math.abs(seen / said - 1)).toBeLessThan(within);
};

function reckoned(yaml: string) {
  const { scenario } = readScenario(yaml, 'test.yaml', () => ''),
    played: Played = play(yaml),
    { model } = played;
  return {
    ...played,
    rows: capacity(model, scenario!).rows,
    stays: stayDemands(model, demand(model), dailyMinutes(model, scenario!), null),
  };
}

describe('arithmetic of a send-back to another site', () => {
  it('loads both lanes, one of which nothing but the way back needs', () => {
    const { rows, seen } = reckoned(plants(''));
    for (const [lane, name, visits, trip, within] of [
      [0, 'out', 1.25, 130, 0.03],
      [1, 'home', 0.25, 260, 0.12],
    ] as const) {
      const row = rows.find((each) => each.kind === 'lane' && each.name === name)!;
      expect(row.visitsPerUnit).toBeCloseTo(visits, 8);
      expect(row.minutesPerUnit).toBeCloseTo(visits * trip, 6);
      expect(row.load).toBeCloseTo((60 * visits * trip) / (50 * 1440), 8);
      near(seen.lanes.carried[lane] / 3000, visits, within);
      near((seen.lanes.truckBusy[lane] * 50 * seen.minutes) / 3000, visits * trip, within);
    }
  });

  it('keeps a carrier on the way home', () => {
    const { stays, seen } = reckoned(plants('carriers: { carts: { count: 99, from: paint, to: test } }')),
      minutes = 1.25 * (30 + 70 + 5 + 20) + 0.25 * 140;
    expect(stays[0].holds).toBeCloseTo(1, 8);
    expect(stays[0].minutes).toBeCloseTo(minutes, 6);
    near(seen.kept.ended[0] / 3000, 1);
    near((seen.kept.held[0] * seen.minutes) / 3000, minutes);
  });

  it('leaves a team behind, which is claimed again', () => {
    const { stays, seen } = reckoned(
      plants('teams: { pair: { crew: testers, people: 2, from: look, to: test } }'),
    );
    expect(stays[0].holds).toBeCloseTo(1.25, 8);
    expect(stays[0].minutes).toBeCloseTo(1.25 * 25, 6);
    near(seen.kept.ended[0] / 3000, 1.25);
    near((seen.kept.held[0] * seen.minutes) / 3000, 1.25 * 25);
  });
});
