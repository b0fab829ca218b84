import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import { type CapacityTable, capacity } from '../../../src/study/capacity/capacity.js';
import { play } from '../../flow/run-yaml.js';

const found = (yaml: string): CapacityTable => {
  const { scenario } = readScenario(yaml, 'test.yaml', () => '');
  return capacity(compile(scenario!), scenario!);
};

describe('a supply ordered by a level whose parts go into full kits', () => {
  // Two kits are wanted, of two bolts each: up to four bolts are asked for at once, and lots of one, of which
  // stock and orders are never to be 0 or less, take an hour.
  const yaml = (kit: string): string => `
scenario: bolts
programme: { start: 2027-03-01, arrivals: saturated, length: 500 h }
sites: { hall: { stations: { a: {}, b: {}, line: {} } } }
supplies: { bolts: { site: hall, reorder: { level: 0, lot: 1, lead time: 1 h } } }
feeders:
  kits:
    stock: 2
    full kit: ${kit}
    route:
      - { step: open, at: a, parts: { bolts: 1 }, work: 1 min }
      - { step: close, at: b, parts: { bolts: 1 }, work: 1 min }
route: [{ step: fit, at: line, parts: { kits: 1 }, work: 1 min }]
`;
  const boltsADay = (kit: string): number =>
    (found(yaml(kit)).rows.find(({ kind }) => kind === 'supply')?.capacityPerDay ?? NaN) * 2;

  it('carries what its level and lot and all kits in the making ask for, which a run comes close to', () => {
    // (0 + 1 + 2 x 2) an hour with kits, (0 + 1 + one at each of two places) without.
    expect(boltsADay('true')).toBeCloseTo(5 * 24, 9);
    expect(boltsADay('false')).toBeCloseTo(3 * 24, 9);
    const { seen } = play(yaml('true')),
      used = seen.shipped * 2 * (1440 / seen.minutes);
    expect(used).toBeLessThanOrEqual(5 * 24);
    // More than a request at each of the places could ask for.
    expect(used).toBeGreaterThan(3 * 24);
  });

  it('has no limit by arithmetic where any number of units may ask for it ahead of a station', () => {
    const ahead = yaml('true')
      .replace('kits: 1 }, work', 'kits: 1, bolts: 1 }, wait for parts: in buffer, work')
      .replace('line: {}', 'line: { buffer: 9 }');
    expect(found(ahead).rows.find(({ kind }) => kind === 'supply')?.capacityPerDay).toBeNull();
  });
});
