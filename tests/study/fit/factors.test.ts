import { describe, expect, it } from 'vitest';
import { beyondScenario } from '../../../src/study/fit/beyond.js';
import { takenOut } from '../../../src/study/fit/factors.js';
import { mean } from '../../../src/study/statistics/sums.js';

/** Made up. */
const TIMES = [
    30, 44, 33, 29, 41, 52, 38, 61, 35, 27, 47, 39, 58, 31, 43, 36, 66, 28, 45, 34, 49, 37, 55, 32,
  ],
  CAB = 'slssllslsslslslslssslsls'.split(''),
  COLOUR = 'rrwrrwwwrrryyrrwyryrrwwr'.split('');
const by = { cab: CAB, colour: COLOUR };

describe('factors of options', () => {
  it('of one are ratios of means, and what is left has the mean of the usual value', () => {
    const { factors, times } = takenOut(TIMES, { cab: CAB }, ['cab']),
      of = (value: string): number => mean(TIMES.filter((_, i) => CAB[i] === value));
    expect(factors).toEqual([
      { option: 'cab', usual: 's', factors: { l: expect.closeTo(of('l') / of('s'), 10) as unknown } },
    ]);
    expect(mean(times)).toBeCloseTo(of('s'), 10);
  });

  it('of two are those of a Poisson model with main effects, as scipy 1.10.1 minimises its likelihood', () => {
    const { factors, times, left } = takenOut(TIMES, by, ['cab', 'colour']);
    expect(left).toEqual([]);
    expect(factors).toEqual([
      { option: 'cab', usual: 's', factors: { l: expect.closeTo(1.49148043, 7) as unknown } },
      {
        ...{ option: 'colour', usual: 'r' },
        factors: { w: expect.closeTo(1.2108272, 7) as unknown, y: expect.closeTo(1.37282287, 7) as unknown },
      },
    ]);
    // So the mean by every value is that of the table, taken by what the model has for its units.
    const model = TIMES.map((time, i) => (30.40614424 * time) / (times[i] ?? NaN));
    for (const column of [CAB, COLOUR])
      for (const value of new Set(column)) {
        const own = (all: readonly number[]): number => mean(all.filter((_, i) => column[i] === value));
        expect(own(model)).toBeCloseTo(own(TIMES), 6);
      }
  });

  it('are not of an option that merely goes along with another', () => {
    // Trim follows the cab but for two units, and does nothing.
    const trim = CAB.map((value, i) => (i === 0 || i === 1 ? 'b' : value === 's' ? 'a' : 'b')),
      { factors, left } = takenOut(TIMES, { trim, cab: CAB }, ['trim', 'cab']);
    expect(factors.map(({ option }) => option)).toEqual(['cab']);
    expect(left).toEqual([{ option: 'trim', why: 'explained' }]);
  });

  it('are not of an option that the table cannot tell from another', () => {
    // Every long cab is one of five models, which differ a little, every short one the sixth.
    const few = [20, 21.3, 22.1, 20.6],
      short = Array.from({ length: 20 }, (_, i) => 9 + i * 0.13),
      long = [0, 0.9, 1.8, 2.7, 3.6].flatMap((more) => few.map((time) => time + more)),
      cab = [...short.map(() => 's'), ...long.map(() => 'l')],
      model = [...short.map(() => 'a'), ...long.map((_, i) => 'bcdef'.charAt(Math.floor(i / 4)))],
      { factors, left } = takenOut([...short, ...long], { cab, model }, ['cab', 'model']);
    expect(factors.map(({ option }) => option)).toEqual(['cab']);
    expect(left).toEqual([{ option: 'model', why: 'aliased' }]);
  });

  it('leave out rows whose value is not told or seldom seen, and options that may not be written', () => {
    const cab = CAB.map((value, i) => (i === 3 ? '' : i === 5 ? 'xl' : value)),
      { factors, rows } = takenOut(TIMES, { cab }, ['cab']);
    expect(rows).toHaveLength(22);
    expect(Object.keys(factors[0]?.factors ?? {})).toEqual(['l']);
    expect(takenOut(TIMES, { cab }, [])).toMatchObject({ factors: [], times: TIMES });
  });
});

describe('factors that the scenario has', () => {
  const ratio = (values: Readonly<Record<string, number>>) =>
    beyondScenario(TIMES, { cab: CAB }, ['cab'], { cab: values });
  it('stay where the table does not contradict them, and are taken out of the times', () => {
    const { factors, kept, times } = ratio({ l: 1.5 });
    expect({ factors, kept }).toEqual({ factors: [], kept: ['cab'] });
    expect(times).toEqual(TIMES.map((time, i) => (CAB[i] === 'l' ? time / 1.5 : time)));
  });
  it('give way to those of the table where it does; a value that it does not have keeps its own', () => {
    const plain = takenOut(TIMES, { cab: CAB }, ['cab']),
      { factors, kept, times } = ratio({ s: 2, l: 1, xl: 5 });
    expect(kept).toEqual([]);
    expect(factors).toEqual([
      {
        ...{ option: 'cab', usual: 's' },
        factors: { l: expect.closeTo(plain.factors[0]?.factors['l'] ?? NaN, 8) as unknown, xl: 2.5 },
      },
    ]);
    times.forEach((time, i) => {
      expect(time).toBeCloseTo(plain.times[i] ?? NaN, 8);
    });
  });
});
