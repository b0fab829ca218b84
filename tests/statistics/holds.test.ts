import { describe, expect, it } from 'vitest';
import type { RateOptions } from '../../src/study/rate/rate.js';
import { SLOW } from './agree.js';
import { built, scenarioBuilt } from './built.js';

/** One shift of eight hours, five days a week. 2027-03-01 is a Monday. Every number is invented. */
const line = (stations: string, steps: string, rest = '', perDay = 4): string => `
scenario: line
programme: { start: 2027-03-01, until: 2032-12-31, zone: UTC, rate: { per day: ${perDay} } }
calendars: { days: { hours: ["08:00-16:00"] } }
defects: { runs: {} }
sites: { hall: { zone: UTC, calendar: days, ${rest}stations: { ${stations} } } }
route: [${steps}]
`;
const exponential = (mean: string): string => `{ exponential: { mean: ${mean} } }`;
const one = (work: string): string => line('s: { buffer: unlimited }', `{ step: w, at: s, work: ${work} }`);

/** Builds with the most that they can ship, units a working day, and why. */
const FIXED_LONG = { limit: 0.5, yaml: one('16 h') },
  FIXED = { limit: 6, yaml: one('80 min') },
  EXPONENTIAL = { limit: 6, yaml: one(exponential('80 min')) },
  // Work in proportion to arrivals by chance: the first station sends units on at random.
  AT_RANDOM = {
    limit: 6,
    yaml: line(
      'r: { buffer: unlimited }, s: { buffer: unlimited }',
      `{ step: v, at: r, work: ${exponential('1 h')} }, { step: w, at: s, work: ${exponential('80 min')} }`,
    ),
  },
  // Two stations of 80 min share one person: 480 / 80.
  CREW = {
    limit: 6,
    yaml: line(
      's: { buffer: unlimited }, t: { buffer: unlimited }',
      `{ step: v, at: s, work: ${exponential('40 min')}, crew: { fitters: 1 } }, { step: w, at: t, work: ${exponential('40 min')}, crew: { fitters: 1 } }`,
      'crews: { fitters: 1 }, ',
    ),
  },
  // Each visit makes a flaw on 20 %: 1 / 0.8 visits a unit of 64 min, again 80 min.
  REWORK = {
    limit: 6,
    yaml: line(
      's: { buffer: unlimited, rework buffer: unlimited }, t: { buffer: unlimited }',
      '{ step: w, at: s, work: { mean: 64 min, cv: 0.3 }, creates: { runs: 20 % } }, { step: i, at: t, work: 10 min, finds: { runs: { chance: 100 %, back to: w, limit: 9 } } }',
    ),
  },
  // Two exponential stations without room between them ship 2 / 3 of the rate of one: Hunt (1956), Operations
  // Research 4(6), 674-683; 480 / 60 * 2 / 3.
  NO_ROOM = {
    limit: 16 / 3,
    yaml: line(
      's: { buffer: unlimited }, t: {}',
      `{ step: v, at: s, work: ${exponential('1 h')} }, { step: w, at: t, work: ${exponential('1 h')} }`,
    ),
  };

/** Answers of studies with as many seeds, as shares of the limit, sorted; from 85 % of it in steps of 0.5 %. */
async function found(
  { limit, yaml }: { readonly limit: number; readonly yaml: string },
  seeds: number,
  options: Partial<RateOptions> = {},
) {
  const scenario = scenarioBuilt(yaml),
    answers: number[] = [],
    spreads: { readonly low: number; readonly high: number }[] = [];
  for (let seed = 1; seed <= seeds; seed++) {
    const { answer } = await built.rateStudy({
      scenario,
      file: 'line.yaml',
      from: 0.85 * limit,
      to: 1.1 * limit,
      step: 0.005 * limit,
      weeks: 13,
      sure: 0.5,
      replications: 30,
      seed: `holds ${seed}`,
      workers: 1,
      ...options,
    });
    answers.push((answer.highestPerDay ?? 0) / limit);
    spreads.push({ low: (answer.spread.low ?? 0) / limit, high: (answer.spread.high ?? 0) / limit });
  }
  answers.sort((a, b) => a - b);
  return { answers, median: answers[seeds >> 1], spreads };
}

describe('the highest rate that holds', SLOW, () => {
  it('is that of arithmetic, and no more, where nothing is left to chance', async () => {
    // 16 h in shifts of eight; the window is as long as a step of 0.0025 a day takes.
    const { answers } = await found(FIXED_LONG, 1, { from: 0.45, to: 0.55, step: 0.0025, weeks: undefined });
    expect(answers[0]).toBeCloseTo(1, 9);
    // Four weeks, in which a unit is 0.8 %.
    const short = await found(FIXED, 1, { from: 5.7, to: 6.3, step: 0.05, weeks: 4 });
    expect(short.answers[0]).toBeCloseTo(1, 9);
  });

  // With 120 replications of 13 weeks, 390 units each, the mean is known to 5.1 % / sqrt(120) = 0.46 % where
  // work is exponential, and what is surely shipped lies 3.2 of these below: 1.5 %, and 0.5 % of a step.
  it.each([
    ['a station with exponential work', EXPONENTIAL],
    ['a station to which units come at random', AT_RANDOM],
    ['a crew that two stations share', CREW],
    ['work done again', REWORK],
    ['two exponential stations without room between them', NO_ROOM],
  ])('comes from below near the limit of the build, and in no study above it: %s', async (_, build) => {
    const { answers, median } = await found(build, 3);
    expect(answers.filter((answer) => answer > 1 + 1e-9)).toEqual([]);
    expect(median).toBeGreaterThanOrEqual(0.97);
  });

  it('comes nearer with more weeks and with more replications', async () => {
    const seeds = 6,
      usual = await found(EXPONENTIAL, seeds),
      longer = await found(EXPONENTIAL, seeds, { weeks: 52 }),
      fewer = await found(EXPONENTIAL, seeds, { replications: 8 });
    for (const { answers } of [usual, longer, fewer])
      expect(answers.filter((answer) => answer > 1 + 1e-9)).toEqual([]);
    expect(longer.median).toBeGreaterThan(usual.median);
    expect(longer.median).toBeGreaterThanOrEqual(0.985);
    expect(usual.median).toBeGreaterThan(fewer.median);
    // Nine of ten of these studies lie within the spread that each of them tells; of 36 pairs, which are not
    // independent, a quarter may not.
    const pairs = usual.spreads.flatMap(({ low, high }) =>
      usual.answers.map((answer) => answer >= low - 1e-9 && answer <= high + 1e-9),
    );
    expect(pairs.filter((holds) => holds).length / pairs.length).toBeGreaterThan(0.75);
  });
});

describe('a rate of 97 % of what a build can ship', SLOW, () => {
  it('is judged alike by simulate and rate, and every "held" says in how many builds', async () => {
    const scenario = scenarioBuilt(
        EXPONENTIAL.yaml.replace('per day: 4', 'per day: 5.82').replace('2032-12-31', '2027-09-20'),
      ),
      pairs: string[][] = [];
    for (let seed = 1; seed <= 6; seed++) {
      const asked = { scenario, file: 'line.yaml', replications: 30, seed: `${seed}`, workers: 1 },
        { answer } = await built.simulateStudy(asked),
        { points } = await built.rateStudy({ ...asked, from: 5.82, to: 5.82, step: 0.1, sure: 0.5 });
      const { keptUp, verdict, sentence } = answer;
      if (verdict === 'holds') expect(sentence).toContain(`is held in ${keptUp!.count} of 30 builds`);
      pairs.push([verdict, points[0].verdict]);
    }
    // Neither contradicts the other; most of the time they say the same.
    expect(
      pairs.filter((pair) => pair.some((verdict) => !['holds', 'not settled'].includes(verdict))),
    ).toEqual([]);
    expect(pairs.filter(([a, b]) => a === b).length).toBeGreaterThanOrEqual(4);
  });
});
