import { describe, expect, it } from 'vitest';
import { joined, lines } from '../../../src/report/terminal/lines.js';
import { type Column, table } from '../../../src/report/terminal/table.js';

const at = (width: number, rows: readonly (readonly string[])[], columns: readonly Column[]): string[] =>
  table(rows, columns)(width).split('\n');

describe('plain text table', () => {
  it('aligns columns left and right, with a rule under the head and no blanks at line ends', () => {
    expect(
      at(
        100,
        [
          ['prime booth', '4', ''],
          ['oven', '12', 'no'],
        ],
        [{ head: 'station' }, { head: 'n', align: 'right' }, { head: 'note' }],
      ),
    ).toEqual(['station       n  note', '-----------  --  ----', 'prime booth   4', 'oven         12  no']);
  });

  it('counts letters, not UTF-16 units', () => {
    expect(
      at(
        100,
        [
          ['🚚', 'x'],
          ['å', 'y'],
        ],
        [{ head: 'a' }, { head: 'b' }],
      ).slice(2),
    ).toEqual(['🚚  x', 'å  y']);
  });

  it('refuses a row with a missing cell', () => {
    expect(() => table([['a']], [{ head: 'a' }, { head: 'b' }])).toThrow(
      'row of a table: expected 2 cells, got 1',
    );
  });
});

describe('a table that is too wide', () => {
  const crews = [
    ['1', 'one person more in painters (shell works)', '0.796 (0.762 to 0.830)', '16,480'],
    ['2', 'one person more in finishers (shell works)', '0.412 (0.380 to 0.444)', '9,210'],
  ];
  const columns: readonly Column[] = [
    { head: '', align: 'right' },
    { head: 'relief' },
    { head: 'gain a day' },
    { head: 'EUR a unit', align: 'right' },
  ];

  it('goes on in further lines: names stay whole, and what tells rows apart is never lost', () => {
    expect(at(60, crews, columns)).toEqual([
      '                                                       EUR a',
      '   relief                     gain a day                unit',
      '-  -------------------------  ----------------------  ------',
      '1  one person more in         0.796 (0.762 to 0.830)  16,480',
      '     painters (shell works)',
      '2  one person more in         0.412 (0.380 to 0.444)   9,210',
      '     finishers (shell works)',
    ]);
  });

  it.each([100, 80, 60, 44, 34, 20])(
    'at %i columns no line is wider, no letter is lost and no figure broken',
    (width) => {
      const shown = at(width, crews, columns);
      for (const line of shown) expect(Array.from(line).length, line).toBeLessThanOrEqual(width);
      const letters = (text: string): string => Array.from(text.replace(/\s/g, '')).sort().join('');
      const all = shown.join('\n');
      for (const row of crews)
        for (const cell of row) {
          // Words in their order may stand in several lines, beside other cells; none is missing.
          for (const word of cell.split(' ')) expect(all).toContain(word);
        }
      expect(letters(all).length).toBeGreaterThanOrEqual(letters(crews.flat().join('')).length);
      for (const figure of ['0.762 to 0.830', '0.380 to 0.444', '16,480']) expect(all).toContain(figure);
    },
  );

  it('never lets columns touch: two spaces are between them, in every line', () => {
    const shown = at(60, crews, columns),
      rule = shown.find((line) => line.startsWith('-')) ?? '';
    const gaps = [...rule.matchAll(/ {2}/g)].map(({ index }) => index);
    expect(gaps).toHaveLength(3);
    for (const line of shown) for (const gap of gaps) expect(line.slice(gap, gap + 2).trim()).toBe('');
  });

  it('gives a head a second line before a name', () => {
    const few: Column[] = [{ head: 'water' }, { head: 'units in all places', align: 'right' }];
    expect(at(22, [['a river', '22']], few)).toEqual([
      '          units in all',
      'water           places',
      '-------  -------------',
      'a river             22',
    ]);
  });

  it('stands as a list under its head where its figures alone are wider', () => {
    expect(at(34, crews, columns).slice(0, 5)).toEqual([
      'relief:',
      '1 one person more in painters',
      '    (shell works)',
      '  gain a day: 0.796',
      '    (0.762 to 0.830)',
    ]);
  });

  it('breaks a word of more than a line, and nothing else within a word', () => {
    expect(at(14, [['w'.repeat(20)]], [{ head: 'name' }])).toEqual([
      'name',
      '-'.repeat(14),
      'w'.repeat(14),
      `  ${'w'.repeat(6)}`,
    ]);
  });

  it('keeps the indent of a row, and that of what goes on behind it', () => {
    expect(
      at(
        22,
        [['  coachworks to final plant', '3.4']],
        [{ head: 'measure' }, { head: 'mean', align: 'right' }],
      ).slice(2),
    ).toEqual(['  coachworks to    3.4', '    final plant']);
  });
});

describe('sentences', () => {
  it('end no line within 95 % CI, a span, or a number with its unit', () => {
    const sentence =
      'Four a day is not held: 3.46 a working day are shipped (95 % CI 3.41 to 3.51, 1,000 units) at 16,480 EUR.';
    for (let width = 24; width <= 100; width++) {
      const broken = lines(sentence, '', width);
      expect(broken.join(' ')).toBe(sentence);
      for (const figure of ['95 % CI', '3.46 a working day', '3.41 to 3.51', '1,000 units', '16,480 EUR'])
        expect(
          broken.some((line) => line.includes(figure)),
          `${figure} at ${width}`,
        ).toBe(true);
      for (const line of broken) expect(line.length).toBeLessThanOrEqual(width);
    }
  });

  it('behind the answer are indented where they go on', () => {
    expect(joined(['No: one two three', 'more of the same', table([['a']], [{ head: 'x' }])], 10)).toBe(
      'No: one\ntwo three\nmore of\n  the same\nx\n-\na',
    );
  });
});
