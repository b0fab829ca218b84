import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import type { BufferResult } from '../../../src/study/sections/buffers.js';
import { modelOf, playModel } from '../../flow/run-yaml.js';
import { summarise } from '../summarise.js';

/** Units come faster than the yard takes them, with chance in both. */
function banksOf(arrivalBank: string): BufferResult[] {
  const yaml = `
scenario: a yard that is slower than the road
programme: { arrivals: { exponential: { mean: 50 min } }, quantity: 60 }
sites: { here: { stations: { gate: {} } }, there: { stations: { yard: { buffer: 1 } } } }
lanes: { road: { from: here, to: there, trucks: 2, capacity: 2, drive: 30 min, return: 30 min, leaves: { when full or after: 1 h }, bank: 2${arrivalBank} } }
route:
  - { step: hand over, at: gate, work: 1 min }
  - { lane: road }
  - { step: take over, at: yard, work: { mean: 55 min, cv: 0.5 } }
`;
  const { scenario } = readScenario(yaml, 'test.yaml', () => ''),
    model = modelOf(yaml),
    observations = [1, 2, 3].map((i) => playModel(model, 'c', i).seen);
  return summarise({ scenario: scenario!, model, observations, file: 'test.yaml', seed: 'c', level: 0.95 })
    .buffers as BufferResult[];
}

describe('an arrival bank without a limit', () => {
  it('stands among the banks, with as many units as one that is larger than all', () => {
    const [, endless] = banksOf(', arrival bank: unlimited'),
      [, large] = banksOf(', arrival bank: 60');
    expect(endless).toMatchObject({
      name: 'road: arrival bank',
      kind: 'bank',
      site: 'there',
      spaces: null,
      full: null,
      levels: [],
    });
    expect(large).toMatchObject({ name: endless.name, spaces: 60 });
    expect(endless.mean.mean).toBeGreaterThan(0.5);
    expect(endless.mean.mean).toBeCloseTo(large.mean.mean, 9);
    expect(endless.mean.high).toBeCloseTo(large.mean.high!, 9);
    expect(banksOf('').map(({ name }) => name)).not.toContain(endless.name);
  });
});
