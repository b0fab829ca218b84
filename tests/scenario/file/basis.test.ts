import { describe, expect, it } from 'vitest';
import { digest } from '../../../src/scenario/digest.js';
import { readBasis } from '../../../src/scenario/file/basis.js';
import { type Edit, fixture, readText, said } from '../read-small.js';

const small = fixture('small.yaml');
const readWith = ([before, after]: Edit) => {
  const { scenario, problems } = readText(small.replace(before, after));
  expect(problems).toBeUndefined();
  return scenario!;
};

describe('a basis that is a map', () => {
  it('tells how many values were measured, when, and where they stand', () => {
    const edit: Edit = [
      'work: 20 min',
      'work: { mean: 20 min, cv: 0.3, basis: { measured: 84, from: 2027-08-16, to: 2027-10-29, file: times.csv } }',
    ];
    const scenario = readWith(edit);
    expect(scenario.assumptions).toMatchObject([
      {
        path: 'route[2].work',
        basis: 'measured',
        raw: { mean: '20 min', cv: 0.3 },
        measured: { n: 84, from: '2027-08-16', to: '2027-10-29', file: 'times.csv' },
      },
    ]);
    expect(digest(scenario)).toBe(digest(readWith(['work: 20 min', 'work: { mean: 20 min, cv: 0.3 }'])));
  });

  it('tells of a chance how many were found, and of a learning rate its standard error', () => {
    const scenario = readWith([
      'work: 20 min',
      'work: 20 min\n    learning: { rate: { value: 90 %, basis: { measured: 40, standard error: 0.03 } } }',
    ]);
    expect(scenario.assumptions[0]?.measured).toMatchObject({ n: 40, standardError: 0.03 });
    expect(readBasis({ measured: 412, found: 17 }, []).measured).toMatchObject({ n: 412, found: 17 });
  });

  it('holds on a step for each quantity inside that says nothing itself', () => {
    const scenario = readWith(['work: 20 min', 'work: 20 min\n    basis: { measured: 12 }']);
    expect(scenario.assumptions.map(({ measured }) => measured?.n)).toEqual(
      scenario.assumptions.map(() => 12),
    );
    expect(scenario.assumptions.length).toBeGreaterThan(0);
  });
});

describe('problems in a basis that is a map', () => {
  const of = (basis: string, value = '20 min'): Edit => [
    'work: 20 min',
    `work: { value: ${value}, basis: ${basis} }`,
  ];
  it.each<[what: string, edit: Edit, expected: string]>([
    [
      'an unknown key',
      of('{ mesured: 84 }'),
      'basis.mesured: one of the keys measured, found, standard error, from, to, file; got "mesured"; ' +
        'did you mean "measured"?',
    ],
    [
      'no number of values',
      of('{ file: times.csv }'),
      'basis: measured with the number of values behind it, such as { measured: 84 }; got a map of file',
    ],
    [
      'a number that is not whole',
      of('{ measured: 8.5 }'),
      'a whole number from 1 to 1,000,000,000; got 8.5',
    ],
    ['none measured', of('{ measured: 0 }'), 'a whole number from 1 to 1,000,000,000; got 0'],
    ['a day that is none', of('{ measured: 8, from: 2027-02-30 }'), 'from: a day of the calendar, such as'],
    [
      'days in the wrong order',
      of('{ measured: 8, from: 2027-10-29, to: 2027-08-16 }'),
      'to: a day that is not before 2027-10-29; got "2027-08-16"',
    ],
    ['a file without a name', of('{ measured: 8, file: 5 }'), 'file: the name of a file; got 5'],
    ['found of a time', of('{ measured: 8, found: 2 }'), 'basis.found: a chance that it tells of, such as'],
    [
      'a standard error of a time',
      of('{ measured: 8, standard error: 0.1 }'),
      'basis.standard error: the rate of a learning beside it, of whose slope on a log scale it is; or a ' +
        'chance, of which it is 0.5 at most; got "20 min"',
    ],
  ])('%s', (_, edit, expected) => {
    expect(said(edit).filter((line) => line.includes(expected))).toHaveLength(1);
  });

  it.each<[what: string, basis: string, expected: string]>([
    ['more found than there are', '{ measured: 40, found: 41 }', 'found: a whole number from 0 to the 40'],
    [
      'another chance than was found',
      '{ measured: 400, found: 100 }',
      'found: as many as the chance says, 16 of 400; or a chance of 25 %; got 100',
    ],
  ])('%s', (_, basis, expected) => {
    const found = said(['chance: 4 %', `chance: { value: 4 %, basis: ${basis} }`]);
    expect(found.filter((line) => line.includes(expected))).toHaveLength(1);
  });
});
