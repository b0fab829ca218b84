import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { sayProblem } from '../../src/scenario/file/problem.js';
import { fixture, readText } from './read-small.js';

const first = (text: string): string => sayProblem(readText(text).problems![0]);

describe('no text crashes or hangs the reader', () => {
  it.each([
    ['an empty file', '', 'small.yaml:1:1 a scenario; got an empty file'],
    ['a file of remarks', '# nothing yet\n', 'small.yaml:1:1 a scenario; got an empty file'],
    [
      'null',
      'null',
      'small.yaml:1:1 a scenario: a map with the keys scenario, programme, sites and route; got nothing',
    ],
    [
      'a list',
      '[1, 2]',
      'small.yaml:1:1 a scenario: a map with the keys scenario, programme, sites and route; got a list',
    ],
    [
      'bytes that are not UTF-8',
      `scenario: r${Buffer.from([0xe9]).toString('utf8')}d`,
      'small.yaml:1:12 UTF-8 text; save the file as UTF-8; got a character that is not',
    ],
    [
      'UTF-16',
      Buffer.from('scenario: x', 'utf16le').toString('utf8'),
      'small.yaml:1:2 UTF-8 text; save the file as UTF-8; got a character that is not',
    ],
    [
      'lists nested 100,000 deep',
      '['.repeat(100_000),
      'small.yaml:1:61 maps and lists at most 60 deep; got a deeper one',
    ],
    [
      'maps nested 50,000 deep',
      '{a: '.repeat(50_000),
      'small.yaml:1:241 maps and lists at most 60 deep; got a deeper one',
    ],
    [
      'lists nested 20,000 deep that end on the next line',
      `${'- '.repeat(20_000)}\na: 1`,
      'small.yaml:1:121 maps and lists at most 60 deep; got a deeper one',
    ],
    [
      'bytes that are not UTF-8 before lists nested 20,000 deep',
      `# \uFFFD\n${'- '.repeat(20_000)}\na: 1`,
      'small.yaml:1:3 UTF-8 text; save the file as UTF-8; got a character that is not',
    ],
    [
      'an alias of itself',
      'a: &a [*a]',
      'small.yaml:1:8 maps and lists at most 60 deep, aliases written out',
    ],
    [
      'a text of a million characters and more',
      'x'.repeat(1_000_001),
      'small.yaml:1:1 a text of at most 1,000,000 characters; got 1,000,001',
    ],
  ])('reports %s', (_, text, expected) => {
    expect(first(text)).toBe(expected);
  });

  it('stops at aliases that would grow without bound', () => {
    const level = (i: number): string =>
      `k${i}: &k${i} [${Array(9)
        .fill(i === 0 ? 'x' : `*k${i - 1}`)
        .join(', ')}]`;
    expect(first(Array.from({ length: 12 }, (_, i) => level(i)).join('\n'))).toMatch(
      /at most 100,000 values, aliases written out$/,
    );
  });

  it('skips a byte order mark', () => {
    expect(readText(`\uFEFF${fixture('small.yaml')}`).problems).toBeUndefined();
  });

  it('lists the problems of a file by line, each once', () => {
    const problems = readText(
      fixture('small.yaml')
        .replace('buffer: 2', 'bufer: 2')
        .replace('at: booth', 'at: both')
        .replace('trucks: 1', 'trucks: 0')
        .replace('work: 20 min', 'work: 20'),
    ).problems!;
    expect(problems.map(({ line }) => line)).toEqual([16, 28, 32, 39]);
  });

  it('answers any text with a scenario or problems', () => {
    const pieces = fc.constantFrom(
      'a',
      ': ',
      '- ',
      '[',
      ']',
      '{',
      '}',
      '\n',
      '  ',
      '*x',
      '&x ',
      '!t ',
      '"',
      "'",
      '|',
      '>',
      '#',
      '%',
      '\t',
      '?',
      ',',
      '---',
      '1',
      'route',
      '<<: ',
      '\r',
      'include',
      'value',
      'basis',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 40 }), (parts) => {
        expect(readText(parts.join('')).problems!.length).toBeGreaterThan(0);
      }),
      { seed: 20270301, numRuns: 300 },
    );
  });
});

type Tree = Record<string, unknown> | unknown[];
type Spot = { readonly within: Tree; readonly key: string | number };

/** Every key of every map and every place of every list. */
function spotsOf(value: unknown): Spot[] {
  if (typeof value !== 'object' || value === null) return [];
  const within = value as Tree;
  const keys = Array.isArray(within) ? [...within.keys()] : Object.keys(within);
  return keys.flatMap((key) => [{ within, key }, ...spotsOf(Reflect.get(within, key))]);
}

const junk = [
  null,
  true,
  -1,
  0,
  1e300,
  NaN,
  '',
  'x',
  '7',
  '-5 min',
  '50 %',
  '500 %',
  '2027-02-30',
  [],
  {},
  [null],
  [[]],
  { a: 1 },
  { low: 3 },
  { value: 3, basis: 'guess' },
  { value: [], note: 1 },
  { include: 'x.yaml' },
  { basis: 'so' },
  'unlimited',
  'own',
  'yes',
];

function mutate({ within, key }: Spot, way: number, other: Spot): void {
  const value: unknown = Reflect.get(within, key);
  const swapped: unknown = structuredClone(Reflect.get(other.within, other.key));
  if (way === 0) Reflect.deleteProperty(within, key);
  else if (way === 1 && typeof key === 'string') {
    Reflect.deleteProperty(within, key);
    Reflect.set(within, `${key.slice(0, -1)}x`, value);
  } else if (way === 2) Reflect.set(within, key, swapped);
  else if (way === 3 && typeof value === 'string') Reflect.set(within, key, `${value.slice(1)}q`);
  else Reflect.set(within, key, junk[way % junk.length]);
}

describe('a valid scenario with up to three random changes', () => {
  it('gives a scenario or problems that say where and what', () => {
    const source = fixture('small.yaml');
    let refused = 0;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(), fc.nat(60), fc.nat()), { minLength: 1, maxLength: 3 }),
        (changes) => {
          const data: unknown = parse(source);
          for (const [which, way, other] of changes) {
            const spots = spotsOf(data);
            mutate(spots[which % spots.length], way, spots[other % spots.length]);
          }
          const { scenario, problems } = readText(stringify(data, { aliasDuplicateObjects: false }));
          expect((scenario === undefined) !== (problems === undefined)).toBe(true);
          for (const problem of problems ?? []) {
            expect(sayProblem(problem)).toMatch(/^small\.yaml:[1-9]\d*:[1-9]\d* \S.*[^.]$/s);
            expect(sayProblem(problem)).not.toMatch(
              /invalid input|unrecognized|too (small|big)|undefined|\[object/i,
            );
          }
          if (problems !== undefined) refused += 1;
        },
      ),
      { seed: 20270302, numRuns: 300 },
    );
    // Most changes break something; if none did, the mutations would not reach the scenario.
    expect(refused).toBeGreaterThan(200);
  }, 60_000);
});
