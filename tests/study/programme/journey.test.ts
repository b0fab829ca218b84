import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { simulateStudy } from '../../../src/study/simulate/simulate.js';

const read = (text: string): Scenario => readScenario(text, 'way.yaml', () => '').scenario!;
/** Two units a day in Oslo; a crew of one on two benches, a lane, an arrival bank. Invented. */
const scenario = read(`
scenario: way
programme: { start: 2027-03-01, rate: { per day: 2 }, quantity: 9, opening: [{ at: paint, build: RT-7 }] }
calendars: { days: { hours: ["06:00-14:00"] } }
sites:
  shop: { zone: Europe/Oslo, calendar: days, crews: { hands: 1 }, stations: { booth: { buffer: unlimited }, bench: { places: 2, buffer: 2 } } }
  port: { zone: Europe/Oslo, calendar: days, stations: { quay: {} } }
lanes: { road: { from: shop, to: port, trucks: 1, capacity: 2, load: 10 min, drive: 3 h, unload: 10 min, return: 3 h, leaves: { when full or after: 2 h }, arrival bank: 1 } }
route:
  - { step: paint, at: booth, crew: { hands: 1 }, passes: { count: 2, work: { low: 20 min, high: 60 min }, settle: 10 min }, process: 30 min }
  - { step: trim, at: bench, crew: { hands: 1 }, work: { low: 1 h, high: 2 h } }
  - { lane: road }
  - { step: check, at: quay, work: { low: 30 min, high: 4 h } }
`);
const ran = (build: string | undefined) =>
  simulateStudy({ scenario, file: 'way.yaml', replications: 3, seed: 'way', workers: 1, journey: { build } });

describe('the journey of a unit', () => {
  it('adds up to its lead time: parts without a gap, sums by activity and by step', async () => {
    for (let unit = 1; unit <= 9; unit++) {
      const build = unit === 1 ? 'RT-7' : String(unit),
        { journey } = await ran(build);
      const { parts, totals, steps, leadDays } = journey!,
        minutes = parts.at(-1)!.toMin - parts[0].fromMin;
      expect(journey).toMatchObject({ build, number: unit, chosen: 'by name', replication: 1 });
      expect(leadDays).toBe(minutes / 1440);
      parts.slice(1).forEach((part, i) => {
        expect(part.fromMin).toBe(parts[i].toMin);
      });
      expect(totals.reduce((sum, { days }) => sum + days, 0)).toBeCloseTo(leadDays, 10);
      expect(steps.reduce((sum, { hours }) => sum + hours, 0)).toBeCloseTo(leadDays * 24, 8);
      expect(steps.map(({ step }) => step)).toEqual([
        'paint',
        'trim',
        'road',
        ...(steps.some(({ step }) => step.includes('bank')) ? ['road: arrival bank'] : []),
        'check',
      ]);
      expect(
        parts
          .filter(({ what }) => what === 'loading' || what === 'driving')
          .every(({ at, site }) => at === 'road' && site === null),
      ).toBe(true);
      expect(
        parts.every(({ at }) => ['booth', 'bench', 'road', 'quay', 'road: arrival bank'].includes(at)),
      ).toBe(true);
    }
  });

  it('is that of the unit with the median lead time of the first replication where none is named, and the same results otherwise', async () => {
    const { journey, ...rest } = await ran(undefined),
      { journey: other, ...same } = await ran('3');
    expect(rest).toEqual(same);
    expect(other!.number).toBe(3);
    const leads = await Promise.all(
      Array.from(
        { length: 9 },
        async (_, i) => (await ran(i === 0 ? 'RT-7' : String(i + 1))).journey!.leadDays,
      ),
    );
    expect(journey!.chosen).toBe('median lead time');
    expect(journey!.leadDays).toBe(leads.toSorted((a, b) => a - b)[4]);
  });

  it('is none where the programme has no quantity, and none where nobody asks', async () => {
    const steady = read(
      'scenario: s\nprogramme: { arrivals: 1 h, length: 10 h }\nsites: { a: { stations: { b: {} } } }\nroute: [{ step: c, at: b, work: 10 min }]\n',
    );
    expect(
      (
        await simulateStudy({
          scenario: steady,
          file: 's.yaml',
          replications: 1,
          seed: '1',
          workers: 1,
          journey: { build: undefined },
        })
      ).journey,
    ).toBeNull();
    expect(
      (await simulateStudy({ scenario, file: 'way.yaml', replications: 1, seed: '1', workers: 1 })).journey,
    ).toBeNull();
  });
});
