import { describe, expect, it } from 'vitest';
import { type Distribution, meanOf, varianceOf } from '../../../src/random/distribution.js';
import { scaledScenario } from '../../../src/scenario/changes/scaled.js';
import { mapTimes } from '../../../src/scenario/changes/times.js';
import { digest } from '../../../src/scenario/digest.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { readWhatIfs } from '../../../src/scenario/what-ifs.js';
import { changedThings } from '../../../src/study/route/changed.js';

/** A time at each place that may have one. */
const YAML = `scenario: two plants
programme: { start: 2027-03-01, quantity: 40, rate: { per day: 4 }, options: { colour: { red: 70 %, white: 30 % } } }
calendars: { days: { hours: ["06:00-14:30"] } }
sites:
  paint shop:
    calendar: days
    crews: { painters: 6 }
    stations:
      booth:
        buffer: 2
        changeover: { on: colour, work: { low: 10 min, high: 20 min }, from to: { red: { white: { low: 20 min, high: 40 min } } } }
        failures: { every: { exponential: { mean: 40 h } }, repair: { low: 30 min, likely: 60 min, high: 3 h } }
      bay: { buffer: 4 }
  yard: { calendar: days, stations: { line: { buffer: unlimited }, bench: {} } }
feeders: { doors: { stock: 2, at start: 1, route: [{ step: trim doors, at: bench, work: { mean: 30 min, cv: 0.2 } }] } }
supplies: { glass: { site: yard, at start: 30, reorder: { level: 8, lot: 8, lead time: { low: 8 days, high: 14 days } } } }
lanes: { ferry: { from: paint shop, to: yard, trucks: 1, capacity: 2, drive: { low: 2 h, high: 4 h }, return: 3 h, hours: days } }
carriers: { dollies: { count: 9, from: prime, to: look, return: { low: 1 h, high: 3 h } } }
defects: { runs: {} }
outages:
  - { stations: booth, from: 2027-03-15, to: 2027-03-16 }
  - { site: yard, from: 2027-04-05 06:00, to: 2027-04-05 10:00 }
  - { lanes: ferry, from: 2027-05-03, to: 2027-05-03 }
route:
  - { step: prime, at: booth, crew: { painters: 2 }, passes: { count: 2, work: { low: 30 min, likely: 40 min, high: 62 min }, settle: { low: 10 min, high: 14 min } }, creates: { runs: 5 % } }
  - { step: look, at: bay, work: 20 min, process: { low: 5 min, high: 15 min }, finds: { runs: { chance: 90 %, repair: { mean: 20 min, cv: 0.5 } } } }
  - lane: ferry
  - { step: fit, at: line, parts: { doors: 1, glass: 1 }, work: { mean: 50 min, cv: 0.3 } }
`;
const base = readScenario(YAML, 'two.yaml', () => '').scenario!;
const timesOf = (scenario: Scenario): { time: Distribution; names: readonly string[]; kind: string }[] => {
  const all: { time: Distribution; names: readonly string[]; kind: string }[] = [];
  mapTimes(scenario, (time, named) => {
    all.push({ time, ...named });
    return time;
  });
  return all;
};
const before = timesOf(base);
/** Which times are other than before, by their names. */
const changed = (scenario: Scenario): string[] =>
  timesOf(scenario).flatMap(({ time, names }, i) =>
    JSON.stringify(time) === JSON.stringify(before[i].time) ? [] : [names[0]],
  );

describe('a scale of a scenario', () => {
  it('of all spreads keeps every mean, takes every drawn time, and leaves arrivals and time between failures', () => {
    const { scenario, count, cut } = scaledScenario(base, { what: 'spread', factor: 1.5, of: [] }),
      after = timesOf(scenario);
    const drawn = before.filter(({ time }) => time.kind !== 'constant');
    expect(count).toBe(drawn.length);
    expect(count).toBe(12);
    expect(cut).toBe(0);
    after.forEach(({ time }, i) => {
      expect(meanOf(time)).toBeCloseTo(meanOf(before[i].time), 6);
      expect(Math.sqrt(varianceOf(time))).toBeCloseTo(1.5 * Math.sqrt(varianceOf(before[i].time)), 6);
    });
    const every = (of: Scenario) => of.sites['paint shop'].stations['booth'].failures[0].every;
    expect(every(scenario)).toEqual(every(base));
  });

  it.each<[of: string[], names: string[]]>([
    [['paint shop'], ['booth', 'booth', 'booth', 'prime', 'prime', 'look', 'look']],
    [['booth'], ['booth', 'booth', 'booth', 'prime', 'prime']],
    [['look'], ['look', 'look']],
    [['doors'], ['trim doors']],
    [
      ['ferry', 'glass'],
      ['ferry', 'glass'],
    ],
    [['dollies'], ['dollies']],
    [['yard'], ['trim doors', 'fit']],
  ])('of the spread of %j takes what belongs to it and nothing else', (of, names) => {
    expect(changed(scaledScenario(base, { what: 'spread', factor: 1.2, of }).scenario)).toEqual(names);
  });

  it('of all times of a plant takes fixed ones too, without its repairs', () => {
    const { scenario, count } = scaledScenario(base, { what: 'times', factor: 1.1, of: ['paint shop'] });
    expect(changed(scenario)).toEqual(['booth', 'booth', 'prime', 'prime', 'look', 'look', 'look']);
    expect(count).toBe(7);
    timesOf(scenario).forEach(({ time, names, kind }, i) => {
      const factor = names.includes('paint shop') && kind === 'work' ? 1.1 : 1;
      expect(meanOf(time)).toBeCloseTo(factor * meanOf(before[i].time), 6);
    });
  });

  it('of all stops doubles repairs and outages: two days become four, four hours eight', () => {
    const { scenario, count } = scaledScenario(base, { what: 'stops', factor: 2, of: [] });
    expect(count).toBe(4);
    expect(changed(scenario)).toEqual(['booth']);
    expect(scenario.outages.map(({ to }) => to)).toEqual([
      { day: '2027-03-18', minute: undefined },
      { day: '2027-04-05', minute: 14 * 60 },
      { day: '2027-05-04', minute: undefined },
    ]);
    const half = scaledScenario(base, { what: 'stops', factor: 0.75, of: ['ferry'] });
    expect(half.count).toBe(1);
    expect(half.scenario.outages[2].to).toEqual({ day: '2027-05-03', minute: 18 * 60 });
    expect(half.scenario.outages[0]).toBe(base.outages[0]);
  });

  it('of the stops of a plant takes outages of its stations, and 0 takes them out', () => {
    const { scenario } = scaledScenario(base, { what: 'stops', factor: 0, of: ['paint shop'] });
    expect(scenario.outages).toEqual(base.outages.slice(1));
    expect(meanOf(scenario.sites['paint shop'].stations['booth'].failures[0].repair)).toBe(0);
  });

  it('by 1 is the same scenario to the last bit, and shows on the map only what it changes', () => {
    for (const what of ['spread', 'times', 'stops'] as const)
      expect(digest(scaledScenario(base, { what, factor: 1, of: [] }).scenario)).toBe(digest(base));
    const { scenario } = scaledScenario(base, { what: 'spread', factor: 1.5, of: ['ferry'] });
    expect(changedThings(base, scenario)).toEqual({
      things: [{ kind: 'lane', name: 'ferry', site: '' }],
      isMore: false,
    });
  });
});

describe('a scale in a file of what-ifs', () => {
  const read = (text: string) =>
    readWhatIfs(text, 'what-ifs.yaml', { text: YAML, file: 'two.yaml' }, () => '');
  const said = (text: string): string[] =>
    (read(text).problems ?? []).map((problem) => sayProblem(problem).replace(/^what-ifs\.yaml:/, ''));

  it('comes after the other changes, on what they left, and is told in words', () => {
    const { whatIfs } = read(
      'rough: { changes: [{ scale: { spread: 2, of: line } }, { route.fit.work: { mean: 60 min, cv: 0.2 } }] }',
    );
    const { changes, scenario } = whatIfs![0],
      fit = timesOf(scenario).find(({ names }) => names[0] === 'fit')!.time;
    expect(meanOf(fit)).toBeCloseTo(60, 9);
    expect(Math.sqrt(varianceOf(fit))).toBeCloseTo(24, 9);
    expect(changes).toEqual([
      {
        path: 'scale spread of line',
        words: 'the factor on the spread of 1 time of line',
        before: '1',
        after: '2',
      },
      {
        path: 'route[3].work',
        words: 'the work of fit',
        before: '{ mean: 50 min, cv: 0.3 }',
        after: '{ mean: 60 min, cv: 0.2 }',
      },
    ]);
  });

  it('says how many spreads were cut at 0', () => {
    const { whatIfs } = read('wild: { changes: { scale: { spread: 4, of: ferry } } }');
    expect(whatIfs![0].changes[0].words).toBe(
      'the factor on the spread of 1 time of ferry, of which 1 cut at 0',
    );
  });

  it.each<[title: string, text: string, expected: string]>([
    [
      'a misspelt key',
      'a:\n  changes:\n    - scale: { spred: 2 }',
      '3:16 a: scale: one of the keys spread, times, stops, of; got "spred"; did you mean "spread"?',
    ],
    [
      'no factor',
      'a: { changes: [{ scale: { spread: half } }] }',
      '1:35 a: scale spread: a factor from 0 to 10; got "half"',
    ],
    [
      'a factor of no time',
      'a: { changes: [{ scale: { times: 0 } }] }',
      '1:34 a: scale times: a factor above 0, at most 10; got 0',
    ],
    [
      'two at once',
      'a: { changes: [{ scale: { times: 2, stops: 2 } }] }',
      '1:25 a: scale times: a map with one of the keys spread, times and stops, each with a factor, and perhaps of, such as { spread: 1.5, of: coachworks }; got a map of times, stops',
    ],
    [
      'a misspelt name',
      'a:\n  changes:\n    - scale: { spread: 2, of: paint shp }',
      '3:31 a: scale spread: the name of a site, station, step, feeder, lane, supply or of carriers; got "paint shp"; did you mean "paint shop"?',
    ],
    [
      'nothing to scale',
      'a: { changes: [{ scale: { stops: 2, of: look } }] }',
      '1:41 a: scale stops: a repair or an outage in look; got none',
    ],
    [
      'a number',
      'a: { changes: [{ scale: 2 }] }',
      '1:25 a: scale: a map with one of the keys spread, times and stops, each with a factor, and perhaps of, such as { spread: 1.5, of: coachworks }; got 2',
    ],
    [
      'more than ten means',
      'a: { changes: [{ route.fit.work: { mean: 50 min, cv: 4 } }, { scale: { spread: 3, of: line } }] }',
      '1:80 a: scale spread: a spread of at most 10 means; got "3, with which 1 of 1 times would have more"'.replace(
        /"/g,
        '',
      ),
    ],
    [
      'no change',
      'a: { changes: [{ scale: { spread: 1 } }] }',
      '1:1 a: changes that change something; got the same as the scenario itself',
    ],
    [
      'what then does not fit',
      'a: { changes: [{ route.look.work: 60 min }, { route.look.in one shift: true }, { scale: { times: 9 } }] }',
      'a: route[1]',
    ],
  ])('with %s is refused at its line', (_, text, expected) => {
    expect(said(text).join('\n')).toContain(expected);
  });
});
