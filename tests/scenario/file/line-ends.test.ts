import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { describe, expect, it } from 'vitest';
import { digest } from '../../../src/scenario/digest.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { type ReadResult, readScenario } from '../../../src/scenario/read.js';
import { readWhatIfs } from '../../../src/scenario/what-ifs.js';
import { fixture } from '../read-small.js';

const folder = new URL('../../../scenarios/', import.meta.url);
const textOf = (path: string): string => readFileSync(new URL(path, folder), 'utf8');
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => name.endsWith('.yaml') && textOf(name).includes('\nscenario: '));

type Written = (text: string) => string;
const asIs: Written = (text) => text;
const WRITTEN: readonly (readonly [string, Written])[] = [
  ['CRLF', (text) => text.replaceAll('\n', '\r\n')],
  ['a byte order mark', (text) => `\ufeff${text}`],
  ['both', (text) => `\ufeff${text.replaceAll('\n', '\r\n')}`],
];
const read = (file: string, written: Written): ReadResult =>
  readScenario(written(textOf(file)), file, (path) => written(textOf(posix.join(posix.dirname(file), path))));

describe.each(WRITTEN)('a text with %s', (_, written) => {
  it('is the same scenario, whatever it includes', () => {
    expect(files.length).toBeGreaterThan(20);
    for (const file of files) {
      const { scenario, problems } = read(file, written);
      expect((problems ?? []).map(sayProblem)).toEqual([]);
      const { scenario: wanted } = read(file, asIs);
      expect(scenario).toEqual(wanted);
      expect(digest(scenario!)).toBe(digest(wanted!));
    }
  });

  it('is the same where text runs over lines, in a block or a quoted text', () => {
    for (const note of [
      '|\n  first\n\n  second',
      '>-\n  first\n  goes on\n\n  second',
      '"one\n  two\n\n  three"',
    ]) {
      const text = fixture('full.yaml').replace(/^(?:note: .*\n)?(?=programme:)/m, `note: ${note}\n`);
      const wanted = readScenario(text, 'full.yaml', fixture).scenario!,
        found = readScenario(written(text), 'full.yaml', (path) => written(fixture(path))).scenario!;
      expect(wanted.note).toMatch(/\n/);
      expect(found).toEqual(wanted);
      expect(digest(found)).toBe(digest(wanted));
    }
  });

  it('is the same file of what-ifs', () => {
    const of = (how: Written) =>
      readWhatIfs(
        how(textOf('rescue-tender/what-ifs.yaml')),
        'what-ifs.yaml',
        { text: how(textOf('rescue-tender.yaml')), file: 'rescue-tender.yaml' },
        (path) => how(textOf(path)),
      );
    expect(of(written)).toEqual(of(asIs));
  });

  it('has its faults in the same lines and columns', () => {
    const said = (how: Written): string[] =>
      (
        readScenario(how(fixture('full.yaml').replaceAll('at: ', 'att: ')), 'full.yaml', (path) =>
          how(fixture(path)),
        ).problems ?? []
      ).map(sayProblem);
    expect(said(asIs).length).toBeGreaterThan(3);
    expect(said(written)).toEqual(said(asIs));
  });
});

describe('a table', () => {
  const said = (csv: string): string[] =>
    (
      readScenario(
        `scenario: one
programme: { arrivals: saturated, length: 10 h }
sites: { works: { stations: { jig: {} } } }
route: [{ step: build, at: jig, work: { observed: times.csv, column: min, unit: min } }]
`,
        'one.yaml',
        () => csv,
      ).problems ?? []
    ).map(sayProblem);

  it('may have lines that end in two ways, as after an edit by hand on another system', () => {
    expect(said('unit,min\r\n1,20\n2,30\r\n3,x\n')).toEqual([expect.stringMatching(/^times\.csv:4:1 /)]);
    expect(said('unit,min\r\n1,20\n2,30\r\n')).toEqual([]);
  });

  it('that is not UTF-8, as a spreadsheet may save it, is told with its line', () => {
    const latin = Buffer.from('unit,min\r\nTür,20\r\n', 'latin1').toString('utf8'),
      wide = Buffer.from('unit,min\n1,20\n', 'utf16le').toString('utf8');
    expect(said(latin)).toEqual([
      expect.stringMatching(/^times\.csv:2:1 .*UTF-8 text; save the file as CSV in UTF-8/),
    ]);
    expect(said(wide)).toEqual([expect.stringMatching(/^times\.csv:1:1 .*UTF-8 text/)]);
  });
});
