import { describe, expect, it } from 'vitest';
import { readTable } from '../../../src/scenario/file/csv.js';
import { readScenario } from '../../../src/scenario/read.js';
import { unsafeMark } from '../../../src/scenario/values/marks.js';
import { shown } from '../../../src/study/shown.js';

/** The code charts of the Unicode Standard: C0 and DEL, C1, separators, byte order mark, bidi controls. */
const REFUSED = [
    0x00, 0x07, 0x08, 0x0b, 0x0d, 0x1b, 0x1f, 0x7f, 0x80, 0x85, 0x9b, 0x9f, 0x2028, 0x2029, 0x202a, 0x202e,
    0x2066, 0x2069, 0xfeff,
  ],
  /** Marks of right-to-left names; joiners of Persian and of emoji. */
  KEPT = [0x20, 0xa0, 0x200c, 0x200d, 0x200e, 0x200f, 0x061c, 0x05d0, 0x0627, 0x4e00, 0x1f600];
const scenarioOf = (name: string, title = '"t"'): string => `
scenario: ${title}
programme: { start: 2027-03-01, quantity: 4, rate: { per day: 2 } }
sites: { a: { stations: { ${JSON.stringify(name)}: {} } } }
route: [{ step: w, at: ${JSON.stringify(name)}, work: 1 h }]
`;
const problemsOf = (yaml: string) => readScenario(yaml, 'a.yaml', () => '').problems ?? [];

describe('a text of a scenario', () => {
  it.each(REFUSED)('holds no mark %i, which a terminal or a browser would act on', (code) => {
    expect(unsafeMark(`a${String.fromCodePoint(code)}b`, false)).toMatch(/^U\+[0-9A-F]{4}$/);
  });

  it.each(KEPT)('may hold mark %i, which honest names need', (code) => {
    expect(unsafeMark(`a${String.fromCodePoint(code)}b`, true)).toBeUndefined();
  });

  it('is refused with its line, as a key, as a value and in a table', () => {
    expect(problemsOf(scenarioOf('a\u202egnp.exe'))[0]).toMatchObject({ line: 4, seen: 'U+202E' });
    expect(problemsOf(scenarioOf('s', '"a\\u001b[31m"'))[0]).toMatchObject({ line: 2, seen: 'U+001B' });
    expect(problemsOf(scenarioOf('two\nlines'))[0]).toMatchObject({ line: 4, seen: 'U+000A' });
    expect(readTable(() => 'unit,colour\n1,re\u0007d\n', 'builds.csv', 'unit').fault).toMatchObject({
      seen: 'U+0007',
      source: { file: 'builds.csv', line: 2 },
    });
    expect(problemsOf(scenarioOf('\u05ea\u05d7\u05e0\u05d4 (2)'))).toEqual([]);
  });
});

describe('text in an output', () => {
  it('has no mark that would be acted on, but says which stood there', () => {
    for (const code of REFUSED) {
      const text = shown(`a${String.fromCodePoint(code)}b`);
      expect(text).toMatch(/^a<U\+[0-9A-F]{4}>b$/);
    }
    expect(shown('a line\n\tand another')).toBe('a line\n\tand another');
  });

  it('isolates what is written from the right, from its first letter to its last', () => {
    // U+2068 first strong isolate, U+2069 pop directional isolate (Unicode Standard Annex 9).
    expect(shown('at \u05ea\u05d7\u05e0\u05d4 2 \u05d1: 3 a day')).toBe(
      'at \u2068\u05ea\u05d7\u05e0\u05d4 2 \u05d1\u2069: 3 a day',
    );
    expect(shown('booth 2: 3 a day')).toBe('booth 2: 3 a day');
  });
});
