import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readScenario } from '../../src/scenario/read.js';
import { capacity } from '../../src/study/capacity/capacity.js';
import { neighbours } from '../../src/study/lists.js';
import { modelOf, type Played, play, shippedAt } from '../flow/run-yaml.js';

const text = readFileSync(new URL('../../scenarios/rules/02-shared-hoist.yaml', import.meta.url), 'utf8'),
  two = text.replace('equipment: { hoist: 1 }', 'equipment: { hoist: 2 }');
const between = (played: Played): number[] => neighbours(shippedAt(played)).map(([a, b]) => b - a);

describe('scenarios/rules/02-shared-hoist.yaml', () => {
  it('ships every 90 min from 150 min on, with a wait of 30 min each', () => {
    const played = play(text),
      { equipment } = played.seen;
    expect(shippedAt(played)[0]).toBe(150);
    expect(new Set(between(played))).toEqual(new Set([90]));
    expect(equipment.waitMinutes[0] / equipment.waits[0]).toBe(30);
    // All but the first of 40.
    expect(equipment.waits[0]).toBe(39);
    expect(equipment.used[0]).toBeCloseTo(40 * 75, 6);
  });

  it('ships every 60 min with one hoist more', () => {
    expect(two).not.toBe(text);
    const played = play(two),
      { used, there } = played.seen.equipment;
    expect(new Set(between(played))).toEqual(new Set([60]));
    expect(used[0] / there[0]).toBeCloseTo(0.625, 1);
  });

  it('has the hoist as its bottleneck by arithmetic, 75 min of it a unit, and with two the bays', () => {
    const rows = (yaml: string) => {
      const { scenario } = readScenario(yaml, 'hoist.yaml', () => '');
      return capacity(modelOf(yaml), scenario!);
    };
    expect(rows(text).bottleneck).toMatchObject({ kind: 'equipment', name: 'hoist', site: 'boat hall' });
    expect(rows(text).rows.find(({ kind }) => kind === 'equipment')).toMatchObject({
      visitsPerUnit: 3,
      minutesPerUnit: 75,
      availableMinutesPerDay: 1440,
    });
    expect(rows(two).bottleneck).toMatchObject({ kind: 'station', capacityPerDay: 24 });
  });
});
