import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { addressOf, numbersIn, whatIfLines } from '../../../src/live/levers/kept.js';
import type { SetLever } from '../../../src/scenario/levers.js';

const lever = (name: string, change: string, unit = '', now = 1): SetLever => ({
  ...{ name, change, unit, now, path: [] },
  ...{ from: 0, to: 9, step: 1, price: null },
});
/** Names that would spoil a file or an address in which they were not quoted. */
const HOSTILE = ['a: b', '- x', '#1', 'it\'s "so"', 'עברית', '<script>', 'x&y=z+1', '{}', 'yes', '1'].map(
  (name) => lever(name, `sites.${name}.stations[0].places`),
);

describe('changes that are kept', () => {
  it('are an entry of a file of what-ifs, as YAML reads it, whatever the names', () => {
    const moved = HOSTILE.map((each, i) => ({ lever: each, to: i + 2 })),
      read = parse(whatIfLines(moved)) as Record<string, { changes: Record<string, number>[] }>;
    const [entry] = Object.values(read);
    expect(Object.keys(read)).toHaveLength(1);
    expect(Object.keys(read)[0]?.length).toBeLessThanOrEqual(80);
    expect(entry?.changes).toEqual(moved.map(({ lever: { change }, to }) => ({ [change]: to })));
  });

  it('have the unit of the value', () => {
    const work = lever('for a coat', 'route.coat.work', ' min', 45);
    expect(whatIfLines([{ lever: work, to: 50 }])).toBe(
      '50 min for a coat:\n  changes:\n    - route.coat.work: "50 min"\n',
    );
  });

  it('come back from the address of the page; what it does not name is as in the report', () => {
    const address = addressOf([
      { lever: HOSTILE[6]!, to: 2.5 },
      { lever: HOSTILE[4]!, to: 7 },
    ]);
    const numbers = numbersIn(address, HOSTILE);
    expect(numbers[6]).toBe(2.5);
    expect(numbers[4]).toBe(7);
    expect(numbers.filter((to) => to !== 1)).toHaveLength(2);
    expect(new URL(`file:///a/report.html${address}`).hash).toBe(address);
  });

  it('are none in an address of something else, and nonsense in it is none', () => {
    expect(numbersIn('#tables', HOSTILE)).toEqual(HOSTILE.map(() => 1));
    expect(numbersIn('#try&yes=many&nobody=3', HOSTILE)).toEqual(HOSTILE.map(() => 1));
    expect(addressOf([])).toBe('#');
  });
});
