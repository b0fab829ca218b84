import { describe, expect, it } from 'vitest';
import { readScenario, scenarioData } from '../../src/scenario/read.js';
import { toVary, type Varied, varied } from '../../src/scenario/vary.js';

describe('a value varied by a tenth', () => {
  it.each([
    ['a time', '20 min', '18 min', '22 min'],
    [
      'a time between bounds',
      { low: '30 min', likely: '40 min', high: '1 h' },
      { low: '27 min', likely: '36 min', high: '0.9 h' },
      { low: '33 min', likely: '44 min', high: '1.1 h' },
    ],
    [
      'a mean, whose spread stays its share of it',
      { mean: '10 min', cv: 0.3 },
      { mean: '9 min', cv: 0.3 },
      { mean: '11 min', cv: 0.3 },
    ],
    [
      'a named form',
      { exponential: { mean: '50 h' } },
      { exponential: { mean: '45 h' } },
      { exponential: { mean: '55 h' } },
    ],
    [
      'each time of a mixture, whose shares stay',
      {
        mixture: [
          { share: '80 %', time: '20 min' },
          { share: 0.2, time: { mean: '2 h', cv: 0.5 } },
        ],
      },
      {
        mixture: [
          { share: '80 %', time: '18 min' },
          { share: 0.2, time: { mean: '1.8 h', cv: 0.5 } },
        ],
      },
      {
        mixture: [
          { share: '80 %', time: '22 min' },
          { share: 0.2, time: { mean: '2.2 h', cv: 0.5 } },
        ],
      },
    ],
    ['a chance', '8 %', '7.2 %', '8.8 %'],
    ['a chance up to 100 % at most', '95 %', '85.5 %', '100 %'],
    ['a whole number by 1 at least', 3, 2, 4],
    ['a larger whole number', 64, 58, 70],
    ['a number', 0.5, 0.45, 0.55],
    ['a sample', '1 in 5', '1 in 4', '1 in 6'],
    ['a list of numbers', [7, 6], [6, 5], [8, 7]],
  ])('%s', (_, raw, low, high) => {
    expect([varied(raw, 0.9), varied(raw, 1.1)]).toEqual([low, high]);
  });

  it.each([
    ['a word', 'hall'],
    ['observed times', { observed: 'times.csv', column: 'min' }],
    ['times with chances', { discrete: { '10 min': '100 %' } }],
    [
      'a mixture with times with chances',
      {
        mixture: [
          { share: 0.5, time: '1 h' },
          { share: 0.5, time: { discrete: { '10 min': 1 } } },
        ],
      },
    ],
  ])('is not there for %s', (_, raw) => {
    expect(varied(raw, 1.1)).toBeUndefined();
  });
});

const yaml = (crew: number): string => `
scenario: varied
programme: { arrivals: saturated, length: 100 h, warm up: 10 h }
sites:
  hall:
    crews: { fitters: { headcount: { value: ${crew}, basis: guess } } }
    stations: { bench: { places: 2 } }
route:
  - { step: fit, at: bench, crew: { fitters: 1 }, work: { low: 10 min, high: 20 min, basis: estimate } }
  - { step: test, at: bench, work: { value: 10 min, basis: measured } }
`;

function allVaried(text: string): Varied[] {
  const { scenario, problems } = readScenario(text, 'varied.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  const { assumptions, vary } = toVary(
    scenario,
    scenarioData(text, 'varied.yaml', () => ''),
  );
  return assumptions.map(vary);
}

describe('the assumptions of a scenario', () => {
  it('are read with a guess 20 % and an estimate 10 % to either side; what was measured is left alone', () => {
    const all = allVaried(yaml(10));
    expect(all.map(({ assumption: { path }, low, high }) => [path, low?.value, high?.value])).toEqual([
      ['sites.hall.crews.fitters.headcount', '8', '12'],
      ['route[0].work', '{ low: 9 min, high: 18 min }', '{ low: 11 min, high: 22 min }'],
    ]);
    expect(all[0].low!.scenario.sites['hall'].crews['fitters'].headcount).toBe(8);
    expect(all[1].high!.scenario.route[0]).toMatchObject({ work: { kind: 'uniform', low: 11, high: 22 } });
  });

  it('have no end where the scenario would not be sound', () => {
    // Nobody could do the step.
    const [crew] = allVaried(yaml(1));
    expect([crew.low, crew.high?.value]).toEqual([undefined, '2']);
  });
});
