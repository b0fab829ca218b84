import { describe, expect, it } from 'vitest';
import { lane, programme, type scenario } from '../../scenario/compile-scenario.js';
import { resultsOf, shipping, twoPlants } from '../made-observation.js';

const allShipped = shipping([8, 14, 20, 20, 20, 8]);
const withProgramme = (more: Parameters<typeof programme>[0]): ReturnType<typeof scenario> => ({
  ...twoPlants,
  programme: programme(more),
});

const ferryOf = (capacity: number): ReturnType<typeof scenario> => ({
  ...twoPlants,
  lanes: { ferry: lane('coachworks', 'final plant', { trucks: 1, capacity, bank: 3, arrivalBank: 1 }) },
});
/** Of five that all keep up, or all miss, Wilson's interval is 57 to 100 % or 0 to 43 %. */
const five = <Of>(one: Of): Of[] => [one, one, one, one, one];
/** Nothing comes in loads: what is shipped in the window is counted. */
const oneByOne = ferryOf(1);

describe('the window over which a rate is judged', () => {
  it('goes from the first whole week that begins a mean lead time after the rate is asked to the last whole week of it', () => {
    // Asked from Monday 8 March 06:00, lead time 3 days: first week from 15 March. 20 working days at 4 end
    // on 2 April.
    expect(resultsOf([allShipped]).answer.window).toEqual({ from: '2027-03-15', to: '2027-04-04' });
  });

  it('leaves out a week in which the last of the quantity is less than the rate', () => {
    const shorter = withProgramme({ quantity: 89, release: twoPlants.programme.release });
    expect(resultsOf([allShipped], shorter).answer.window).toEqual({ from: '2027-03-15', to: '2027-03-28' });
  });

  it('leaves out the weeks in which the rate changes', () => {
    const steps = withProgramme({
      quantity: 200,
      release: {
        kind: 'rate',
        phases: [
          { from: '2027-03-01', perDay: 2 },
          { from: '2027-03-10', perDay: 4 },
          { from: '2027-04-07', perDay: 3 },
        ],
      },
    });
    expect(resultsOf([allShipped], steps).answer.window).toEqual({ from: '2027-03-15', to: '2027-04-04' });
  });

  it('spans a week without a working day', () => {
    const closed = {
      ...withProgramme({ quantity: 90, release: twoPlants.programme.release }),
      calendars: {
        days: { ...twoPlants.calendars['days'], holidays: [{ from: '2027-03-22', to: '2027-03-28' }] },
      },
    };
    const { answer } = resultsOf([shipping([8, 14, 20, 0, 20, 20, 8])], closed);
    expect(answer.window).toEqual({ from: '2027-03-15', to: '2027-04-11' });
    expect(answer.heldPerDay!.mean).toBeCloseTo(4, 12);
    // It is said, with what the other weeks ship: 60 units in 15 working days.
    expect(answer.unusual).toMatchObject({ judged: 4, weeks: [{ label: '2027-W12', workingDays: 0 }] });
    expect(answer.sentence).toMatch(
      /; 1 of the 4 weeks judged is short: 2027-W12 \(holiday 2027-03-22 to 2027-03-28\); the other 3 ship 4 a working day \(no interval, 1 replication\)\.$/,
    );
  });

  it('is not there for a programme shorter than the lead time, and the answer says so', () => {
    const late = resultsOf([shipping([0, 0, 0, 0, 20, 70], { leadMean: 30 * 1440 })]);
    expect(late.answer).toMatchObject({
      verdict: 'not settled',
      window: null,
      heldPerDay: null,
      askedPerDay: 4,
    });
    expect(late.answer.sentence).toBe(
      'Whether four a day is held is not settled: it is asked for too short a time, no whole week begins one mean lead time (30 days) after it is first asked and ends before it is last asked.',
    );
    expect(late.runs[0].heldPerDay).toBeNull();
  });
});

describe('the verdict', () => {
  // 60 units are asked in the 15 working days of the window.
  it('holds when all that is asked is shipped', () => {
    const { answer, findings } = resultsOf(five(allShipped), oneByOne);
    expect(answer).toMatchObject({
      verdict: 'holds',
      askedPerDay: 4,
      keptUp: { count: 5, n: 5 },
      // All are the same, so there is no spread to make an interval of.
      heldPerDay: { mean: 4, low: null, high: null, n: 5 },
    });
    expect(answer.sentence).toBe(
      'Four a day is held in 5 of 5 builds: 4 a working day are shipped (the same in all 5 replications) while 4 are asked, from 2027-03-15 to 2027-04-04.',
    );
    expect(findings).toEqual([]);
  });

  it('holds with 59 of 60 (1.7 % missing) and falls short with 58 (3.3 %)', () => {
    expect(resultsOf(five(shipping([8, 14, 20, 20, 19, 9])), oneByOne).answer.verdict).toBe('holds');
    const { answer, findings } = resultsOf(
      five(shipping([8, 14, 20, 19, 19, 10], { utilisation: Float64Array.of(0.9, 0.5, 0, 0, 0, 0.2, 0.3) })),
      oneByOne,
    );
    expect(answer.verdict).toBe('falls short');
    // 58 / 15 = 3.8667; what stops it is named by trial alone, not here.
    expect(answer.sentence).toBe(
      'Four a day is not held: none of 5 builds keeps up; 3.87 a working day are shipped (the same in all 5 replications) while 4 are asked.',
    );
    expect(findings).toEqual([
      {
        kind: 'rate not held',
        text: 'four a day is not held: none of 5 builds keeps up; 3.87 a working day are shipped (the same in all 5 replications) while 4 are asked',
        replications: 5,
      },
    ]);
  });

  it('is not settled where so few builds leave open whether most keep up', () => {
    // One keeps up and one does not: Wilson's interval of a half of two is 9 to 91 %.
    const { answer, runs } = resultsOf([allShipped, shipping([8, 14, 18, 18, 18, 14])], oneByOne);
    expect(answer.verdict).toBe('not settled');
    expect(answer.heldPerDay!.mean).toBeCloseTo(3.8, 12);
    expect(runs.map((run) => run.heldPerDay)).toEqual([4, 3.6]);
    expect(answer.sentence).toContain(
      '; 1 of 2 builds keeps up (95 % CI 9 to 91 %), too few builds to tell, so more replications are needed',
    );
  });

  it('is not settled by a single replication', () => {
    expect(resultsOf([allShipped]).answer).toMatchObject({
      verdict: 'not settled',
      heldPerDay: { low: null, high: null },
    });
    expect(resultsOf([allShipped]).answer.sentence).toContain('(no interval, 1 replication)');
  });

  it('counts a build that stands still as one that does not keep up', () => {
    const member = (number: number, where: string, name: string, by: number) => ({
      ...{ number, route: 'route', in: 'place' as const, where, keeps: [] },
      lacks: [{ kind: 'room' as const, name, by: [by] }],
    });
    const standstill = {
      ...{ ring: [member(5, 'bay', 'booth', 1), member(7, 'booth', 'bay', 0)], behind: 2 },
      held: [],
    };
    const stands = shipping([8, 14, 20, 20, 20], { outcome: 'gridlock', standstill }),
      told = (stood: number, of: number) =>
        resultsOf(
          Array.from({ length: of }, (_, i) => (i < of - stood ? allShipped : stands)),
          oneByOne,
        );
    const rare = told(1, 9);
    expect(rare.answer).toMatchObject({ verdict: 'holds', keptUp: { count: 8, n: 9 } });
    expect(rare.answer.sentence).toMatch(
      /^Four a day is held in 8 of 9 builds: .*; the build comes to a standstill in 1 of 9 replications \(gridlock\)/,
    );
    expect(rare.findings.map(({ kind, replications }) => [kind, replications])).toEqual([['gridlock', 1]]);
    expect(rare.findings[0].text).toContain('in replication 9: ');
    expect(rare.findings[0].text).toContain('7 at booth waits for room at bay: each waits for the next, ');
    const often = told(8, 9);
    expect(often.answer.verdict).toBe('falls short');
    expect(often.answer.sentence).toMatch(
      /^Four a day is not held: only 1 of 9 builds keeps up; the build comes to a standstill in 8 of 9 replications \(gridlock\)/,
    );
    expect(often.findings.map(({ kind, replications }) => [kind, replications])).toEqual([
      ['gridlock', 8],
      ['rate not held', 8],
    ]);
  });

  it('is none without a rate', () => {
    const drawn = withProgramme({
      quantity: 90,
      release: { kind: 'interval', interval: { kind: 'exponential', mean: 60 } },
    });
    const { answer, series } = resultsOf([allShipped, allShipped], drawn);
    expect(answer).toMatchObject({
      verdict: 'no rate asked',
      askedPerDay: null,
      heldPerDay: null,
      window: null,
    });
    // 90 units in 30 working days
    expect(answer.sentence).toMatch(/^No rate is asked: 3 a working day are shipped/);
    expect(series.asked.every((asked) => asked === null)).toBe(true);
  });
});

describe('the verdict where units come in loads', () => {
  it('counts over whole loads and says so', () => {
    const { answer } = resultsOf(five(allShipped), ferryOf(2));
    expect(answer.verdict).toBe('holds');
    expect(answer.heldPerDay!.mean).toBeCloseTo(4, 12);
    expect(answer.counting).toMatchObject({
      loads: [{ what: 'trucks of 2 on ferry', cycleDays: expect.closeTo(0.5, 6) as number }],
      isWhole: true,
    });
    expect(answer.sentence).toMatch(
      /while 4 are asked, counted over whole loads \(trucks of 2 on ferry\), from 2027-03-15 to 2027-04-04/,
    );
  });

  it('is not settled where two of them do not go into the weeks judged, however many are shipped', () => {
    // A ferry of 40 is full every ten working days; 15 are judged, in which one or two come: 40 or 80 for 60.
    const { answer } = resultsOf([allShipped, allShipped], ferryOf(40));
    expect(answer).toMatchObject({
      verdict: 'not settled',
      heldPerDay: { mean: 4 },
      counting: { isWhole: false },
    });
    expect(answer.counting!.upsetUnits).toBeCloseTo(20, 0);
    expect(answer.heldPerDay!.low).toBeLessThan(4 - 18 / 15);
    expect(answer.sentence).toMatch(
      /so a longer time has to be asked for: trucks of 40 on ferry come every 10 working days, and how full the last was can make \d+ units in these 15/,
    );
  });

  it('falls short where more is missing than they can make', () => {
    // 25 of 60: 35 are missing, a ferry less makes 20.
    const few = shipping([8, 14, 5, 10, 10, 8]);
    expect(resultsOf(five(few), ferryOf(40)).answer.verdict).toBe('falls short');
  });

  it('leaves a unit to chance where 2 % are less than one', () => {
    // Two a day in 15 working days: of 30 one may be missing, not two.
    const slow = {
      ...oneByOne,
      programme: programme({
        quantity: 40,
        release: { kind: 'rate', phases: [{ from: '2027-03-01', perDay: 2 }] },
      }),
    };
    const verdict = (third: number): string => {
      const each = shipping([8, 10, 10, third, 2]);
      return resultsOf(five(each), slow).answer.verdict;
    };
    expect([verdict(10), verdict(9), verdict(8)]).toEqual(['holds', 'holds', 'falls short']);
  });
});
