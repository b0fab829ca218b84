import { describe, expect, it } from 'vitest';
import { orderBy, readyOn } from '../../src/scenario/changes/lead-time.js';
import type { ReachOptions } from '../../src/study/reach/options.js';
import type { ReachResults } from '../../src/study/reach/results.js';
import { SLOW } from './agree.js';
import { built, scenarioBuilt } from './built.js';

/**
 * A bench and a mill without chance, day and night: the bench makes 12 a day (2 h each), the mill 16 (1.5 h).
 * All numbers are invented.
 */
const yaml = (changes: string, programme = 'quantity: 600, rate: { per day: 15 }'): string => `
scenario: two machines
programme: { start: 2028-01-03, zone: UTC, ${programme} }
sites: { hall: { zone: UTC, stations: { bench: { buffer: 3 }, mill: { buffer: 3 } } } }
route:
  - { step: fit, at: bench, work: 2 h }
  - { step: cut, at: mill, work: 90 min }
costs:
  currency: EUR
  unit: { day: 10 }
  changes:
${changes}`;
const CHANGES = `
    a bench: { relief: place, of: bench, price: 900, day: 3, ready after: 2 months, at most: 1 }
    a jig: { changes: [{ route.fit.work: 100 min }], price: 200, ready after: 3 weeks }
    a mill: { relief: place, of: mill, price: 700, at most: 1 }
    a shelf: { relief: space, of: mill, price: 5, at most: 3 }
`;

async function reach(
  text: string,
  asked: Partial<ReachOptions> & Pick<ReachOptions, 'goal'>,
): Promise<ReachResults> {
  return built.reachStudy({
    ...{
      scenario: scenarioBuilt(text),
      data: built.scenarioData(text, 'made.yaml', () => ''),
      file: 'made.yaml',
    },
    ...{ seed: '1', workers: 1, replications: 5 },
    ...asked,
  });
}
const boughtBy = ({ steps }: ReachResults): string =>
  steps.flatMap(({ made }) => (made === null ? [] : [`${made.times} ${made.name}`])).join(', ');
const perDay = (rate: number) => ({ goal: { kind: 'rate' as const, perDay: rate } });

describe('what to buy for a rate, on machines without chance', SLOW, () => {
  it('is nothing where the build holds it as it is', async () => {
    const found = await reach(yaml(CHANGES), perDay(11));
    expect(found.outcome).toBe('holds already');
    expect(found.steps).toHaveLength(1);
    expect(found.answer.sentence).toBe('11 a day holds as it is: nothing has to be changed');
  });

  it('is the jig for 14.2 a day, 14.4 being what it allows, and the bench for 15, though it costs more', async () => {
    const jig = await reach(yaml(CHANGES), perDay(14.2)),
      bench = await reach(yaml(CHANGES), perDay(15));
    expect([jig.outcome, boughtBy(jig), jig.steps.at(-1)?.money]).toEqual(['reached', '1 a jig', 200]);
    expect([bench.outcome, boughtBy(bench), bench.steps.at(-1)?.money]).toEqual([
      'reached',
      '1 a bench',
      900,
    ]);
    // 12 and 16 a day, by arithmetic; what stops it first is the bench, at a tenth more than 15 the mill.
    expect(bench.steps.map(({ throughput }) => Math.round(10 * throughput.mean) / 10)).toEqual([12, 15]);
    expect(bench.steps.map(({ stopped }) => stopped.culprit?.thing.name)).toEqual(['bench', 'mill']);
    expect(bench.steps.map(({ stopped }) => stopped.askedPerDay)).toEqual([15, 16.5]);
    expect(bench.search.isProven).toBe(true);
    expect(bench.answer.sentence).toBe('“a bench” holds 15 a day for 900 EUR: every cheaper set falls short');
  });

  it('is bench and mill for 18 a day, in the order of what they bring, each with what it costs', async () => {
    const { steps, frontier, outcome } = await reach(yaml(CHANGES), perDay(18));
    expect(outcome).toBe('reached');
    expect(steps.map(({ made, money }) => [made?.name ?? null, money])).toEqual([
      [null, 0],
      ['a bench', 900],
      ['a mill', 1600],
    ]);
    expect(steps.map(({ day }) => day)).toEqual([0, 3, 3]);
    expect(steps.map(({ throughput }) => Math.round(throughput.mean))).toEqual([12, 16, 18]);
    // For 200 the jig, for 900 the bench, for 1,600 both machines; jig and mill together do no more than the jig.
    expect(frontier.map(({ money }) => money)).toEqual([0, 200, 900, 1600]);
    expect(frontier.map(({ throughput }) => Math.round(10 * throughput.mean) / 10)).toEqual([
      12, 14.4, 16, 18,
    ]);
  });

  it('says how far it goes where nothing reaches it, within what may be spent', async () => {
    const all = await reach(yaml(CHANGES), perDay(40)),
      poor = await reach(yaml(CHANGES), { ...perDay(18), budget: 1000 }),
      one = await reach(yaml(CHANGES), { ...perDay(18), atMost: 1 });
    expect([all.outcome, all.verdict]).toEqual(['not reached', 'falls short']);
    expect(all.steps.at(-1)?.throughput.mean).toBeCloseTo(28.8, 0);
    expect(all.constraint.culprit?.thing.name).toBe('bench');
    expect([poor.outcome, boughtBy(poor)]).toEqual(['not reached', '1 a bench']);
    expect([one.outcome, boughtBy(one)]).toEqual(['not reached', '1 a bench']);
    expect(all.answer.sentence).toContain('no set of changes that may be made reaches 40 a day');
  });

  it('tells what a change without a price would be worth', async () => {
    const unpriced = CHANGES.replace(
        '[{ route.fit.work: 100 min }], price: 200',
        '[{ route.fit.work: 80 min }]',
      ),
      found = await reach(yaml(unpriced), perDay(15));
    // With the jig the bench makes 18 a day: it saves the new bench.
    expect(boughtBy(found)).toBe('1 a bench');
    expect(found.unpriced).toMatchObject([{ names: ['a jig'], money: 0, worth: 900 }]);
    const only = await reach(yaml(unpriced.replace(/ {4}a bench.*\n/, '')), perDay(15));
    expect(only.outcome).toBe('not reached');
    expect(only.unpriced).toMatchObject([{ names: ['a jig'], money: 0, worth: null }]);
  });

  it('takes the fewest changes where nothing has a price', async () => {
    const found = await reach(
      yaml(CHANGES.replaceAll(/ price: \d+,/g, '').replace(', price: 200', '')),
      perDay(18),
    );
    expect(found.outcome).toBe('reached');
    expect(boughtBy(found)).toBe('1 a bench, 1 a mill');
    expect(found.steps.at(-1)?.money).toBe(null);
  });

  it('tells when each has to be ordered to be there from the first day on', async () => {
    const { steps } = await reach(yaml(CHANGES), perDay(18));
    expect(steps.map(({ made }) => made?.orderBy ?? null)).toEqual([null, '2027-11-03', null]);
    expect(orderBy('2028-03-31', { count: 1, unit: 'month' })).toBe('2028-02-29');
    // The last of the days from which a month leads to the end of February.
    expect(orderBy('2028-02-29', { count: 1, unit: 'month' })).toBe('2028-01-31');
    expect(readyOn('2028-01-31', { count: 1, unit: 'month' })).toBe('2028-02-29');
    expect(orderBy('2028-01-03', { count: 6, unit: 'week' })).toBe('2027-11-22');
  });
});

describe('what to buy for a day', SLOW, () => {
  it('is what has the last unit out by then, by hand', async () => {
    // 600 units: 50 days by the bench as it is, 41.7 with the jig, 40 released at 15 a day with the bench.
    const by = (date: string) => ({ goal: { kind: 'date' as const, date, sure: 0.8 } });
    const [late, jig, bench, never] = [
      await reach(yaml(CHANGES), by('2028-02-23')),
      await reach(yaml(CHANGES), by('2028-02-14')),
      await reach(yaml(CHANGES), by('2028-02-12')),
      await reach(yaml(CHANGES), by('2028-02-01')),
    ];
    expect([late.outcome, boughtBy(late)]).toEqual(['holds already', '']);
    expect([jig.outcome, boughtBy(jig)]).toEqual(['reached', '1 a jig']);
    expect([bench.outcome, boughtBy(bench)]).toEqual(['reached', '1 a bench']);
    expect(never.outcome).toBe('not reached');
    expect(bench.steps.map(({ byDate }) => byDate?.share)).toEqual([0, 1]);
    // No change does harm; and where none will do, the way leads to the earliest day: 40 days at 15 a day.
    expect([late, jig, bench, never].map(({ search }) => search.hurts)).toEqual([[], [], [], []]);
    expect(boughtBy(never)).toBe('1 a bench');
  });
});

describe('what to buy if it is ordered on a day', SLOW, () => {
  const ordered = '2028-01-03';

  it('has each change from its day on: the last unit is out later than with all of it from the start', async () => {
    // 12 a day for three weeks are 252 units, 348 more at 14.4 a day take 24.2 days: out on 17 February.
    const by = (date: string) => ({ goal: { kind: 'date' as const, date, sure: 0.8 }, ordered }),
      enough = await reach(yaml(CHANGES), by('2028-02-17')),
      never = await reach(yaml(CHANGES), by('2028-02-16'));
    expect([enough.outcome, boughtBy(enough)]).toEqual(['reached', '1 a jig']);
    expect(enough.steps[1].made).toMatchObject({ from: '2028-01-24', orderBy: '2027-12-13' });
    expect(enough.steps.map(({ byDate }) => byDate?.share)).toEqual([0, 1]);
    // The bench comes on 3 March, when it is too late.
    expect(never.outcome).toBe('not reached');
  });

  it('holds the rate in the weeks from a day on, and not in those before', async () => {
    const later = await reach(yaml(CHANGES), { ...perDay(14.2), ordered, by: '2028-01-31' }),
      all = await reach(yaml(CHANGES), { ...perDay(14.2), ordered });
    expect([later.outcome, boughtBy(later), later.counted?.from]).toEqual([
      'reached',
      '1 a jig',
      '2028-01-31',
    ]);
    expect(all.outcome).toBe('not reached');
  });

  it('leaves out what cannot come midway, and says why', async () => {
    const wash = `
    a wash: { changes: [{ sites.hall.stations.wash: {} }, { route.fit.work: 1 h }], price: 1, ready after: 3 weeks }`,
      found = await reach(yaml(CHANGES + wash), { ...perDay(14.2), ordered, by: '2028-01-31' });
    expect(boughtBy(found)).toBe('1 a jig');
    expect(found.skipped).toMatchObject([{ what: 'a wash' }]);
    expect(found.skipped[0].why).toContain('expected changes that can come midway');
  });
});

describe('what a study of sets refuses', () => {
  it('is a scenario that names no changes, and a rate without whole weeks', async () => {
    await expect(reach(yaml(CHANGES).replace(/ {2}changes:[^]*/, ''), perDay(15))).rejects.toThrow(
      'costs.changes: expected changes that could be made, got none',
    );
    await expect(reach(yaml(CHANGES, 'quantity: 20, rate: { per day: 15 }'), perDay(15))).rejects.toThrow(
      'programme: expected whole weeks at the rate asked',
    );
  });
});
