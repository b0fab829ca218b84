import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/scenario/compile.js';
import { readScenario } from '../../src/scenario/read.js';
import { type CapacityTable, capacity } from '../../src/study/capacity/capacity.js';
import { at, play, shippedAt, visits } from '../flow/run-yaml.js';

const text = (name: string): string =>
  readFileSync(new URL(`../../scenarios/rules/${name}.yaml`, import.meta.url), 'utf8');
const tableOf = (yaml: string): CapacityTable => {
  const { scenario } = readScenario(yaml, 'rule.yaml', () => '');
  return capacity(compile(scenario!), scenario!);
};
const sum = (values: Iterable<number>): number => [...values].reduce((a, b) => a + b, 0);

describe('scenarios/rules/04-paint.yaml', () => {
  const yaml = text('04-paint'),
    played = play(yaml),
    stays = played.seen.stays[at(played.model.stations.names, 'colour booth')];
  const colours = ['red', 'white', 'yellow'];

  it('keeps the booth 70 min for a coat, of which 50 are work, and 20 % and 15 min longer for yellow', () => {
    const minutes = (colour: string): Set<number> =>
      new Set(
        stays
          .filter(({ value }) => colours[value] === colour)
          .map(
            ({ from, to, changeFrom, changeTo }) =>
              Math.round(1e6 * (to - from - (Number.isNaN(changeFrom) ? 0 : changeTo - changeFrom))) / 1e6,
          ),
      );
    expect(minutes('red')).toEqual(new Set([70]));
    expect(minutes('white')).toEqual(new Set([70]));
    expect(minutes('yellow')).toEqual(new Set([95]));
    expect(visits(played, 'extra coat')).toBe(
      stays.filter(({ value }) => colours[value] === 'yellow').length,
    );
  });

  it('cleans the booth out by the pair of colours, not at all from yellow to white', () => {
    const changed: Record<string, Set<number>> = {};
    stays.forEach(({ value, changedFrom, changeFrom, changeTo }, i) => {
      const before = stays[i - 1];
      if (i === 0 || before.value === value) {
        expect(changedFrom).toBe(-1);
        return;
      }
      (changed[`${colours[before.value]} to ${colours[value]}`] ??= new Set()).add(
        changedFrom < 0 ? 0 : Math.round(1e6 * (changeTo - changeFrom)) / 1e6,
      );
    });
    expect(changed).toEqual({
      'red to white': new Set([45]),
      'white to red': new Set([15]),
      'red to yellow': new Set([20]),
      'yellow to red': new Set([20]),
      'white to yellow': new Set([20]),
      'yellow to white': new Set([0]),
    });
  });

  it('sends back for a repaint, and sees every unit again', () => {
    const { sentBack, inspected } = played.seen.inspections;
    expect(sentBack[0]).toBeGreaterThan(3);
    expect(inspected[0]).toBe(200 + sentBack[0]);
    expect(stays).toHaveLength(200 + sentBack[0]);
  });

  it('has fewer clean-outs than without batches, and carries the 16 a day that it otherwise would not', () => {
    const without = yaml.replace(/^ +batch: .*\n/m, ''),
      inOrder = play(without);
    const ratio = sum(played.seen.changeovers) / sum(inOrder.seen.changeovers);
    expect(ratio).toBeGreaterThan(0.5);
    expect(ratio).toBeLessThan(0.85);
    expect(tableOf(yaml).highestRatePerDay).toBeGreaterThan(16);
    expect(tableOf(without).highestRatePerDay).toBeLessThan(16);
  });
});

describe('scenarios/rules/04-oven-settings.yaml', () => {
  const yaml = text('04-oven-settings'),
    without = yaml.replace(/^ +batch: .*\n/m, ''),
    played = play(yaml),
    stays = played.seen.stays[at(played.model.stations.names, 'oven')],
    changes = ({ seen }: typeof played): number => sum(seen.changeovers) / seen.taken[1];

  it('carries what the shares of the temperatures say, and 24 a day at one temperature', () => {
    // Three bakes of 40 min in lots of two; of bakes 1/3 at 60, 7/15 at 80, 1/5 at 120. A change is 20 min, and 40
    // min more from 120 to 60: (20 x 142/225 + 40/15) / (142/225) min at the mean, one in three lots.
    const change = (20 * (142 / 225) + 40 / 15) / (142 / 225);
    expect(tableOf(yaml).highestRatePerDay).toBeCloseTo(1440 / (60 + (1.5 * change) / 3), 6);
    expect(tableOf(without).highestRatePerDay).toBeGreaterThan(16.4);
    expect(tableOf(without).highestRatePerDay).toBeLessThan(16.6);
    expect(
      tableOf(
        yaml
          .replace(/setting: (60|80) degrees/g, 'setting: 60')
          .replace(/setting: \{.*/, 'setting: 60')
          .replace(/^ +from to: .*\n/m, ''),
      ).highestRatePerDay,
    ).toBe(24);
  });

  it('has less than half the changeovers of lots as they come', () => {
    expect(changes(played)).toBeGreaterThan(0.17);
    expect(changes(played)).toBeLessThan(0.22);
    expect(changes(play(without))).toBeGreaterThan(0.38);
  });

  it('never has two temperatures in the oven at once, and takes an hour from 120 to 60', () => {
    const { changeoverValues } = played.model.stations;
    expect(changeoverValues[1]).toEqual(['60 degrees', '80 degrees', '120 degrees']);
    for (const { changedFrom, value, changeFrom, changeTo } of stays)
      if (changedFrom >= 0)
        expect(Math.round(changeTo - changeFrom)).toBe(changedFrom === 2 && value === 0 ? 60 : 20);
    // Whoever comes while others bake has waited for the same temperature, up to the minute.
    for (const one of stays)
      for (const other of stays)
        if (one.from < other.to - 1e-6 && other.from < one.to - 1e-6) expect(other.value).toBe(one.value);
  });
});

describe('scenarios/rules/04-strip-loop.yaml', () => {
  const yaml = text('04-strip-loop');

  it('takes the minutes of every round, for the unit too, which waits for its panel', () => {
    // One unit: 15 off, rounds of 40 + 60 + 10, 30 for each strip, 20 on. Three bad bakes in four, so that
    // panels are lost.
    const one = yaml.replace('quantity: 300', 'quantity: 1').replace('blister: 20 %', 'blister: 75 %');
    let lost = 0;
    for (let replication = 1; replication <= 20; replication++) {
      const played = play(one, 'strip', replication),
        coats = visits(played, 'coat'),
        strips = visits(played, 'strip'),
        scrapped = played.seen.inspections.scrapped[0];
      expect(coats).toBe(1 + strips + scrapped);
      // A panel is scrapped at its third bad bake, so after two strips.
      expect(strips).toBeGreaterThanOrEqual(2 * scrapped);
      expect(strips).toBeLessThanOrEqual(2 * (scrapped + 1));
      expect(shippedAt(played)).toEqual([15 + 110 * coats + 30 * strips + 20]);
      lost += scrapped;
    }
    expect(lost).toBeGreaterThan(5);
  });

  it('is reckoned by the sums of a truncated geometric row', () => {
    const q = 0.2,
      panels = 1 / (1 - q ** 3),
      visitsAt = (name: string): number => tableOf(yaml).rows.find((row) => row.name === name)!.visitsPerUnit;
    expect(visitsAt('panel booth')).toBeCloseTo(panels * (1 + q + q * q), 6);
    expect(visitsAt('panel booth')).toBeCloseTo(1.25, 6);
    expect(visitsAt('strip tank')).toBeCloseTo(panels * (q + q * q), 6);
  });
});

describe('scenarios/rules/05-oven-lots.yaml', () => {
  it('starts lots full, or after the longest wait with at least two', () => {
    expect(shippedAt(play(text('05-oven-lots')))).toEqual([105, 105, 105, 180, 180, 180, 180, 285, 285, 285]);
  });
});
