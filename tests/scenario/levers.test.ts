import { describe, expect, it } from 'vitest';
import { digest } from '../../src/scenario/digest.js';
import { sayProblem } from '../../src/scenario/file/problem.js';
import { moved, setLevers } from '../../src/scenario/levers.js';
import { readScenario, scenarioData } from '../../src/scenario/read.js';
import { valueAt } from '../../src/scenario/values/raw.js';
import { fixture } from './read-small.js';

const SMALL = fixture('small.yaml'),
  none = (): string => {
    throw new Error('no such file');
  };
const withLevers = (lines: string): string => `${SMALL}\nlevers:\n${lines}\n`;
const read = (text: string) => readScenario(text, 'small.yaml', none);
const said = (lines: string): string[] =>
  (read(withLevers(lines)).problems ?? []).map((problem) =>
    sayProblem(problem).replace(/^small\.yaml:\d+:\d+ /, ''),
  );

const BOOTH = 'sites.coachworks.stations.booth.buffer',
  PAINTERS = 'sites.coachworks.crews.painters';

describe('levers', () => {
  it('are a value of the scenario, its range, step and price, with the unit of the value', () => {
    const text = withLevers(
      `  spaces: { change: ${BOOTH}, from: 0, to: 6, price: 2500 }\n  painters: { change: ${PAINTERS}, from: 4, to: 8, step: 2 }`,
    );
    const { scenario, problems } = read(`${text}costs: { currency: EUR }\n`);
    expect(problems).toBeUndefined();
    const { value } = scenarioData(text, 'small.yaml', none),
      [spaces, painters] = setLevers(value, scenario?.levers ?? []);
    expect(spaces).toMatchObject({ name: 'spaces', now: 2, from: 0, to: 6, step: 1, unit: '', price: 2500 });
    expect(painters).toMatchObject({ now: 6, step: 2, price: null });
    expect(valueAt(moved(value, spaces, 5), spaces.path)).toBe(5);
  });

  it('change nothing of the scenario: the same digest, and no value that rests on a guess', () => {
    const plain = read(SMALL).scenario!,
      levered = read(withLevers(`  spaces: { change: ${BOOTH}, from: 0, to: 6 }`)).scenario!,
      guessed = read(`basis: guess\n${withLevers(`  spaces: { change: ${BOOTH}, from: 0, to: 6 }`)}`)
        .scenario!;
    expect(digest(levered)).toBe(digest(plain));
    expect(guessed.assumptions.length).toBeGreaterThan(0);
    expect(guessed.assumptions.filter(({ path }) => path.startsWith('levers'))).toEqual([]);
  });

  it.each([
    [
      '  a: { change: sites.coachworks.stations.both.buffer, from: 0, to: 6 }',
      /^levers\.a\.change: a key or name in .*"both"; did you mean "booth"\?$/,
    ],
    [
      '  a: { change: sites.coachworks.stations.booth.places, from: 1, to: 3 }',
      /^levers\.a\.change: a value that the scenario gives; write it there first/,
    ],
    ['  a: { change: scenario, from: 1, to: 3 }', /^levers\.a\.change: the path of a number/],
    [
      `  a: { change: ${BOOTH}, from: 3, to: 6 }`,
      /^levers\.a\.from: a range around what the scenario has, 2; got 3 to 6$/,
    ],
    [`  a: { change: ${BOOTH}, from: 0, to: 1 }`, /^levers\.a\.to: a range around what the scenario has/],
    [
      `  a: { change: ${BOOTH}, from: 0 min, to: 6 }`,
      /^levers\.a\.from: a number as the scenario has it, 2; got "0 min"$/,
    ],
    [
      `  a: { change: ${BOOTH}, from: 0, to: 6, step: 7 }`,
      /^levers\.a\.step: a step above 0 that fits the range; got 7$/,
    ],
    [
      `  a: { change: ${BOOTH}, from: 0, to: 6, price: 3 }`,
      /^levers\.a\.price: costs with a currency in the scenario, or no price/,
    ],
    [
      `  a: { change: ${BOOTH}, from: -3, to: 6 }`,
      /^levers\.a\.from: a number with which the scenario is sound; this one would need .*; got -3$/,
    ],
    [
      `  a: { change: ${BOOTH}, from: 0, to: 6 }\n  b: { change: ${BOOTH}, from: 1, to: 4 }`,
      /^levers\.b\.change: a value that "a" does not move already$/,
    ],
    [`  a: { change: ${BOOTH}, from: many, to: 6 }`, /^levers\.a\.from: a number, or a number with its unit/],
    [`  a: { move: ${BOOTH}, from: 0, to: 6 }`, /^levers\.a\.change: missing; should be the path of a value/],
  ])('%s is refused at its line, with what would be right', (lines, expected) => {
    const [first = ''] = said(lines);
    expect(first).toMatch(expected);
  });

  it('are seven at most', () => {
    const eight = Array.from({ length: 8 }, (_, i) => `  a${i}: { change: ${BOOTH}, from: 0, to: 6 }`).join(
      '\n',
    );
    expect(said(eight)[0]).toMatch(/^levers: at most 7 levers/);
  });

  it('give back a scenario that reads the same from its data alone, files and all', () => {
    const { value, files } = scenarioData(SMALL, 'small.yaml', none);
    expect(JSON.parse(JSON.stringify(value))).toEqual(value);
    expect(files).toEqual({});
  });
});
