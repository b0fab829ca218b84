import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import { readingOf } from '../../../src/study/sample/reading.js';
import { playModel } from '../../flow/run-yaml.js';

/**
 * One bench, 2 h a unit at 24 h a day: units leave at 2, 4, 6 and 8 h; 3 units of a day in work cost 240 a
 * day, 10 an hour in work.
 */
const YAML = (costs: string): string => `
scenario: four units
programme: { start: 2027-03-01, arrivals: saturated, quantity: 4 }
sites: { hall: { stations: { bench: {} } } }
${costs}
route: [{ step: build, at: bench, work: 2 h }]
`;
const read = (costs = '') => {
  const { scenario } = readScenario(YAML(costs), 'four.yaml', () => ''),
    model = compile(scenario!);
  return readingOf(scenario!, model)(playModel(model, 'reading', 1).seen);
};

describe('the reading of a replication', () => {
  it('has the days, units and means that follow by hand', () => {
    const reading = read();
    // One unit is in work all 8 h: WIP 1, lead times 2 h, the last out at 8 h.
    expect(reading).toMatchObject({ shipped: 4, scrapped: 0, outcome: 'finished', minutes: 480, wip: 1 });
    expect(reading.leadMeanDays).toBeCloseTo(2 / 24, 12);
    expect(reading.lastUnitDay).toBeCloseTo(8 / 24, 12);
    expect([...reading.shippedIn].reduce((a, b) => a + b, 0)).toBe(4);
    expect(reading.wipIn[0]).toBeCloseTo(1, 12);
    expect(reading.costPerUnit).toBeNaN();
  });

  it('has the cost of a unit by the prices of its own scenario', () => {
    // 8 h of one unit at 240 a day: 80 in all, 20 a unit.
    expect(read('costs: { currency: EUR, unit: { day: 240 } }').costPerUnit).toBeCloseTo(20, 9);
  });
});
