import { describe, expect, it } from 'vitest';
import { leadTimeOf, leadTimeText, longerOf, readyOn } from '../../../src/scenario/changes/lead-time.js';
import { requiredBy } from '../../../src/scenario/changes/requires.js';
import { digest } from '../../../src/scenario/digest.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';
import { fixture } from '../read-small.js';

const SMALL = fixture('small.yaml');
const withChanges = (lines: string): string => `${SMALL}\ncosts:\n  currency: EUR\n  changes:\n${lines}\n`;
const read = (text: string) => readScenario(text, 'small.yaml', () => '');
const said = (lines: string): string[] =>
  (read(withChanges(lines)).problems ?? []).map((problem) =>
    sayProblem(problem).replace(/^small\.yaml:\d+:\d+ /, ''),
  );
const PLACE = 'relief: place, of: booth',
  EDIT = 'changes: [{ sites.coachworks.stations.bay.places: 3 }]';

describe('possible changes', () => {
  it('are read with price, running price, lead time, limit and the names of others', () => {
    const { scenario, problems } = read(
      withChanges(
        `    b: { ${PLACE}, price: 410000, day: 35, ready after: 5 months, at most: 1, excludes: c }\n` +
          `    c: { ${EDIT}, requires: [d] }\n    d: { relief: space, of: booth }`,
      ),
    );
    expect(problems).toBeUndefined();
    expect(scenario?.costs?.changes).toEqual([
      {
        ...{ name: 'b', price: 410000, day: 35, atMost: 1, excludes: ['c'], requires: [] },
        relief: { kind: 'place', of: 'booth', site: undefined, which: undefined },
        changes: undefined,
        readyAfter: { count: 5, unit: 'month' },
      },
      {
        ...{ name: 'c', price: undefined, day: 0, atMost: undefined, excludes: [], requires: ['d'] },
        relief: undefined,
        changes: [{ 'sites.coachworks.stations.bay.places': 3 }],
        readyAfter: undefined,
      },
      expect.objectContaining({ name: 'd', price: undefined }),
    ]);
  });

  it('decide nothing of a build: the same digest, and no value that rests on a guess', () => {
    const plain = read(`${SMALL}\ncosts: { currency: EUR }\n`).scenario!,
      changes = withChanges(`    b: { ${PLACE}, price: 410000 }\n    c: { ${EDIT}, price: 5 }`),
      guessed = read(`basis: guess\n${changes}`).scenario!;
    expect(digest(read(changes).scenario!)).toBe(digest(plain));
    expect(guessed.assumptions.length).toBeGreaterThan(0);
    expect(guessed.assumptions.filter(({ path }) => path.startsWith('costs'))).toEqual([]);
    // Standing costs do: they are in the cost of a unit.
    expect(digest(read(`${SMALL}\ncosts: { currency: EUR, standing: { day: 5 } }\n`).scenario!)).not.toBe(
      digest(plain),
    );
  });

  it.each([
    [`    b: { ${PLACE}, price: -1 }`, /^costs\.changes\.b\.price: an amount of money.*got -1$/],
    [`    b: { ${PLACE}, at most: 0 }`, /^costs\.changes\.b\.at most: a whole number from 1 .*got 0$/],
    [`    b: { ${PLACE}, ready after: soon }`, /^costs\.changes\.b\.ready after: a number of days, weeks/],
    [`    b: { ${PLACE}, ready after: 0 weeks }`, /^costs\.changes\.b\.ready after: a number of days, weeks/],
    [`    b: { relief: plaice, of: booth }`, /^costs\.changes\.b\.relief: one of .*got "plaice"/],
    [`    b: { price: 4 }`, /^costs\.changes\.b: either relief \(with of\) or changes; got neither$/],
    [`    b: { ${PLACE}, ${EDIT} }`, /^costs\.changes\.b: either relief .* or changes; got both$/],
    [`    b: { relief: place }`, /^costs\.changes\.b\.relief: the key of beside it/],
    [
      `    b: { ${PLACE}, excludes: b }`,
      /^costs\.changes\.b\.excludes: the name of another change; got "b"$/,
    ],
    [
      `    booth more: { ${PLACE} }\n    c: { ${EDIT}, requires: both more }`,
      /^costs\.changes\.c\.requires: no change of this name under costs: changes; got "both more"; did you mean "booth more"\?$/,
    ],
    [
      `    b: { ${PLACE} }\n    c: { ${PLACE} }`,
      /^costs\.changes\.c\.relief: a relief that "b" is not already; got place$/,
    ],
    [`    c: { ${EDIT}, at most: 2 }`, /^costs\.changes\.c\.at most: 1 or no limit.*; got 2$/],
    [
      `    b: { ${PLACE}, requires: c }\n    c: { ${EDIT}, requires: b }`,
      /^costs\.changes\.b\.requires: no circle.*; got "b" requires "c" requires "b"$/,
    ],
    [
      `    b: { ${PLACE}, requires: [c, d] }\n    c: { ${EDIT}, excludes: d }\n    d: { relief: space, of: booth }`,
      /^costs\.changes\.b\.requires: changes that can be made together; got "c", which excludes "d"$/,
    ],
    [
      '    c: { changes: [{ sites.coachworks.stations.by.places: 3 }] }',
      /^costs\.changes\.c\.changes\[0\]\..*a key or name in .*"by"; did you mean "bay"\?$/,
    ],
    [
      '    c: { changes: [{ sites.coachworks.stations.bay.places: 0 }] }',
      /^costs\.changes\.c\.changes\[0\]\..*: a whole number from 1 .*got 0$/,
    ],
    [
      '    c: { changes: [{ sites.coachworks.stations.bay.places: 2 }] }',
      /^costs\.changes\.c\.changes: changes that change something; got the scenario as it is$/,
    ],
    [
      `    b: { ${EDIT} }\n    c: { changes: [{ sites.coachworks.stations.bay.places: 4 }], requires: b }`,
      /^costs\.changes\.c\.changes\[0\]\..*: each value changed once; another change of the changes made together/,
    ],
    ['    c: { changes: [] }', /^costs\.changes\.c\.changes: a list of path: new value/],
  ])('%s is refused at its line, with what would be right', (lines, expected) => {
    const all = said(lines);
    expect(all[0]).toMatch(expected);
    expect(all).toHaveLength(1);
  });

  it('may be edits that only go with those they require', () => {
    const night = 'changes: [{ calendars.night: { hours: ["22:00-06:00"] } }]',
      worked = 'changes: [{ sites.coachworks.calendar: night }]';
    expect(said(`    a: { ${night} }\n    b: { ${worked}, requires: a }`)).toEqual([]);
    expect(said(`    a: { ${night} }\n    b: { ${worked} }`)[0]).toMatch(
      /^costs\.changes\.b\..*: no calendar of this name; got "night"/,
    );
  });

  it('require others also by way of others, those first that are needed first', () => {
    const scenario = read(
        withChanges(
          `    c: { ${EDIT}, requires: b }\n    b: { ${PLACE}, requires: a }\n    a: { relief: space, of: booth }`,
        ),
      ).scenario!,
      known = new Map((scenario.costs?.changes ?? []).map((each) => [each.name, each]));
    expect(requiredBy(known.get('c')!, known)).toEqual(['a', 'b']);
    expect(requiredBy(known.get('a')!, known)).toEqual([]);
  });
});

describe('a lead time', () => {
  it('is days, weeks or months, and ends on the same day of the month or on its last', () => {
    expect(leadTimeOf('5 months')).toEqual({ count: 5, unit: 'month' });
    expect(leadTimeOf('1 week')).toEqual({ count: 1, unit: 'week' });
    for (const text of ['5', '1.5 weeks', '-2 days', '0 days', '3 h'])
      expect(leadTimeOf(text)).toBeUndefined();
    expect(leadTimeText({ count: 1, unit: 'month' })).toBe('1 month');
    expect(leadTimeText({ count: 6, unit: 'week' })).toBe('6 weeks');
    // 31 January 2028 and a month: 29 February, as 2028 is a leap year.
    expect(readyOn('2028-01-31', { count: 1, unit: 'month' })).toBe('2028-02-29');
    expect(readyOn('2027-08-16', { count: 6, unit: 'week' })).toBe('2027-09-27');
    expect(readyOn('2027-12-30', { count: 3, unit: 'day' })).toBe('2028-01-02');
  });
  it('of several is the one that ends last from the day of the order', () => {
    const month = { count: 1, unit: 'month' } as const,
      days = { count: 30, unit: 'day' } as const;
    // February has 29 days in 2028, March 31.
    expect(longerOf('2028-02-01', month, days)).toEqual(days);
    expect(longerOf('2028-03-01', days, month)).toEqual(month);
    expect(longerOf('2028-03-01', undefined, days)).toEqual(days);
  });
});
