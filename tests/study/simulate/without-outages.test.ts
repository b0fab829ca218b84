import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stableJson } from '../../../src/report/json.js';
import { resultsTable } from '../../../src/report/terminal/simulate.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { runDesign } from '../../../src/study/run/fixed-design.js';
import { Journal } from '../../../src/study/run/journal.js';
import { mergeShards } from '../../../src/study/run/merge.js';
import { aboutShard, readShard, type ShardFolder, writeShard } from '../../../src/study/run/shards.js';
import { type SimulateValue, simulateDesign } from '../../../src/study/simulate/design.js';
import { simulateStudy } from '../../../src/study/simulate/simulate.js';
import { withConstraint } from '../../../src/study/simulate/with-constraint.js';
import { outageTrials, withoutVariant } from '../../../src/study/simulate/without-outages.js';
import { modelOf } from '../../flow/run-yaml.js';

function read(text: string): Scenario {
  const { scenario, problems } = readScenario(text, 'line.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
}

/**
 * One unit a day is released at 06:00 into one station that works 600 minutes a day, Monday to Friday, from
 * Monday 2027-03-01 on.
 */
const line = (work: string, programme: string, outages: string): string => `
scenario: line
programme: { start: 2027-03-01, zone: UTC, rate: { per day: 1 }, ${programme} }
calendars: { days: { hours: ["06:00-16:00"] } }
sites: { hall: { zone: UTC, calendar: days, stations: { bench: { buffer: unlimited } } } }
outages: [${outages}]
route: [{ step: fit, at: bench, work: ${work} }]
`;
/** Tuesday and Wednesday of the second week. */
const TWO_DAYS = '{ stations: bench, from: 2027-03-09, to: 2027-03-10, note: new lamps }';

/** 17 replications: an interval of P80 needs so many. */
const simulate = (text: string, replications = 17) =>
  simulateStudy({ scenario: read(text), file: 'line.yaml', replications, seed: '1', workers: 1 });
const exactly = (mean: number) => ({ mean, low: mean, high: mean });

describe('an outage of two days at one a day', { timeout: 30_000 }, () => {
  // Work of 500 of the 600 minutes: 1.2 a day, 20 % to spare. Two units are missing at the end of the
  // outage. k working days later floor(1.2 k) are out against k + 2 without it: level first at k = 10, on
  // Wednesday 2027-03-24, 14 days after the 10th.
  it('loses two units and has caught up ten working days later where there are 20 % to spare', async () => {
    const results = await simulate(line('500 min', 'until: 2027-05-03', TWO_DAYS)),
      [recovery] = results.recoveries;
    expect(results.recoveries).toHaveLength(1);
    expect(recovery).toMatchObject({
      names: ['new lamps'],
      from: '2027-03-09T00:00:00',
      to: '2027-03-11T00:00:00',
      replications: 17,
      changed: 17,
      behindMost: { date: '2027-03-10', units: exactly(2) },
      behindAtEnd: exactly(0),
      daysLater: null,
      caughtUp: { count: 17, n: 17 },
    });
    const days = { days: 14, low: 14, high: 14 },
      dates = { date: '2027-03-24', lowDate: '2027-03-24', highDate: '2027-03-24' };
    expect(recovery.caughtUpBy).toEqual([0.5, 0.8].map((p) => ({ p, ...days, ...dates, why: null })));
    expect(recovery.sentence).toBe(
      'The outage "new lamps" (2027-03-09 to 2027-03-10) puts the build 2 units behind the same build without it when it is worst, on 2027-03-10 (the same in all 17 replications); the weeks judged lose nothing by it. Half of the builds have caught up by 2027-03-24, eight in ten by 2027-03-24.',
    );
    // By day: one unit a working day, five in any seven days; with the outage none on the 9th and 10th, and
    // the second unit of a day at k = 5, Wednesday 2027-03-17.
    const { byDay } = recovery,
      at = (date: string): number => byDay!.dates.indexOf(date);
    expect(byDay!.shippedWithout[at('2027-03-15')]).toBe(5);
    expect(byDay!.shippedWith[at('2027-03-15')]).toBe(3);
    expect(
      ['2027-03-08', '2027-03-09', '2027-03-16', '2027-03-17', '2027-03-23', '2027-03-24'].map(
        (date) => byDay!.behind[at(date)],
      ),
    ).toEqual([0, 1, 2, 1, 1, 0]);
  });

  it('is never caught up where there is nothing to spare', async () => {
    const results = await simulate(line('600 min', 'until: 2027-05-03', TWO_DAYS)),
      [recovery] = results.recoveries;
    expect(recovery).toMatchObject({
      behindMost: { date: '2027-03-10', units: exactly(2) },
      behindJudged: { units: exactly(2) },
      behindAtEnd: exactly(2),
      caughtUp: { count: 0, n: 17 },
    });
    // The weeks judged, whole ones from 2027-03-08 to 2027-05-02 after a lead time of a day or three: 40
    // working days that lose two units.
    expect(results.answer.window).toEqual({ from: '2027-03-08', to: '2027-05-02' });
    expect(recovery.behindJudged!.perDay.mean).toBeCloseTo(2 / 40, 12);
    expect(recovery.caughtUpBy[0]).toEqual({
      p: 0.5,
      days: null,
      low: null,
      high: null,
      date: null,
      lowDate: null,
      highDate: null,
      why: '17 of 17 replications had not caught up when the run ended, and P50 is among those',
    });
    expect(recovery.sentence).toContain('None of 17 builds has caught up when the run ends.');
  });

  it('delays the last unit by the two working days where there is nothing to spare, and by what is left of them', async () => {
    // 12 units, one a working day: the last on Tuesday 2027-03-16; two working days later on the 18th.
    const [none] = (await simulate(line('600 min', 'quantity: 12', TWO_DAYS))).recoveries;
    expect(none.daysLater!.mean).toBeCloseTo(2, 9);
    expect(none.caughtUpBy[0]).toMatchObject({ date: '2027-03-18', days: 8 });
    // With 500 minutes units 7 to 12 follow each other from the 11th on, 6 * 500 = 5 * 600 minutes: the last
    // at 16:00 of the fifth day, Wednesday 2027-03-17. Without the outage Tuesday 2027-03-16 at 14:20.
    const [some] = (await simulate(line('500 min', 'quantity: 12', TWO_DAYS))).recoveries;
    expect(some.daysLater!.mean).toBeCloseTo(1 + 100 / 1440, 9);
  });

  it('costs nothing at a station with units enough behind it, nor where no unit would have been', async () => {
    // Three units wait ahead of the second station, which needs the whole day for each; the first has 100
    // minutes a day to spare.
    const banked = (outage: string): string => `
scenario: banked
programme:
  start: 2027-03-01
  zone: UTC
  rate: { per day: 1 }
  until: 2027-05-03
  opening: [{ at: finish, units: 3 }]
calendars: { days: { hours: ["06:00-16:00"] } }
sites: { hall: { zone: UTC, calendar: days, stations: { bench: { buffer: unlimited }, stand: { buffer: unlimited } } } }
outages: [${outage}]
route: [{ step: fit, at: bench, work: 500 min }, { step: finish, at: stand, work: 600 min }]
`;
    const behind = await simulate(banked(TWO_DAYS)),
      [recovery] = behind.recoveries;
    expect(recovery).toMatchObject({
      changed: 0,
      behindMost: { units: exactly(0) },
      behindAtEnd: exactly(0),
      caughtUp: { count: 17 },
      byDay: null,
    });
    expect(recovery.caughtUpBy[1]).toMatchObject({ days: 0, high: 0 });
    expect(recovery.sentence).toBe(
      'The outage "new lamps" (2027-03-09 to 2027-03-10) costs nothing: without it every unit is shipped on the same day, in each of 17 replications set beside it.',
    );
    // Down to Friday the 12th the second station works off its three and stands from Friday on. On Monday the
    // first has a unit for it at 500 minutes, out on Tuesday: Friday's and Monday's are lost.
    const [longer] = (await simulate(banked(TWO_DAYS.replace('03-10', '03-12')))).recoveries;
    expect(longer.behindMost).toMatchObject({ date: '2027-03-15', units: exactly(2) });
    const [weekend] = (
      await simulate(line('500 min', 'quantity: 12', '{ stations: bench, from: 2027-03-06, to: 2027-03-07 }'))
    ).recoveries;
    expect(weekend).toMatchObject({ changed: 0, daysLater: exactly(0) });
  });

  it('is told with one replication too, without an interval', async () => {
    const results = await simulate(line('500 min', 'until: 2027-05-03', TWO_DAYS), 1),
      [recovery] = results.recoveries;
    expect(recovery.behindMost.units).toMatchObject({ mean: 2, low: null, n: 1 });
    expect(recovery.sentence).toContain('(no interval, 1 replication)');
    expect(recovery.sentence).toContain('1 of 1 build caught up before the run ended.');
    expect(resultsTable(results)).toContain('The outage "new lamps"');
  });

  it('is told of a steady-state run', async () => {
    const [recovery] = (
      await simulate(
        line('500 min', 'until: 2027-05-03', TWO_DAYS)
          .replace('rate: { per day: 1 }', 'arrivals: 24 h')
          .replace('until: 2027-05-03', 'length: 1500 h')
          .replace(
            'calendars: { days: { hours: ["06:00-16:00"] } }',
            'calendars: { days: { hours: ["06:00-16:00"], on: every day } }',
          ),
        2,
      )
    ).recoveries;
    expect(recovery.behindMost).toMatchObject({ date: '2027-03-10', units: { mean: 2 } });
  });
});

describe('several outages', () => {
  const days = [1, 3, 1, 2, 1, 1, 2];
  // From the first of March on, one a week.
  const many = line(
    '500 min',
    'until: 2027-06-07',
    days
      .map((length, i) => {
        const on = (day: number): string => new Date(Date.UTC(2027, 2, day)).toISOString().slice(0, 10);
        return `{ stations: bench, from: ${on(1 + 7 * i)}, to: ${on(7 * i + length)}, note: n${i} }`;
      })
      .join(', '),
  );

  it('are left out one by one, the five longest first, and the others together', () => {
    expect(outageTrials(modelOf(many))).toEqual([[1], [3], [6], [0], [2], [4, 5]]);
    const variant = withoutVariant(modelOf(many), [4, 5]);
    expect(variant.key).toBe('without outage 4, 5');
    expect(variant.model.outages).toMatchObject({
      count: 5,
      names: ['n0', 'n1', 'n2', 'n3', 'n6'],
      stationStart: Int32Array.of(0, 1, 2, 3, 4, 5),
    });
  });

  it('that begin after the end of the run are not tried', () => {
    expect(
      outageTrials(
        modelOf(
          line(
            '500 min',
            'until: 2027-03-08',
            `${TWO_DAYS}, ${TWO_DAYS.replaceAll('2027-03-09', '2027-03-03')}`,
          ),
        ),
      ),
    ).toEqual([[1]]);
  });

  it('have a row each and one for the others, and only the one that costs most is told by day', async () => {
    const { recoveries, outages } = await simulate(many, 2);
    expect(outages).toHaveLength(7);
    expect(recoveries.map(({ names }) => names)).toEqual([
      ['n1'],
      ['n3'],
      ['n6'],
      ['n0'],
      ['n2'],
      ['n4', 'n5'],
    ]);
    expect(recoveries.filter(({ byDay }) => byDay !== null)).toHaveLength(1);
    const [longest] = recoveries;
    expect(longest.byDay).not.toBeNull();
    expect(recoveries.at(-1)!.sentence).toMatch(
      /^The other 2 outages together \(2027-03-29 to 2027-04-05\) put /,
    );
  });
});

const CHANCE = `
scenario: chance
programme: { start: 2027-03-01, quantity: 60, rate: { per day: 2 }, zone: UTC }
calendars: { days: { hours: ["06:00-16:00"] } }
sites: { hall: { zone: UTC, calendar: days, stations: { bench: { buffer: 2 }, stand: { buffer: 3, places: 2 } } } }
defects: { runs: {} }
outages:
  - { stations: bench, from: 2027-03-09, to: 2027-03-10 }
  - { stations: stand, from: 2027-03-23 06:00, to: 2027-03-23 16:00 }
route:
  - { step: fit, at: bench, work: { mean: 250 min, cv: 0.4 }, creates: { runs: 30 % } }
  - { step: look, at: stand, work: { mean: 300 min, cv: 0.4 }, finds: { runs: { chance: 90 %, back to: fit } } }
`;

describe('the trials of outages', { timeout: 60_000 }, () => {
  const asked = { scenario: read(CHANCE), file: 'chance.yaml', replications: 25, seed: 'a', level: 0.95 };

  it('have at most twenty replications, and are the same up to the outage', async () => {
    const design = simulateDesign(asked),
      shipped: Record<number, { from: number; days: Int32Array }[]> = {};
    await runDesign(design, { workers: 1 }, (value, index) => {
      (shipped[index] ??= []).push({ from: index, days: value.shippedOn });
    });
    expect([0, 1, 2].map((index) => shipped[index].length)).toEqual([25, 20, 20]);
    // Days 8 and 22 since the start are the first of the outages.
    for (const [index, first] of [
      [1, 8],
      [2, 22],
    ])
      for (const [r, { days }] of shipped[index].entries())
        expect(days.subarray(0, first)).toEqual(shipped[0][r].days.subarray(0, first));
  });

  it('give the same bytes on one thread, on two, and merged from shards', async () => {
    const study = (workers: number) => simulateStudy({ ...asked, workers }),
      one = stableJson(await study(1));
    expect(stableJson(await study(2))).toBe(one);
    const folder = mkdtempSync(join(tmpdir(), 'without-outages-')),
      design = simulateDesign(asked);
    const shards: ShardFolder[] = [];
    for (const index of [3, 1, 2]) {
      const shard = { index, of: 3 },
        path = join(folder, `shard-${index}`),
        journal = new Journal<SimulateValue>(join(folder, `${index}.journal`), design.identity);
      await runDesign(design, { workers: 1, journal }, () => undefined, shard);
      writeShard(path, aboutShard(design.identity, asked, shard), design, (key) => journal.get(key));
      // Nine, eight and eight of 25; seven, seven and six of each trial.
      expect(journal.size).toBe([23, 22, 20][index - 1]);
      journal.close();
      shards.push(readShard(path));
    }
    const merged = await withConstraint(mergeShards(simulateDesign(asked), shards), { ...asked, workers: 1 });
    expect(stableJson(merged)).toBe(one);
  });

  it('go with a precision: the pairs are those of a run of as many replications', async () => {
    const precise = await simulateStudy({
      ...asked,
      replications: 10,
      workers: 2,
      precision: { asked: 0.01, of: ['lead-time'], most: 25 },
    });
    expect(precise.replications).toBe(25);
    expect(precise.recoveries).toEqual((await simulateStudy({ ...asked, workers: 1 })).recoveries);
    expect(precise.recoveries[0].replications).toBe(20);
  });
});
