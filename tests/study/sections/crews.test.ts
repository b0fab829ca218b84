import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import type { Results } from '../../../src/study/simulate/results.js';
import { modelOf, playModel } from '../../flow/run-yaml.js';
import { summarise } from '../summarise.js';

/** Two replications of a scenario without chance, so that every number is by hand. */
function resultsOf(yaml: string): Results {
  const model = modelOf(yaml),
    { scenario } = readScenario(yaml, 'crews.yaml', () => '');
  return summarise({
    scenario: scenario!,
    model,
    observations: [1, 2].map((replication) => playModel(model, 'crews', replication).seen),
    file: 'crews.yaml',
    seed: 'crews',
    level: 0.95,
  });
}

describe('crews in results', () => {
  // One unit a day of 10 h by one; usual 8 h, of two fitters and one painter who has nothing to do; overtime
  // 2 h in the first week.
  const found = resultsOf(`
scenario: crews
programme: { start: 2027-03-01, rate: { per day: 1 }, quantity: 9 }
calendars:
  days:
    hours: ["07:00-15:00"]
    overtime: [{ to: 2027-03-07, hours: ["15:00-17:00"] }, { from: 2027-03-08, hours: ["15:00-17:00"], when: { units behind: 1, lead time: 10 h }, decided: daily, note: to catch up }]
    shutdowns: [{ from: 2027-12-27, to: 2027-12-31 }]
sites: { hall: { calendar: days, crews: { fitters: { headcount: [2] }, painters: 1 }, stations: { bench: { buffer: unlimited } } } }
route: [{ step: fit, at: bench, crew: { fitters: 1 }, work: 10 h }]
`);
  const [fitters, painters] = found.crews;

  it('have people engaged and there by week, over the hours of the crew', () => {
    // Week 1: five units of 10 h in 5 x 10 h. Week 2: unit 6 on Monday 8 h (none is behind at 07:00); from
    // Tuesday on one is: 10 h a day; unit 9 ends on Friday at 09:00.
    expect(fitters.series.engaged.map(({ mean }) => mean)).toEqual([1, 1]);
    expect(fitters.series.present.map(({ mean }) => mean)).toEqual([2, 2]);
    expect(fitters.series.overtimeHours.map(({ mean }) => mean)).toEqual([2 * 5 * 2, 2 * 3 * 2]);
    expect(painters.series.engaged.map(({ mean }) => mean)).toEqual([0, 0]);
  });

  it('have their hours in usual time and in overtime', () => {
    // Week 1: 40 h. Week 2: 4 x 8 h and 2 h.
    expect([fitters.usualHours.mean, fitters.overtimeHours.mean]).toEqual([2 * (40 + 34), 2 * (10 + 6)]);
    expect([painters.usualHours.mean, painters.overtimeHours.mean]).toEqual([74, 16]);
    expect(fitters.busy.mean).toBeCloseTo(90 / 180, 12);
    expect([fitters.headcount, fitters.headcounts, painters.headcounts]).toEqual([2, [2], null]);
  });

  it('stand beside the overtime rules and the shutdowns', () => {
    // Monday to Friday of the second week: looked at five times, worked on Tuesday to Friday; of Friday's
    // hours the run has none.
    expect(found.overtime).toMatchObject([
      {
        name: 'days in UTC, 1 unit behind (to catch up)',
        looked: { mean: 5 },
        worked: { mean: 0.8 },
        hours: [{ mean: 0 }, { mean: 6 }],
      },
    ]);
    expect(found.shutdowns).toEqual([{ calendar: 'days', from: '2027-12-27', to: '2027-12-31', note: null }]);
  });
});
