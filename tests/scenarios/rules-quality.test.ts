import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { at, type Played, play, shippedAt, visits } from '../flow/run-yaml.js';

/**
 * What the comments of these files promise. Expected counts are reckoned from the chances, and a band of 3.5
 * standard deviations is allowed.
 */
const played = (name: string): Played =>
  play(readFileSync(new URL(`../../scenarios/rules/${name}.yaml`, import.meta.url), 'utf8'), 'rules');

function expectCount(seen: number, units: number, chance: number): void {
  expect(
    Math.abs(seen - units * chance),
    `${seen} of ${units}, expected ${units * chance}`,
  ).toBeLessThanOrEqual(3.5 * Math.sqrt(units * chance * (1 - chance)));
}
const slotOf = ({ model }: Played, slot: string): number => at(model.slots.names, slot);
const findOf = ({ model: { steps } }: Played, step: string, slot: number): number => {
  const s = at(steps.names, step);
  return Array.from(steps.findSlot.keys()).find(
    (f) => f >= steps.findStart[s] && f < steps.findStart[s + 1] && steps.findSlot[f] === slot,
  )!;
};

describe('the scenario of rule', () => {
  it('8, defects: dirt is found, escapes and is shipped as often as the product of chances says', () => {
    const seen = played('08-defects'),
      { quality, shipped } = seen.seen,
      dirt = slotOf(seen, 'dirt from coat');
    expect(shipped).toBe(400);
    expectCount(quality.found[findOf(seen, 'inspect', dirt)], 400, 0.3 * 0.6);
    expectCount(quality.found[findOf(seen, 'last inspection', dirt)], 400, 0.12 * 0.5);
    expectCount(quality.shippedUnfound[dirt], 400, 0.06);
    // Every item made was found first somewhere, or shipped.
    const found = ['inspect', 'last inspection'].reduce(
      (sum, step) => sum + quality.found[findOf(seen, step, dirt)],
      0,
    );
    expect(quality.made[dirt]).toBe(found + quality.shippedUnfound[dirt]);
  });

  it('8, repair by option: repairs and mending take what the shares of lime units and of vans say', () => {
    const { seen } = played('08-repair-by-option'),
      { repairMinutes } = seen.quality;
    const expectMinutes = (minutes: number, usual: number, more: number, share: number): void => {
      expectCount((minutes - 40 * usual) / more, 40, share);
    };
    expect(seen.shipped).toBe(40);
    expectMinutes(repairMinutes[0], 25, 15, 0.25);
    expectMinutes(repairMinutes[1], 60, 60, 0.4);
  });

  it('8, back to paint: one cabin in five goes home, comes again, and costs both trips', () => {
    const seen = played('08-back-to-paint'),
      { lanes, shipped } = seen.seen,
      home = at(seen.model.lanes.names, 'return to coachworks'),
      out = at(seen.model.lanes.names, 'coachworks to final plant');
    expect(shipped).toBe(200);
    expectCount(lanes.carried[home], 200, 0.2);
    expect(lanes.trips[home]).toBe(lanes.carried[home]);
    expect(lanes.trips[out]).toBe(200 + lanes.carried[home]);
    expect(visits(seen, 'paint')).toBe(200 + lanes.carried[home]);
    expect(visits(seen, 'fit')).toBe(200);
    const leads = shippedAt(seen).map((time, i) => Math.round(time - seen.seen.enteredAt[i]));
    expect(Math.min(...leads)).toBe(305);
    expect(Math.min(...leads.filter((lead) => lead > 500))).toBe(305 + 285);
  });

  it('8, carried defect: 1 - (5/6)^2 of the units have it, and 0.9 of these are found on the road', () => {
    const seen = played('08-carried-defect'),
      { quality } = seen.seen,
      flaw = slotOf(seen, 'loose bearing from build axle');
    const found = quality.found[findOf(seen, 'road test', flaw)];
    expectCount(found + quality.shippedUnfound[flaw], 400, 11 / 36);
    expectCount(quality.shippedUnfound[flaw], 400, (11 / 36) * 0.1);
  });

  it('9, tests: samples, options, and a module that takes another pump where it failed', () => {
    const seen = played('09-tests'),
      cranes = Array.from(seen.seen.optionsOf).filter((value) => value === 0).length;
    expect(visits(seen, 'leak test')).toBe(100);
    expect(visits(seen, 'road test')).toBe(20);
    const loadTests = seen.seen.inspections;
    const load = Array.from(seen.model.steps.names.keys())
      .filter((s) => seen.model.steps.findStart[s + 1] > seen.model.steps.findStart[s])
      .indexOf(at(seen.model.steps.names, 'load test'));
    expect(loadTests.firstVisits[load]).toBe(cranes);
    expect(visits(seen, 'load test')).toBe(cranes + loadTests.sentBack[load]);
    // Pumps taken: one for each module begun (fitted, in stock or in the making), and one for each failed
    // test.
    const module = load + 1,
      modules = seen.run.shop.routes[2].begun;
    expect(visits(seen, 'build module')).toBe(modules + seen.seen.inspections.sentBack[module]);
    expect(seen.seen.inspections.sentBack[module]).toBeGreaterThan(10);
  });

  it('9, second measurement: the cells of independent measurements are products of their chances', () => {
    const seen = played('09-second-measurement'),
      cells = Array.from(seen.seen.quality.compared.subarray(4));
    expect(cells.reduce((sum, units) => sum + units, 0)).toBe(1000);
    [0.72, 0.18, 0.08, 0.02].forEach((chance, cell) => {
      expectCount(cells[cell], 1000, chance);
    });
    expect(seen.seen.quality.differMinutes[1]).toBe(40 * (cells[1] + cells[2]));
  });

  it('10, hold: unit 2 leaves the hold area at 3 h 40, after unit 3', () => {
    const seen = played('10-hold'),
      shipped = shippedAt(seen);
    expect(shipped.slice(0, 3)).toEqual([65, 225, 185]);
    expect(seen.seen).toMatchObject({ shipped: 40, outcome: 'finished' });
    // Every second unit is looked at and held; nothing noted is shipped.
    expect(seen.seen.quality.held[0]).toBe(20);
    expect(seen.seen.quality.shippedNoted.every((items) => items === 0)).toBe(true);
  });
});
