import { describe, expect, it } from 'vitest';
import { expectAgreement, observations, SLOW } from './agree.js';
import { exponential } from './line.js';

describe('items that parts bring', SLOW, () => {
  // An axle: made 0.5, gauge finds 0.6: r = 0.2. A kit takes one and its look finds 0.5: 0.1. A unit takes
  // two kits: 1 - 0.9^2 = 0.19; the first look finds 0.7 (0.133), the second 0.6 of the rest (0.0342), 0.0228
  // are shipped: products of chances, any text on probability.
  const seen = observations(
    `
scenario: through a kit
programme: { arrivals: 1 h, quantity: 20000 }
defects: { crack: {} }
sites:
  hall: { stations: { bench: { places: 9, buffer: unlimited }, kit bench: { places: 9, buffer: unlimited }, line: { places: 9 }, gate: { places: 9 }, last gate: { places: 9 } } }
feeders:
  axles: { stock: 6, route: [{ step: build axle, at: bench, work: 20 min, creates: { crack: 50 % } }, { step: gauge, at: bench, work: 1 min, finds: { crack: { chance: 60 %, repair: 1 min } } }] }
  kits: { stock: 6, route: [{ step: build kit, at: kit bench, parts: { axles: 1 }, work: 5 min, finds: { crack: { chance: 50 %, repair: 1 min } } }] }
route:
  - { step: fit, at: line, parts: { kits: 2 }, work: 1 h }
  - { step: look, at: gate, work: 1 h, finds: { crack: { chance: 70 %, repair: 30 min } } }
  - { step: look again, at: last gate, work: 1 h, finds: { crack: { chance: 60 %, repair: 30 min } } }
`,
    { replications: 40 },
  );
  // Finds in step order: look, look again, gauge, build kit.
  it('are found on the unit and shipped as products of chances say', () => {
    expectAgreement(
      seen.map(({ quality: { found }, shipped }) => found[0] / shipped),
      0.19 * 0.7,
      0.01,
    );
    expectAgreement(
      seen.map(({ quality: { found }, shipped }) => found[1] / shipped),
      0.19 * 0.3 * 0.6,
      0.015,
    );
    expectAgreement(
      seen.map(({ quality: { shippedUnfound }, shipped }) => shippedUnfound[0] / shipped),
      0.19 * 0.3 * 0.4,
      0.02,
    );
  });

  it('become one where two alike meet: 0.1^2 of the units', () => {
    expectAgreement(
      seen.map(({ quality: { merged }, shipped }) => merged[0] / shipped),
      0.01,
      0.03,
    );
  });
});

describe('repairs by option', SLOW, () => {
  it('take the sum of share × chance × mean time', () => {
    // Lime 0.25 × 0.6 × 40, others 0.75 × 0.2 × 25, each found for sure: 6 + 3.75 (total expectation, any text).
    const seen = observations(`
scenario: longer on lime
programme: { arrivals: 2 h, quantity: 20000, options: { colour: { lime: 25 %, white: 75 % } } }
defects: { dirt: {} }
sites: { hall: { stations: { booth: { places: 9 }, gate: { places: 9, buffer: unlimited } } } }
route:
  - { step: coat, at: booth, work: 1 h, creates: { dirt: { usual: 20 %, colour: { lime: 60 % } } } }
  - { step: look, at: gate, finds: { dirt: { chance: 100 %, repair: { usual: { mean: 25 min, cv: 0.4 }, colour: { lime: { mean: 40 min, cv: 0.6 } } } } } }
`);
    expectAgreement(
      seen.map(({ repairMinutes, shipped }) => repairMinutes / shipped),
      9.75,
      0.01,
    );
  });
});

describe('a part that is replaced where its test fails', SLOW, () => {
  // A pump has the flaw with 0.3, the test finds it with 0.8; another pump is taken each time, at most twice:
  // found at a visit r = 0.24, visits 1 + r + r^2 (geometric, cut off). Shipped with it: missed after k
  // replacements, 0.06 (1 + r + r^2), or found at the limit, r^3.
  it('visits the test 1 + r + r^2 times, and ships 0.06 (1 + r + r^2) + r^3', () => {
    const seen = observations(
        `
scenario: replaced
programme: { arrivals: 1 h, quantity: 20000 }
defects: { leak: {} }
sites: { hall: { stations: { bench: { places: 9, buffer: unlimited }, line: { places: 9, buffer: unlimited }, rig: { places: 9, buffer: unlimited } } } }
feeders: { pumps: { stock: 6, at start: 0, route: [{ step: build, at: bench, work: 20 min, creates: { leak: 30 % } }] } }
route:
  - { step: fit, at: line, parts: { pumps: 1 }, work: 10 min }
  - { step: test, at: rig, work: 10 min, finds: { leak: { chance: 80 %, back to: fit, limit: 2 } } }
`,
        { replications: 40 },
      ),
      r = 0.24;
    expectAgreement(
      seen.map(({ stepVisits, shipped }) => stepVisits[1] / shipped),
      1 + r + r * r,
      0.003,
    );
    expectAgreement(
      seen.map(({ openAtShipping, shipped }) => openAtShipping / shipped),
      0.06 * (1 + r + r * r) + r ** 3,
      0.01,
    );
    expectAgreement(
      seen.map(({ quality: { shippedNoted }, shipped }) => shippedNoted[0] / shipped),
      r ** 3,
      0.03,
    );
  });
});

describe('a hold', SLOW, () => {
  // Units come by a Poisson stream of 1 an hour; half of them have the item and are held: a Poisson stream of
  // 0.5 an hour (splitting) before one mender whose work is of a gamma law with mean 1.2 h and cv 0.5: M/G/1
  // with load 0.6. Wait by Pollaczek and Khinchine, in Hopp & Spearman, Factory Physics, ch. 8 (from memory):
  // (1 + cv^2) / 2 x load / (1 - load) x 1.2 h = 1.125 h; time in hold 2.325 h; mean held 0.5 x 2.325.
  const seen = observations(
    `
scenario: held
programme: { arrivals: ${exponential(1)}, length: 40000 h, warm up: 500 h }
defects: { gap: {} }
sites: { hall: { crews: { menders: 1 }, stations: { line: { places: 40, buffer: unlimited }, hold area: { buffer: unlimited } } } }
route:
  - { step: make, at: line, work: 1 min, creates: { gap: 50 % }, finds: { gap: { chance: 100 %, carry: { mean: 1.2 h, cv: 0.5, shape: gamma } } } }
  - { step: hold, at: hold area, crew: { menders: 1 }, hold: true }
`,
    { replications: 40 },
  );

  it('holds half of the units, and each as long as M/G/1 says', () => {
    expectAgreement(
      seen.map(({ quality: { held, cameToHold } }) => held[0] / cameToHold[0]),
      0.5,
      0.005,
    );
    expectAgreement(
      seen.map(({ quality: { holdMean } }) => holdMean[0] / 60),
      2.325,
      0.01,
    );
    expectAgreement(
      seen.map(({ quality: { inHold } }) => inHold[0]),
      0.5 * 2.325,
      0.01,
    );
  });

  it('ships nothing that is noted, and its crew mends all the time that items take', () => {
    expect(seen.every(({ openAtShipping }) => openAtShipping === 0)).toBe(true);
    expectAgreement(
      seen.map(({ reworkMinutes, minutes }) => reworkMinutes[0] / minutes),
      0.6,
      0.01,
    );
  });
});

describe('a second measurement', SLOW, () => {
  const line = (first: string, second: string): string => `
scenario: measured twice
programme: { arrivals: 1 h, quantity: 20000 }
defects: { camber: {} }
sites: { hall: { stations: { mill: { places: 9 }, gate: { places: 9 }, second gate: { places: 9 } } } }
route:
  - { step: make, at: mill, work: 1 h, creates: { camber: 20 % } }
  - { step: measure, at: gate, work: 1 h, ${first} }
  - { step: measure again, at: second gate, work: 1 h, ${second}, compares with: { step: measure, if it differs: 40 min } }
`;
  const cell = (seen: ReturnType<typeof observations>, of: (cells: Float64Array) => number): number[] =>
    seen.map(({ quality: { compared }, shipped }) => of(compared.subarray(4)) / shipped);

  // Kappa: Cohen (1960), Educational and Psychological Measurement 20(1), 37-46; from memory.
  it('that is independent agrees as products of chances say, and its kappa is 0', () => {
    // Tests alone, 10 % and 30 %: 0.63, 0.27, 0.07, 0.03.
    const seen = observations(
      line(
        'finds: { camber: { chance: 0 %, repair: 1 min } }, fails: { chance: 10 %, repair: 1 min }',
        'fails: { chance: 30 %, repair: 1 min }',
      ),
      { replications: 40 },
    );
    [0.63, 0.27, 0.07, 0.03].forEach((expected, c) => {
      expectAgreement(
        cell(seen, (cells) => cells[c]),
        expected,
        0.015,
      );
    });
    // Kappa = (agreed - by chance) / (1 - by chance) with the margins; compared on its own scale of
    // agreement, which is above 0.
    expectAgreement(
      seen.map(({ quality: { compared } }) => {
        const [gg, gb, bg, bb] = Array.from(compared.subarray(4)).map((units) => units / 20_000),
          byChance = (gg + gb) * (gg + bg) + (bg + bb) * (gb + bb);
        return 1 + (gg + bb - byChance) / (1 - byChance);
      }),
      1,
      0.005,
    );
    expectAgreement(
      seen.map(({ quality: { differMinutes } }) => differMinutes[1] / 20_000),
      0.34 * 40,
      0.01,
    );
  });

  it('of the same flaw, carried from the first, finds what the first missed: bad-bad 0, good-bad 0.2 x 0.4 x 0.7', () => {
    const seen = observations(
      line(
        'finds: { camber: { chance: 60 %, carry: 1 min } }',
        'finds: { camber: { chance: 70 %, repair: 1 min } }',
      ),
      { replications: 40 },
    );
    expectAgreement(
      cell(seen, (cells) => cells[1]),
      0.2 * 0.4 * 0.7,
      0.015,
    );
    expectAgreement(
      cell(seen, (cells) => cells[2]),
      0.2 * 0.6,
      0.01,
    );
    expect(cell(seen, (cells) => cells[3]).every((share) => share === 0)).toBe(true);
  });
});

describe('rolled throughput yield', SLOW, () => {
  it('of four independent tests is the product of their yields, and the share of units without any find is the same', () => {
    // 0.95 x 0.9 x 0.98 x 0.85 = 0.712215, Hopp & Spearman's and any quality text's rolled yield (from
    // memory).
    const chances = [5, 10, 2, 15],
      expected = chances.reduce((product, percent) => product * (1 - percent / 100), 1);
    const seen = observations(
      `
scenario: rolled
programme: { arrivals: 1 h, quantity: 20000 }
sites: { hall: { stations: { ${chances.map((_, i) => `gate ${i}: { places: 9 }`).join(', ')} } } }
route:
${chances.map((percent, i) => `  - { step: test ${i}, at: gate ${i}, work: 30 min, fails: { chance: ${percent} %, repair: 10 min } }`).join('\n')}
`,
      { replications: 40 },
    );
    expectAgreement(
      seen.map(({ inspections: { firstPasses, firstVisits } }) =>
        Array.from(firstPasses).reduce((product, passes, i) => product * (passes / firstVisits[i]), 1),
      ),
      expected,
      0.003,
    );
    // A unit without a find takes 2 h.
    expectAgreement(
      seen.map(
        ({ shippedAt, enteredAt }) =>
          Array.from(shippedAt, (time, i) => Number(time - enteredAt[i] < 120.5)).reduce((a, b) => a + b, 0) /
          20_000,
      ),
      expected,
      0.003,
    );
  });
});
