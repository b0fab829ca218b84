import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import { capacity } from '../../../src/study/capacity/capacity.js';

/** Minutes of the booth for each unit: 20 min of work, and changeovers. */
function boothMinutes(colours: string, changeover: string): number {
  const { scenario } = readScenario(
    `
scenario: booth
programme: { arrivals: saturated, length: 1000 h, options: { colour: { ${colours} } } }
sites: { hall: { stations: { booth: { buffer: 40, changeover: { on: colour, ${changeover} } } } } }
route: [{ step: coat, at: booth, work: 20 min }]
`,
    'booth.yaml',
    () => '',
  );
  return capacity(compile(scenario!), scenario!).rows[0].minutesPerUnit - 20;
}

describe('capacity: changeovers', () => {
  it('from value to value are weighted by p_i p_j', () => {
    // Red to white 0.7 x 0.3 x 45, white to red 0.3 x 0.7 x 15.
    expect(
      boothMinutes(
        'red: 70 %, white: 30 %',
        'work: 0 min, from to: { red: { white: 45 min }, white: { red: 15 min } }',
      ),
    ).toBeCloseTo(12.6, 9);
    // The pairs without a time of their own take the usual 10 min: lime with the others, 2 x 0.1 x 0.9 x 10;
    // and 0.6 x 0.3 x 45, none back.
    expect(
      boothMinutes(
        'red: 60 %, white: 30 %, lime: 10 %',
        'work: 10 min, from to: { red: { white: 45 min }, white: { red: 0 min } }',
      ),
    ).toBeCloseTo(1.8 + 8.1, 9);
  });

  it('in batches are 1 in k where both of two values are as common', () => {
    expect(boothMinutes('red: 50 %, white: 50 %', 'work: 30 min, batch: { most: 5 }')).toBeCloseTo(6, 9);
  });

  it('in batches are two for each batch of a rare value', () => {
    // One in a row: each white stands between two reds, 2 x 0.2. Five: 2 x 0.8 x (1 - 0.8^5) / 5.
    expect(boothMinutes('red: 80 %, white: 20 %', 'work: 10 min, batch: { most: 1 }')).toBeCloseTo(4, 9);
    expect(boothMinutes('red: 80 %, white: 20 %', 'work: 10 min, batch: { most: 5 }')).toBeCloseTo(
      (10 * 1.6 * (1 - 0.32768)) / 5,
      9,
    );
  });

  it('take no time where all units are alike', () => {
    expect(boothMinutes('red: 100 %, white: 0 %', 'work: 10 min, batch: { most: 5 }')).toBe(0);
  });
});
