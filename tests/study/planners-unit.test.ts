import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/flow/engine.js';
import { prepare } from '../../src/flow/plan.js';
import { observe } from '../../src/measure/observe.js';
import { throughputByWeek } from '../../src/report/charts/simulate/throughput.js';
import { resultsTable } from '../../src/report/terminal/simulate.js';
import { compile } from '../../src/scenario/compile.js';
import { readScenario } from '../../src/scenario/read.js';
import type { Scenario } from '../../src/scenario/types/scenario.js';
import { daysInBucket, daysInOne, inUnit, rateText } from '../../src/study/planners-unit.js';
import { rateStudy } from '../../src/study/rate/rate.js';
import { withHighestRate } from '../../src/study/reliefs/changes.js';
import { plannersUnit } from '../../src/study/unit-of.js';
import { summarise } from './summarise.js';

/** Without chance: 8 h a day, 1 h a unit. Wednesday of the third week is a holiday. 2027-03-01 is a Monday. */
const bench = (rate: string, work = '60 min'): Scenario => {
  const { scenario, problems } = readScenario(
    `
scenario: One bench
programme: { start: 2027-03-01, zone: UTC, quantity: 120, rate: ${rate} }
calendars: { days: { hours: ["08:00-16:00"], holidays: [2027-03-17] } }
sites: { hall: { zone: UTC, calendar: days, stations: { bench: { buffer: unlimited } } } }
route: [{ step: work, at: bench, work: ${work} }]
`,
    'bench.yaml',
    () => '',
  );
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
};
const resultsOf = (scenario: Scenario) => {
  const model = compile(scenario);
  const observations = [1, 2, 3, 4, 5].map((r) => observe(simulate(prepare(model), 'unit', r), r));
  return summarise({ scenario, model, observations, file: 'bench.yaml', seed: 'unit', level: 0.95 });
};

describe('the unit of rates', () => {
  it('is that of the highest rate of the plan, a week with its working days', () => {
    expect(plannersUnit(bench('{ per day: 4 }'))).toEqual({ per: 'day', workingDays: 1 });
    expect(plannersUnit(bench('{ per week: 20 }'))).toEqual({ per: 'week', workingDays: 5 });
    expect(plannersUnit(bench('{ weeks: { 2027-W09: 8, 2027-W11: 20 } }')).per).toBe('week');
    expect(plannersUnit(bench('[{ per week: 5 }, { from: 2027-03-15, per day: 4 }]')).per).toBe('day');
  });

  it('gives back a rate as it was asked, without the last digits of a division', () => {
    const week = { per: 'week', workingDays: 7 } as const;
    for (const rate of [17, 16.6, 0.1, 23.35]) expect(inUnit(rate / 7, week)).toBe(rate);
    expect(rateText(1250 / 7, week)).toBe('1,250 a week');
  });

  it('counts a short week of those judged as one week, and a usual week in a whole run', () => {
    const week = { per: 'week', workingDays: 5 } as const;
    expect(daysInOne(week, { workingDays: 9, weeks: 2 })).toBe(4.5);
    expect(daysInOne(week, null)).toBe(5);
    expect(daysInOne({ per: 'day', workingDays: 1 }, { workingDays: 9, weeks: 2 })).toBe(1);
    expect(daysInBucket(week, { unit: 'week', workingDays: [5, 4] }, 1)).toBe(4);
    expect(daysInBucket(week, { unit: 'part', workingDays: [6.1, 6.1] }, 1)).toBe(5);
  });
});

describe('a programme given per week', () => {
  const results = resultsOf(bench('{ per week: 20 }'));

  it('is answered per week: 20 in each week, also in that of the holiday, which has 20 in four days', () => {
    expect(results.answer.sentence).toMatch(
      /^20 a week is held in 5 of 5 builds: 20 a week are shipped \(the same in all 5 replications\) while 20 are asked, from 2027-03-08 to /,
    );
    expect(results.answer).toMatchObject({ asked: 20, askedPerDay: 4, held: { mean: 20 } });
    // Per day it would be more than asked: 100 units of weeks 2 to 6 in 24 days.
    expect(results.answer.heldPerDay!.mean).toBeGreaterThan(4.1);
    expect(results.rateUnit).toEqual({ per: 'week', workingDays: 5 });
  });

  it('has its rows in the terminal and its picture in units a week', () => {
    expect(resultsTable(results)).toMatch(
      /^rate asked, units a week +20 +plan\nrate held, units a week +20 +always$/m,
    );
    const chart = throughputByWeek(results)!;
    expect(chart.finding).toBe('Ships 20 a week in every build, 20 asked');
    const shipped = chart.configuration.data.datasets.find(({ label }) => label === 'shipped')!;
    expect(shipped.data.slice(0, 4)).toEqual([20, 20, 20, 20]);
    expect(JSON.stringify(chart.configuration.options?.scales)).toContain('units a week');
  });

  it('keeps asking by the week where its rate is changed', () => {
    expect(withHighestRate(bench('{ per week: 20 }'), 5).programme.release).toMatchObject({
      phases: [{ from: '2027-03-01', perWeek: 25 }],
    });
  });
});

describe('the highest rate of a programme given per week', () => {
  const study = (more: object) =>
    rateStudy({
      scenario: bench('{ per week: 20 }', '96 min'),
      file: 'bench.yaml',
      from: 20,
      to: 30,
      step: 1,
      weeks: 12,
      sure: 0.6,
      replications: 4,
      seed: '1',
      workers: 1,
      ...more,
    });

  it('is looked for and told in units a week: 40 h of 96 min each are 25', async () => {
    const { answer, grid, arithmetic } = await study({});
    expect(answer.sentence).toMatch(/^25 a week is the highest rate that holds: .* at 26 a week /);
    expect(answer.sentence).toContain('Arithmetic allows 25 a week (bench)');
    expect(answer).toMatchObject({ highestPerDay: 5, abovePerDay: 5.2 });
    expect(grid).toEqual({ from: 4, to: 6, step: 0.2 });
    expect(arithmetic?.perDay).toBeCloseTo(5, 9);
  });

  it('may be asked per day all the same', async () => {
    const { answer } = await study({ unit: { per: 'day', workingDays: 1 }, from: 4, to: 6, step: 0.5 });
    expect(answer.sentence).toMatch(/^5 a day is the highest rate that holds: .* at 5.5 a day /);
  });
});
