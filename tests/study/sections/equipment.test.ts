import { describe, expect, it } from 'vitest';
import { cannotComeMidway, compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import { reliefsOf } from '../../../src/scenario/reliefs/kinds.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { capacity } from '../../../src/study/capacity/capacity.js';
import { playModel } from '../../flow/run-yaml.js';
import { summarise } from '../summarise.js';

const read = (yaml: string): Scenario => {
  const { scenario, problems } = readScenario(yaml, 'equipment.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
};
const seenIn = (scenario: Scenario) => {
  const model = compile(scenario),
    { seen } = playModel(model, 'hand', 1);
  return {
    seen,
    results: summarise({
      ...{ scenario, model, observations: [seen], file: 'equipment.yaml', seed: 'hand', level: 0.95 },
    }),
  };
};

/** Two stations in a row, 10 and 20 min with a hoist. */
const twoInARow = (hoist: string): string => `
scenario: two in a row
programme: { start: 2027-03-01, arrivals: saturated, quantity: 3 }
sites: { hall: { equipment: { hoist: ${hoist} }, stations: { a: {}, b: {} } } }
route:
  - { step: one, at: a, work: 10 min, equipment: { hoist: 1 } }
  - { step: two, at: b, work: 20 min, equipment: { hoist: 1 } }
costs: { currency: EUR, equipment: { hoist: { day: 96 } } }
`;

describe('equipment in the results', () => {
  it('has its use, its waits, and their cost: 90 min in use, two waits of 20 min', () => {
    const { results } = seenIn(read(twoInARow('1')));
    expect(results.equipment).toHaveLength(1);
    expect(results.equipment![0]).toMatchObject({ name: 'hoist', site: 'hall', count: 1 });
    const { busy, waiting, waits, waitHours } = results.equipment![0];
    expect([busy.mean, waiting.mean, waits.mean, waitHours.mean]).toEqual([
      1,
      expect.closeTo(40 / 90, 9),
      2,
      expect.closeTo(1 / 3, 9),
    ]);
    expect(results.bottlenecks[0]).toMatchObject({ name: 'hoist', kind: 'equipment' });
    // 96 a day for 90 min and 3 units.
    const { parts } = results.costs!;
    expect(parts.map(({ name }) => name)).toEqual(['equipment']);
    expect(parts[0].perUnit.mean).toBeCloseTo(2, 9);
  });

  it('has failures and the mean time to the end of a repair', () => {
    // In use 0-25, down 25-32 and again 57-64.
    const { results } = seenIn(read(twoInARow('{ count: 1, failures: { every: 25 min, repair: 7 min } }')));
    const [{ failures, downHours, busy }] = results.equipment!;
    expect(failures.mean).toBe(3);
    expect(downHours.mean).toBeCloseTo(7 / 60, 12);
    expect(busy.mean).toBeCloseTo(1, 12);
  });
});

describe('one more of it', () => {
  const scenario = read(twoInARow('{ count: 1, failures: { every: 25 h, repair: 7 min } }'));

  it('is a relief, as is that it fails half as often', () => {
    const of = { kind: 'equipment', name: 'hoist', site: 'hall' };
    const reliefs = reliefsOf(scenario).filter(({ of: { kind } }) => kind === 'equipment');
    expect(reliefs).toMatchObject([
      { kind: 'equipment', text: 'one hoist more (hall)', of },
      { kind: 'failure', text: 'failures of hoist (hall) half as often', of },
    ]);
    const [more, fewer] = reliefs.map(({ change }) => change(scenario).sites['hall'].equipment!['hoist']);
    expect(more.count).toBe(2);
    expect(fewer.failures[0].every).toEqual({ kind: 'constant', value: 50 * 60 });
    expect(scenario.sites['hall'].equipment!['hoist'].count).toBe(1);
  });

  it('may come on a date, and one fewer may not', () => {
    const one = read(twoInARow('1')),
      two = read(twoInARow('2'));
    expect(cannotComeMidway(two, [{ until: '2027-03-10', scenario: one }])).toBeNull();
    expect(cannotComeMidway(one, [{ until: '2027-03-10', scenario: two }])).toBe(
      'fewer pieces of equipment (hoist)',
    );
  });
});

describe('equipment in the arithmetic', () => {
  it('asks for the minutes that the engine uses, with rework, passes, parts, a process and failures', () => {
    const exponential = (minutes: number): string => `{ exponential: { mean: ${minutes} min } }`;
    const scenario = read(`
scenario: by arithmetic
programme: { start: 2027-03-01, arrivals: ${exponential(60)}, quantity: 10000 }
sites:
  hall:
    equipment: { hoist: 3, rig: { count: 2, failures: { every: ${exponential(50)}, repair: ${exponential(10)} } } }
    stations: { a: { places: 4, buffer: unlimited }, b: { places: 4, buffer: unlimited } }
route:
  - { step: coat, at: a, passes: { count: 2, work: ${exponential(6)}, settle: 4 min }, process: 5 min, equipment: { hoist: 1 } }
  - { step: lift, at: a, work: { low: 20 min, high: 30 min }, equipment: { hoist: { count: 2, first: { low: 3 min, high: 9 min } } } }
  - { step: test, at: b, work: ${exponential(12)}, equipment: { rig: 1, hoist: { last: 50 min } }, fails: { chance: 20 %, back to: lift } }
`);
    const { rows } = capacity(compile(scenario), scenario),
      { seen } = seenIn(scenario),
      asked = rows.filter(({ kind }) => kind === 'equipment').map(({ minutesPerUnit }) => minutesPerUnit);
    // The hoist: 2 x 6 + 4, 1.25 x 2 x 6 and, with work that is shorter than 50 min, 1.25 x 12 at most; the rig
    // 1.25 x 12, and a fifth on top.
    expect(asked).toEqual([expect.closeTo(16 + 15 + 15, 2), expect.closeTo(1.25 * 12 * 1.2, 2)]);
    const used = Array.from(seen.equipment.used, (minutes) => minutes / seen.shipped);
    // While the rig is repaired the hoist is kept too: a fifth of its last part, which is 11.8 min on average.
    expect(used[0] / (16 + 15 + 1.25 * 12 * (1 - Math.exp(-50 / 12)) * 1.2)).toBeCloseTo(1, 1.5);
    expect(used[1] / asked[1]).toBeCloseTo(1, 1.5);
    // At the stations all of it is work or a repair.
    const busy = rows.filter(({ kind }) => kind === 'station').map(({ minutesPerUnit }) => minutesPerUnit);
    expect(busy).toEqual([expect.closeTo(16 + 9 + 1.25 * 25, 2), expect.closeTo(1.25 * 12 * 1.2, 2)]);
  });
});
