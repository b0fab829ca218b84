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

describe('capacity: changeovers of settings', () => {
  /** Rows of an oven with settings, and of its crew. */
  const rowsOf = (oven: string, route: string) => {
    const { scenario } = readScenario(
      `
scenario: oven
programme: { arrivals: saturated, length: 1000 h, options: { body: { small: 40 %, large: 60 % } } }
sites: { hall: { crews: { bakers: 2 }, stations: { oven: { buffer: 40, ${oven} } } } }
route: [${route}]
`,
      'oven.yaml',
      () => '',
    );
    return capacity(compile(scenario!), scenario!).rows;
  };
  const minutes = (oven: string, route: string): number =>
    rowsOf(oven, route).find(({ name }) => name === 'oven')!.minutesPerUnit;
  const bake = (name: string, setting: string): string =>
    `{ step: ${name}, at: oven, crew: { bakers: 1 }, work: 5 min, process: 25 min, setting: ${setting} }`;

  it('go by the visits of the steps and the mix of the option', () => {
    // 0.4 at 60 and 0.6 at 80: 2 x 0.24 x 20.
    expect(
      minutes(
        'changeover: { on: setting, work: 20 min }',
        bake('bake', '{ body: { small: 60 }, usual: 80 }'),
      ),
    ).toBeCloseTo(30 + 9.6, 9);
  });

  it('are certain where a unit keeps its place, and follow from where the one before left it', () => {
    // 60 to 80 in the place, 25; the next unit finds 80 and is small in 0.4, at 80 from the beginning: 0.6 x 45 back,
    // and of those 0.6 alone 25 in the place.
    expect(
      minutes(
        'changeover: { on: setting, work: 25 min, from to: { 80: { 60: 45 min } } }',
        `${bake('dry', '{ body: { small: 80 }, usual: 60 }')}, ${bake('cure', '80')}`,
      ),
    ).toBeCloseTo(60 + 0.6 * (25 + 45), 9);
  });

  it('take the place and the crew, or by themselves the place alone', () => {
    const crew = (kind: string): number =>
      rowsOf(
        `changeover: { on: setting, ${kind}: 20 min }`,
        bake('bake', '{ body: { small: 60 }, usual: 80 }'),
      ).find(({ name }) => name === 'bakers')!.minutesPerUnit;
    expect(crew('work')).toBeCloseTo(5 + 9.6, 9);
    expect(crew('process')).toBeCloseTo(5, 9);
    expect(
      minutes(
        'changeover: { on: setting, process: 20 min }',
        bake('bake', '{ body: { small: 60 }, usual: 80 }'),
      ),
    ).toBeCloseTo(39.6, 9);
  });

  it('are one in k lots with batches of k lots, where no setting has more than half', () => {
    const three = `${bake('a', '60')}, { step: wait, at: rack }, ${bake('b', '80')}, { step: wait on, at: rack }, ${bake('c', '120')}`;
    // Three visits in lots of four: 3 x (30 + 20 / 2) / 4.
    expect(
      minutes(
        'places: 4, lot: { most: 4 }, changeover: { on: setting, process: 20 min, batch: { most: 2 } } }, rack: {',
        three,
      ),
    ).toBeCloseTo(30, 9);
  });

  it('between lots go by the kinds of lots, of which alike steps with one setting are one', () => {
    const three = (b: string): string =>
        `${bake('a', '60')}, { step: wait, at: rack }, ${b}, { step: wait on, at: rack }, ${bake('c', '80')}`,
      oven = 'places: 2, lot: { most: 2 }, changeover: { on: setting, process: 20 min } }, rack: {';
    // By the chain of lot-chain.ts with 1/3 and 2/3, and with three thirds: 44 and 43 changes in 81 lots.
    expect(minutes(oven, three(bake('b', '80')))).toBeCloseTo(45 + (1.5 * 20 * 44) / 81, 4);
    const apart = three(bake('b', '80').replace('process: 25 min', 'process: 24 min'));
    expect(minutes(oven, apart)).toBeCloseTo(44.5 + (1.5 * 20 * 43) / 81, 4);
  });
});
