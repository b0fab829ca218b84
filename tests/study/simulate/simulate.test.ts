import { describe, expect, it } from 'vitest';
import { stableJson } from '../../../src/report/json.js';
import { resultsTable } from '../../../src/report/terminal/simulate.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { type SimulateOptions, simulateStudy } from '../../../src/study/simulate/simulate.js';
import { minutes, programme, scenario, site, station, step } from '../../scenario/compile-scenario.js';

/** Every number is invented. */
const TWO_PLANTS = `
scenario: Two plants, four a day
programme:
  start: 2027-03-01
  quantity: 100
  rate: [{ per day: 4 }]
  options: { stripe: 35 % }
calendars: { days: { hours: ["06:00-14:30"], breaks: ["12:00-12:30"] } }
sites:
  coachworks:
    zone: Europe/Oslo
    calendar: days
    crews: { painters: 2 }
    stations: { booth: { buffer: 2 }, bay: { buffer: unlimited } }
  final plant:
    calendar: days
    stations: { line: { buffer: unlimited } }
lanes:
  ferry: { from: coachworks, to: final plant, trucks: 1, capacity: 2, drive: 2 h, bank: 4, arrival bank: 2 }
defects: { runs: {} }
route:
  - { step: prime, at: booth, crew: { painters: 2 }, work: { mean: 80 min, cv: 0.3 }, creates: { runs: 10 % } }
  - { step: inspect, at: bay, work: 20 min, finds: { runs: { chance: 90 %, repair: 30 min } } }
  - { step: bands, at: bay, when: stripe, work: 40 min }
  - lane: ferry
  - { step: fit, at: line, work: { low: 60 min, likely: 70 min, high: 100 min } }
`;

function read(text: string): Scenario {
  const { scenario, problems } = readScenario(text, 'two-plants.yaml', () => {
    throw new Error('no file is read');
  });
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
}

const study = (more: Partial<SimulateOptions> = {}): SimulateOptions => ({
  scenario: read(TWO_PLANTS),
  file: 'two-plants.yaml',
  replications: 5,
  seed: 'spring',
  workers: 1,
  ...more,
});

/** Threads of this process that keep it running. */
const threads = (): number =>
  process.getActiveResourcesInfo().filter((resource) => resource === 'Worker' || resource === 'MessagePort')
    .length;

// Threads start slowly on a machine that is busy.
const PATIENT = { timeout: 30_000 };

describe('a study from a scenario as written', PATIENT, () => {
  it('has results that can be written and printed, with shares and counts that agree', async () => {
    const results = await simulateStudy(study({ file: 'scenarios/two-plants.yaml' }));
    expect(results.scenario.file).toBe('two-plants.yaml');
    expect(results.runs.map((run) => [run.replication, run.shipped])).toEqual(
      [1, 2, 3, 4, 5].map((replication) => [replication, 100]),
    );
    expect(results.series.shipped.reduce((sum, week) => sum + week.mean, 0)).toBeCloseTo(100, 9);
    expect(results.leadTime.counts.reduce((sum, units) => sum + units, 0)).toBe(500);
    for (const each of results.stations)
      expect(Object.values(each.share).reduce((sum, state) => sum + state.mean, 0)).toBeCloseTo(1, 9);
    for (const each of results.buffers)
      if (each.levels.length > 0)
        expect(
          each.levels.reduce((sum, part) => sum + part, 0),
          each.name,
        ).toBeCloseTo(1, 9);
    // WIP of the places is WIP in all.
    expect(results.wip.places.reduce((sum, place) => sum + place.mean.mean, 0)).toBeCloseTo(
      results.wip.total.mean,
      9,
    );
    expect(results.answer.sentence).toMatch(/^(Four a day is|Whether four a day is)/);
    expect(() => stableJson(results)).not.toThrow();
    expect(resultsTable(results)).toContain(results.runs[0].bottleneck!);
  });

  it('gives the same bytes with 1, 2 and 3 workers', async () => {
    const [one, two, three] = [
      await simulateStudy(study()),
      await simulateStudy(study({ workers: 2 })),
      await simulateStudy(study({ workers: 3 })),
    ].map((results) => JSON.stringify(results));
    expect(two).toBe(one);
    expect(three).toBe(one);
    expect(JSON.stringify(await simulateStudy(study({ seed: 'autumn' })))).not.toBe(one);
  });

  it.each([1, 2])('tells with %i workers how far it is', async (workers) => {
    const told: [number, number][] = [];
    await simulateStudy(study({ workers, onReplication: (done, of) => told.push([done, of]) }));
    // Told when they are planned, and as each ends.
    const from = (done: number, of: number) => Array.from({ length: 6 }, (_, i) => [done + i, of]);
    // Most builds keep up: whether they can ship as much when more is asked is looked at, and the weeks judged,
    // in the same five.
    expect(told).toEqual([...from(0, 5), ...from(0, 5), ...from(5, 10)]);
  });
});

describe('a study that cannot go on', PATIENT, () => {
  /** No step of the route is for white units, which the engine finds out. */
  const noStep = scenario({
    sites: { yard: site({ booth: station() }) },
    route: [step('prime', 'booth', { work: minutes(5), when: { colour: ['red'] } })],
    programme: programme({ options: { colour: { red: 0.001, white: 0.999 } } }),
  });

  it.each([1, 2])(
    'rejects with the message of the engine, with %i workers, and leaves no thread',
    async (workers) => {
      const before = threads();
      await expect(simulateStudy(study({ scenario: noStep, workers }))).rejects.toThrow(
        'route: expected a step for every unit',
      );
      // A thread that has ended is taken off the list a moment later.
      await expect.poll(threads, { timeout: 5000 }).toBe(before);
    },
  );

  it.each([1, 2])(
    'stops with %i workers when it is aborted, long before its end, and leaves no thread',
    async (workers) => {
      const before = threads(),
        control = new AbortController(),
        reason = new Error('enough');
      let done = 0;
      await expect(
        simulateStudy(
          study({
            replications: 100_000,
            workers,
            signal: control.signal,
            onReplication: (n) => {
              done = n;
              if (n === 3) control.abort(reason);
            },
          }),
        ),
      ).rejects.toBe(reason);
      expect(done).toBeLessThan(100);
      // A thread that has ended is taken off the list a moment later.
      await expect.poll(threads, { timeout: 5000 }).toBe(before);
    },
  );

  it('does not begin when it is aborted before', async () => {
    await expect(
      simulateStudy(
        study({
          workers: 2,
          signal: AbortSignal.abort(new Error('no')),
          onReplication: () => {
            throw new Error('ran');
          },
        }),
      ),
    ).rejects.toThrow('no');
  });

  it.each([
    [{ replications: 0 }, 'replications: expected a whole number of at least 1, got 0'],
    [{ workers: 1.5 }, 'workers: expected a whole number'],
    [{ level: 1 }, 'level: expected a confidence'],
  ])('refuses %j', async (more, message) => {
    await expect(simulateStudy(study(more))).rejects.toThrow(message);
  });
});
