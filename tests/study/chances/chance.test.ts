import { describe, expect, it } from 'vitest';
import { type CountRow, fitChance, mostOfNone } from '../../../src/study/chances/chance.js';

const row = (units: number, found: number, options: Record<string, string> = {}): CountRow => ({
  units,
  found,
  options,
});

describe('a chance from counts', () => {
  // R 4.2.2, prop.test(correct = FALSE).
  it.each([
    [7, 84, 0.0409525506224072, 0.162157223056476],
    [0, 84, 0, 0.0437317284146599],
    [84, 84, 0.95626827158534, 1],
    [1, 12, 0.0148650944049171, 0.3538799111411169],
    [233, 1500, 0.137885395805195, 0.174542125104583],
  ])('has the Wilson interval of R for %d of %d', (found, units, low, high) => {
    const { all } = fitChance([row(units, found)]);
    expect(all.share).toBe(found / units);
    expect(all.low).toBeCloseTo(low, 8);
    expect(all.high).toBeCloseTo(high, 8);
  });

  it('of none found is up to what the exact binomial bound says, about 3 / n', () => {
    // R 4.2.2, binom.test(0, 60, alternative = 'less').
    const fit = fitChance([row(60, 0)]);
    expect(fit.most).toBeCloseTo(0.0487029133100975, 12);
    expect(mostOfNone(1000, 0.95)).toBeCloseTo(3 / 1000, 4);
    expect(fit.told).toEqual([
      'None found in 60 units: the chance may still be up to 4.9 % (95 % sure), and a scenario with 0 % never has it.',
    ]);
    expect(fitChance([row(60, 1)]).most).toBeUndefined();
  });

  it('is one for all where options do not matter, and says so by the p of each', () => {
    const fit = fitChance([row(50, 5, { colour: 'red' }), row(70, 6, { colour: 'white' })]);
    expect(fit.by).toBeNull();
    expect(fit.all.count).toBe(11);
    expect(fit.told[1]).toMatch(/^By colour \(white 6 of 70, red 5 of 50\) p is 1 \(exact test/);
  });

  it('is one a value where they do, the commonest first', () => {
    const { by } = fitChance([row(100, 20, { colour: 'red' }), row(300, 12, { colour: 'white' })]);
    expect(by?.option).toBe('colour');
    expect(by?.levels.map(({ name, chance }) => [name, chance.share])).toEqual([
      ['white', 0.04],
      ['red', 0.2],
    ]);
  });

  it('is asked of several options with Holm: what would be seen of one alone is not seen of five', () => {
    const differ = [row(30, 8, { a: '1' }), row(80, 8, { a: '2' })], // p 0.04 by fisher.test
      alone = fitChance(differ),
      flat = Object.fromEntries(['b', 'c', 'd', 'e'].map((name) => [name, '1'])),
      level = (options: Record<string, string>, other: string) =>
        Object.fromEntries(Object.keys(options).map((name) => [name, other])),
      among = fitChance([...differ, row(55, 8, flat), row(55, 8, level(flat, '2'))]);
    expect(alone.by?.option).toBe('a');
    expect(among.options[0]?.option).toBe('a');
    expect(among.options).toHaveLength(5);
    expect(among.by).toBeNull();
  });

  it('is not fooled by an option that only goes with the one that matters', () => {
    // Long cabs are mostly red; only the colour matters: 20 % of red ones, 4 % of white ones.
    const fit = fitChance([
      row(160, 32, { colour: 'red', cab: 'long' }),
      row(40, 8, { colour: 'red', cab: 'short' }),
      row(50, 2, { colour: 'white', cab: 'long' }),
      row(250, 10, { colour: 'white', cab: 'short' }),
    ]);
    expect(fit.options.every(({ adjusted }) => adjusted < 0.05)).toBe(true);
    expect(fit.by?.option).toBe('colour');
    expect(fit.told.at(-1)).toMatch(/^Among units of the same colour no difference by cab is seen/);
  });

  it('tells of a second option that matters by itself', () => {
    const fit = fitChance([
      row(200, 80, { colour: 'red', cab: 'long' }),
      row(200, 40, { colour: 'red', cab: 'short' }),
      row(200, 20, { colour: 'white', cab: 'long' }),
      row(200, 2, { colour: 'white', cab: 'short' }),
    ]);
    expect(fit.by?.option).toBe('colour');
    expect(fit.told.at(-1)).toMatch(
      /^It differs by cab among units of the same colour too \(p below 0.001\)/,
    );
  });
});
