import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { SHORT_PARTS, WORKING } from '../../src/flow/floor/states.js';
import { compile } from '../../src/scenario/compile.js';
import { readScenario } from '../../src/scenario/read.js';
import { type CapacityRow, capacity } from '../../src/study/capacity/capacity.js';
import { standstillWarnings } from '../../src/study/standstill/warnings.js';
import { at, minutesIn, play, shippedAt, visits } from '../flow/run-yaml.js';

const textOf = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../../scenarios/rules/${name}.yaml`, import.meta.url)), 'utf8');
function capacityRow(name: string, kind: CapacityRow['kind'], row: string): CapacityRow {
  const { scenario } = readScenario(textOf(name), name, () => '');
  return capacity(compile(scenario!), scenario!).rows.find(
    (each) => each.kind === kind && each.name === row,
  )!;
}

/** The examples of scenarios/rules do what their first lines say, by hand. */
describe('12-supply.yaml', () => {
  const played = play(textOf('12-supply')),
    day = 1440,
    six = 360;

  it('lets units wait for heaters, not for power packs', () => {
    // Mon, Tue, Wed; the fourth and the fifth on Monday 8th with its two heaters, one after the other; the
    // sixth, released that Monday, with the lot of the 15th.
    expect(shippedAt(played)).toEqual(
      [0, 1, 2, 7].map((d) => d * day + six + 120).concat([7 * day + six + 240, 14 * day + six + 120]),
    );
    const { seen, model } = played,
      out = (name: string): number => seen.stockOut[at(model.resources.names, name)];
    // None from Wednesday 06:00, when the third is taken, to Thursday 06:00, when the lot ordered on Tuesday
    // is there; and so on: ordered with the lot's last but one, taken a day before the next comes. Nobody
    // waits for one.
    expect(out('power packs')).toBeGreaterThan(0);
    expect(Array.from(seen.supplies.waits)).toEqual([0, 2, 0]);
    // No heaters from Wednesday 06:00 on but for two hours of Monday 8th and of Monday 15th, while one of two
    // is not yet taken.
    expect(out('heaters') * seen.minutes).toBeCloseTo(14 * day + six + 120 - (2 * day + six) - 2 * 120, 6);
  });

  it('says so by arithmetic', () => {
    expect(capacityRow('12-supply', 'supply', 'heaters')).toMatchObject({ capacityPerDay: 0.4, load: 2.5 });
    expect(capacityRow('12-supply', 'supply', 'power packs').capacityPerDay).toBeGreaterThan(1);
  });
});

describe('06-kits.yaml', () => {
  it('uses up 1.25 looms and 2.5 gauges a dashboard by arithmetic, and about as many in a run', () => {
    expect(capacityRow('06-kits', 'feeder', 'looms').visitsPerUnit).toBeCloseTo(1.25, 6);
    expect(capacityRow('06-kits', 'supply', 'gauges').visitsPerUnit).toBeCloseTo(2.5, 6);
    expect(capacityRow('06-kits', 'station', 'kit bench').capacityPerDay).toBeCloseTo(3.84, 6);
    const played = play(textOf('06-kits')),
      kits = visits(played, 'fit dashboard');
    expect(kits).toBe(200);
    // Geometric: mean 1.25, variance 0.3125 a kit, so 200 kits are within 4 x 0.04 of it.
    expect(Math.abs(visits(played, 'wire dashboard') / kits - 1.25)).toBeLessThan(0.16);
  });
});

describe('06-full-kit.yaml', () => {
  const text = textOf('06-full-kit'),
    played = play(text),
    warned = (yaml: string): string[] => {
      const { scenario } = readScenario(yaml, 'full kit', () => '');
      return standstillWarnings(compile(scenario!), scenario!).map(
        ({ path, remedy }) => `${path.join(' ')}: ${remedy}`,
      );
    };

  it('is never short of parts at the bench, and lets units without a coupling pass', () => {
    expect(minutesIn(played, 'bench', SHORT_PARTS)).toBe(0);
    expect(minutesIn(played, 'line', SHORT_PARTS)).toBeGreaterThan(60);
    const onFirstDay = (yaml: string): number => shippedAt(play(yaml)).filter((at) => at < 1440).length;
    // Eleven come early enough. In place, those up to the second with a coupling and the few before the third.
    const coupled = Array.from(played.run.optionsOf.subarray(0, 11), (value) => value === 0);
    expect(coupled.filter(Boolean).length).toBeGreaterThan(3);
    expect(onFirstDay(text)).toBe(2 + coupled.filter((is) => !is).length);
    const third = coupled.findIndex((is, n) => is && coupled.slice(0, n).filter(Boolean).length === 2);
    expect(onFirstDay(text.replace('parts: in buffer, work', 'parts: in place, work'))).toBe(third);
  });

  it('would stand still at the bench without a full kit, and check warns of it', () => {
    const without = text.replace('dashboards: { stock: 2,', 'dashboards: { stock: 2, full kit: false,');
    expect(play(without).seen).toMatchObject({ outcome: 'gridlock', minutes: 0 });
    expect(warned(text)).toEqual([]);
    expect(warned(without)).toEqual([
      'feeders looms: a full kit for dashboards, or a station of their own for looms',
    ]);
  });
});

describe('06-own-parts.yaml', () => {
  it('lets only red cabs wait for their doors', () => {
    const played = play(textOf('06-own-parts'), 'own'),
      RED = 0;
    const isRed = Array.from(played.seen.optionsOf, (value) => value === RED);
    expect(new Set(isRed).size).toBe(2);
    // Entered at 60, 120, 180: white out after 60 min, red after 110.
    expect(shippedAt(played)).toEqual(isRed.map((red, i) => 60 * (i + 1) + (red ? 110 : 60)));
    expect(minutesIn(played, 'line', SHORT_PARTS)).toBe(50 * isRed.filter((red) => red).length);
  });
});

describe('11-lanes.yaml', () => {
  it('moves five units in three trips', () => {
    const played = play(textOf('11-lanes'));
    expect(shippedAt(played)).toEqual([3 * 60 + 35, 3 * 60 + 35, 5 * 60 + 45, 5 * 60 + 45, 8 * 60 + 5]);
    expect(played.seen.lanes.trips[0]).toBe(3);
  });
});

describe('14-learning.yaml', () => {
  it('follows both curves', () => {
    // Factors of the 80 % unit curve n^log2(0.8), as in the usual textbook table.
    const played = play(textOf('14-learning')),
      factors = [1, 0.8, 0.7021, 0.64, 0.5956, 0.5617, 0.55, 0.55],
      b = Math.log2(0.9);
    expect(minutesIn(played, 'frame', WORKING)).toBeCloseTo(100 * factors.reduce((sum, f) => sum + f, 0), 1);
    expect(minutesIn(played, 'trim', WORKING)).toBeCloseTo(50 * (12 * 12 ** b - 4 * 4 ** b), 5);
  });
});
