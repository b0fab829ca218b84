import { describe, expect, it } from 'vitest';
import { readScenario } from '../../src/scenario/read.js';
import { rateStudy } from '../../src/study/rate/rate.js';
import { reliefsStudy } from '../../src/study/reliefs/reliefs.js';
import { simulateStudy } from '../../src/study/simulate/simulate.js';
import { SLOW } from './agree.js';

/** Every number is invented. 8 h a day, Monday to Friday; the last station takes 3 h: 8 / 3 = 2.67 a day. */
const CEILING = 8 / 3;
const shop = (rate: number, sites: string, lanes: string, route: string): string => `
scenario: in loads, by chance
programme: { start: 2027-03-01, zone: UTC, quantity: 260, rate: { per day: ${rate} } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  a: { zone: UTC, calendar: days, stations: { one: { buffer: unlimited } } }
  b: { zone: UTC, calendar: days, stations: { ${sites}two: { buffer: unlimited } } }
lanes: { road: { from: a, to: b, trucks: 2, ${lanes}, return: 2 h } }
route:
  - { step: make, at: one, work: { mean: 1 h, cv: 0.3 } }
  - { lane: road }
${route}  - { step: end, at: two, work: { mean: 3 h, cv: 0.3 } }
`;
const BUILDS: readonly [string, (rate: number) => string][] = [
  ['a truck of ten', (rate) => shop(rate, '', 'capacity: 10, drive: { mean: 20 h, cv: 0.3 }', '')],
  ['a truck of six', (rate) => shop(rate, '', 'capacity: 6, drive: { mean: 20 h, cv: 0.3 }', '')],
  [
    'an oven of eight',
    (rate) =>
      shop(
        rate,
        'oven: { places: 8, unattended: true, buffer: unlimited, lot: { least: 8, most: 8 } }, ',
        'capacity: 1, drive: 1 h',
        '  - { step: bake, at: oven, process: { mean: 12 h, cv: 0.3 } }\n',
      ),
  ],
];

function scenarioOf(yaml: string) {
  const { scenario, problems } = readScenario(yaml, 'loads.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
}
const how = { file: 'loads.yaml', seed: 'loads', workers: 2 };
const simulated = (yaml: string) => simulateStudy({ ...how, scenario: scenarioOf(yaml), replications: 20 });

describe('units that come in loads, with chance in all times', SLOW, () => {
  it.each(BUILDS)(
    'hold every rate up to one, and none above it, close under what arithmetic allows: %s',
    async (_, build) => {
      const verdicts: [number, boolean][] = [];
      for (const perDay of [0.7, 0.8, 1.1, 1.7, 2.3, 2.5, 2.8]) {
        const { points } = await rateStudy({
          ...how,
          scenario: scenarioOf(build(perDay)),
          from: perDay,
          to: perDay,
          step: 0.1,
          sure: 0.8,
          replications: 20,
        });
        verdicts.push([perDay, points[0].verdict === 'holds']);
      }
      expect(verdicts).toEqual(verdicts.map(([perDay]) => [perDay, perDay < CEILING]));
    },
  );

  it.each(BUILDS)(
    'ship the rate asked where it holds, and the interval has it inside: %s',
    async (_, build) => {
      for (const perDay of [0.8, 1.1, 2.3]) {
        const { answer } = await simulated(build(perDay)),
          { mean, low, high } = answer.heldPerDay!;
        expect([perDay, answer.verdict]).toEqual([perDay, 'holds']);
        expect(Math.abs(mean / perDay - 1)).toBeLessThan(0.004);
        expect(low!).toBeLessThanOrEqual(perDay);
        expect(high!).toBeGreaterThanOrEqual(perDay);
      }
    },
  );

  it.each(BUILDS)('fall short where a twentieth more is asked than can be: %s', async (_, build) => {
    const { answer } = await simulated(build(1.05 * CEILING));
    expect(answer.verdict).toBe('falls short');
    expect(answer.heldPerDay!.mean).toBeCloseTo(CEILING, 1);
  });

  it('gain nothing by what changes nothing, and what is gained is what arithmetic says', async () => {
    const constant = BUILDS[0][1](3).replaceAll(/\{ mean: (\d+ h), cv: 0.3 \}/g, '$1');
    const { reliefs, base } = await reliefsStudy({
      ...how,
      scenario: scenarioOf(constant),
      replications: 4,
    });
    expect(base.throughput.mean).toBeCloseTo(CEILING, 2);
    const gainOf = (text: RegExp): number => reliefs.find((relief) => text.test(relief.text))!.gain.mean;
    expect([gainOf(/one place more at one/), gainOf(/truck more/)]).toEqual([0, 0]);
    // Two places, or another hour, do all the three that are asked; 10 % less work 8 / 2.7.
    expect(gainOf(/one place more at two/)).toBeCloseTo(3 - CEILING, 2);
    expect(gainOf(/10 % off the work of end/)).toBeCloseTo(8 / 2.7 - CEILING, 2);
  });
});
