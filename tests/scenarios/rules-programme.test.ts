import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buildName } from '../../src/flow/model/orders.js';
import { compile } from '../../src/scenario/compile.js';
import { sayProblem } from '../../src/scenario/file/problem.js';
import { programmeClock } from '../../src/scenario/programme/clock.js';
import { readScenario } from '../../src/scenario/read.js';
import { enteredAt, playModel, shippedAt } from '../flow/run-yaml.js';
import { summarise } from '../study/summarise.js';

const folder = new URL('../../scenarios/rules/', import.meta.url),
  file = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
function scenarioOf(name: string, change = (text: string): string => text) {
  const { scenario, problems } = readScenario(change(file(name)), name, file);
  if (scenario === undefined) throw new Error(problems.map(sayProblem).join('\n'));
  return scenario;
}
/** Minutes since Monday 2027-03-01 00:00. */
const at = (day: number, clock: string): number =>
  day * 1440 + Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));

describe('15-clock-arrivals.yaml', () => {
  it('has cabs out when its head says, by the clock of Oslo before and after summer time', () => {
    const model = compile(scenarioOf('15-clock-arrivals.yaml')),
      clock = programmeClock(scenarioOf('15-clock-arrivals.yaml')),
      played = playModel(model, 'truck', 1),
      days = enteredAt(played).map((time) => clock.dateTime(time)?.slice(0, 10));
    expect(
      shippedAt(played)
        .slice(0, 4)
        .map((time) => clock.dateTime(time)?.slice(0, 16)),
    ).toEqual(['2027-03-23T11:00', '2027-03-23T13:00', '2027-03-23T15:30', '2027-03-24T07:30']);
    expect(days).toEqual(
      ['2027-03-23', '2027-03-30', '2027-04-02'].flatMap((day) => new Array<string>(4).fill(day)),
    );
    expect(clock.dateTime(enteredAt(played)[4])).toBe('2027-03-30T09:00:00');
  });
});

describe('15-build-list.yaml', () => {
  it('ships each unit when its head says, without the chance of a failed test', () => {
    const model = compile(
      scenarioOf('15-build-list.yaml', (text) =>
        text
          .replace('chance: 10 %', 'chance: 0 %')
          .replace(
            'options: { colour: { red: 50 %, white: 50 % } }',
            'options: { colour: { red: 0 %, white: 100 % } }',
          ),
      ),
    );
    const played = playModel(model, 'list', 1);
    expect(Array.from({ length: 8 }, (_, i) => buildName(model, i + 1))).toEqual([
      'RB-01',
      'RB-02',
      'RB-03',
      'RB-04',
      'RB-05',
      'RB-06',
      '7',
      '8',
    ]);
    // 6 in the week from Thursday on: three a day, at 07:00, 09:40, 12:20. All white then: the booth takes 3
    // h, the stand has two places.
    expect(enteredAt(played)).toEqual([
      0,
      at(1, '07:00'),
      at(1, '11:00'),
      at(2, '07:00'),
      at(3, '07:00'),
      at(3, '09:40'),
      at(3, '12:20'),
      at(4, '07:00'),
    ]);
    // Coats: 07-10, 10-13, 13-15 and 07-08 on Friday, 08-11.
    const expected = [
      at(0, '11:00'),
      at(1, '14:00'),
      at(2, '11:00'),
      at(2, '15:00'),
      at(3, '14:00'),
      at(4, '09:00'),
      at(4, '12:00'),
      at(4, '15:00'),
    ];
    shippedAt(played).forEach((time, i) => {
      expect(time, `unit ${i + 1}`).toBeCloseTo(expected[i], 5);
    });
    // RB-03 was due on Tuesday: 11 h late, by midnight.
    expect([played.seen.due, played.seen.late]).toEqual([8, 1]);
    expect(played.seen.lateMinutes).toBeCloseTo(11 * 60, 5);
  });

  it('is late with RB-03 always, and ships all eight orders with some of them built again', () => {
    const scenario = scenarioOf('15-build-list.yaml'),
      model = compile(scenario);
    const observations = Array.from({ length: 40 }, (_, r) => playModel(model, 'list', r + 1).seen);
    const results = summarise({
      scenario,
      model,
      observations,
      file: '15-build-list.yaml',
      seed: 'list',
      level: 0.95,
    });
    expect(observations.map(({ shipped }) => shipped)).toEqual(observations.map(() => 8));
    expect(observations.some(({ scrapped }) => scrapped > 0)).toBe(true);
    const unit = (build: string) => results.units.find((each) => each.build === build)!;
    expect(unit('RB-03')).toMatchObject({ due: '2027-03-02', late: { count: 40, n: 40 } });
    expect(unit('RB-01').late!.share).toBeLessThan(0.3);
    // Four days after its release at 12:20 on Thursday, still the same clock.
    expect(unit('7').due).toBe('2027-03-08');
    expect(results.due!.units.mean).toBe(8);
    expect(results.due!.late.mean).toBeGreaterThan(1 / 8);
  });
});

describe('15-opening.yaml', () => {
  it('ships when its head says, doors and truck included', () => {
    const model = compile(scenarioOf('15-opening.yaml')),
      played = playModel(model, 'opening', 1);
    expect([1, 2, 3, 4, 5].map((number) => buildName(model, number))).toEqual(['1', 'LC-7', '3', '4', '5']);
    expect(shippedAt(played)).toEqual([210, 240, 390, 420, 570]);
    expect(enteredAt(played)).toEqual([0, 0, 0, 0, 240]);
    // Little: 210 + 240 + 390 + 420 + 330 unit-minutes in 570.
    expect(played.seen.wip).toBeCloseTo(1590 / 570, 12);
  });
});

describe('15-ramp.yaml', () => {
  it('releases the units of each week on its working days', () => {
    const scenario = scenarioOf('15-ramp.yaml'),
      { buckets } = programmeClock(scenario),
      played = playModel(compile(scenario), 'ramp', 1);
    expect(buckets.labels.slice(0, 4)).toEqual(['2027-W20', '2027-W21', '2027-W22', '2027-W23']);
    expect(buckets.asked.slice(0, 5)).toEqual([1, 1, 2, 2, null]);
    expect(Array.from(played.seen.shippedIn.slice(0, 4))).toEqual([4, 5, 10, 10]);
    // The last: Friday of week 23, day 25, released at 10:00.
    expect(shippedAt(played).at(-1)).toBe(at(25, '13:00'));
  });
});
