import { describe, expect, it } from 'vitest';
import { MOST_VISITS } from '../../../src/flow/accounts/changeover-log.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { ChangeoverResult } from '../../../src/study/sections/changeovers.js';
import { modelOf, playModel } from '../../flow/run-yaml.js';
import { summarise } from '../summarise.js';

function changeoversOf(yaml: string, replications: number): readonly ChangeoverResult[] {
  const { scenario } = readScenario(yaml, 'test.yaml', () => ''),
    model = modelOf(yaml);
  const observations = Array.from({ length: replications }, (_, i) => playModel(model, 'c', i + 1).seen);
  return summarise({ scenario: scenario!, model, observations, file: 'test.yaml', seed: 'c', level: 0.95 })
    .changeovers;
}

const booth = (programme: string): string => `
scenario: colours
programme: { ${programme}, options: { colour: { red: 50 %, white: 50 % } } }
sites: { hall: { stations: { bench: { buffer: unlimited, changeover: { on: colour, work: 1 min } }, booth: { changeover: { on: colour, work: 30 min, from to: { red: { white: 45 min }, white: { red: 0 min } } } } } } }
route: [{ step: coat, at: booth, work: 20 min }, { step: polish, at: bench, work: 1 min }]
`;

describe('results on changeovers', () => {
  it('have the pieces of those that were not worked from beginning to end, also where all was the next day', () => {
    // An hour a day, 50 min to change: white 0-20, change 20-60 and 10 min the next day, coat to 1470; and so
    // on. The fifth is done at 5820, when the shift ends: the sixth is changed for the next day.
    const calendar =
        'calendars: { days: { hours: ["00:00-01:00"], on: every day } }\nsites: { hall: { calendar: days,',
      daily = booth('start: 2027-03-03, arrivals: saturated, quantity: 9')
        .replace('sites: { hall: {', calendar)
        .replace('30 min, from to: { red: { white: 45 min }, white: { red: 0 min } }', '50 min'),
      [{ strip }] = changeoversOf(daily, 1);
    const [, second, third, , , sixth] = strip!.stays.map(({ changeFrom, changeTo, changePieces }) => [
      ...[changeFrom, changeTo].map((hour) => Math.round(60 * hour!)),
      changePieces?.map((piece) => piece.map((hour) => Math.round(60 * hour))),
    ]);
    expect([second, third, sixth]).toEqual([
      [
        20,
        1450,
        [
          [20, 60],
          [1440, 1450],
        ],
      ],
      [
        1470,
        2900,
        [
          [1470, 1500],
          [2880, 2900],
        ],
      ],
      [5820, 7250, [[7200, 7250]]],
    ]);
  });

  // Seed c: W R W R W R R R R. At the booth red to white twice, 45 min each, white to red in no time; all out
  // after 271 min.
  const [first, second] = changeoversOf(booth('start: 2027-03-03, arrivals: saturated, quantity: 9'), 1);

  it('have the most used station first, with what was counted of it', () => {
    expect([first.name, second.name]).toEqual(['booth', 'bench']);
    expect(first).toMatchObject({ site: 'hall', places: 1, option: 'colour', values: ['red', 'white'] });
    expect(first.per100Units.mean).toBeCloseTo(200 / 9, 10);
    // 1.5 h in 271 min.
    expect(first.hoursPerWeek.mean).toBeCloseTo(1.5 * (10080 / 271), 8);
    expect(
      first.pairs.map(({ from, to, per100Units, minutes }) => [
        from,
        to,
        Math.round(per100Units.mean * 9),
        minutes.mean,
      ]),
    ).toEqual([['red', 'white', 200, 45]]);
    expect(second.pairs.map(({ from, to }) => `${from} ${to}`)).toEqual(['red white', 'white red']);
    expect(second.per100Units.mean).toBeCloseTo(500 / 9, 10);
  });

  it('have the stays of a week of the first replication, in hours from its start', () => {
    // The programme starts on a Wednesday, and with it the first week of the series.
    expect(first.strip).toMatchObject({
      replication: 1,
      start: '2027-03-03T00:00:00',
      hours: 120,
      days: ['2027-03-03', '2027-03-04', '2027-03-05', '2027-03-06', '2027-03-07'],
    });
    expect(first.strip!.stays).toHaveLength(9);
    expect(first.strip!.stays[2]).toEqual({
      place: 1,
      value: 1,
      from: 40 / 60,
      to: 105 / 60,
      changedFrom: 0,
      changeFrom: 40 / 60,
      changeTo: 85 / 60,
    });
    expect(first.strip!.stays[3]).toMatchObject({ changedFrom: null, changeFrom: null, changeTo: null });
  });

  it('of a steady run keep a bounded number of stays from the end of warm-up on, and show no more than can be told apart', () => {
    const yaml = booth('start: 2027-03-01, arrivals: saturated, length: 2000 h, warm up: 100 h'),
      { seen } = playModel(modelOf(yaml), 'c', 1);
    expect(seen.taken[1]).toBeGreaterThan(MOST_VISITS);
    expect(seen.stays[1]).toHaveLength(MOST_VISITS);
    expect(seen.stays[1][0].from).toBeGreaterThan(6000);
    const [{ strip }] = changeoversOf(yaml, 1) as [ChangeoverResult];
    // 31 min a unit make 325 a week: three days of seven.
    expect([strip!.hours, strip!.days.length]).toEqual([72, 3]);
    expect(strip!.stays.length).toBeGreaterThan(120);
    expect(strip!.stays.length).toBeLessThan(165);
  });

  it('are none without changeovers', () => {
    expect(
      changeoversOf(
        'scenario: none\nprogramme: { arrivals: saturated, quantity: 2 }\nsites: { hall: { stations: { booth: {} } } }\nroute: [{ step: coat, at: booth, work: 1 min }]\n',
        1,
      ),
    ).toEqual([]);
  });
});
