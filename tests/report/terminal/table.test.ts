import { describe, expect, it } from 'vitest';
import { fitColumns } from '../../../src/report/shorten.js';
import { table } from '../../../src/report/terminal/table.js';

describe('plain text table', () => {
  it('aligns columns left and right, with a rule under the head and no blanks at line ends', () => {
    expect(
      table(
        [
          ['prime booth', '4', ''],
          ['oven', '12', 'no'],
        ],
        [{ head: 'station' }, { head: 'n', align: 'right' }, { head: 'note' }],
      ).split('\n'),
    ).toEqual(['station       n  note', '-----------  --  ----', 'prime booth   4', 'oven         12  no']);
  });

  it('keeps both ends of a name that is too long for its column', () => {
    expect(
      table([['final assembly station 12']], [{ head: 'name', most: 12 }])
        .split('\n')
        .at(-1),
    ).toBe('final…ion 12');
  });

  it('counts letters, not UTF-16 units', () => {
    expect(
      table(
        [
          ['🚚', 'x'],
          ['å', 'y'],
        ],
        [{ head: 'a' }, { head: 'b' }],
      )
        .split('\n')
        .slice(2),
    ).toEqual(['🚚  x', 'å  y']);
  });

  it('refuses a row with a missing cell', () => {
    expect(() => table([['a']], [{ head: 'a' }, { head: 'b' }])).toThrow(
      'row of a table: expected 2 cells, got 1',
    );
  });
});

describe('shortened names', () => {
  it.each([1, 2, 3, 7, 20])('never pass %i columns', (columns) => {
    expect(
      Array.from(fitColumns('equip lockers with drawers and trays', columns)).length,
    ).toBeLessThanOrEqual(columns);
  });

  it('leave short names alone', () => {
    expect(fitColumns('oven', 4)).toBe('oven');
  });
});
