import { type ReadTable, sayCell, sayHeadings, type TableRow } from '../file/csv.js';
import { saySeen } from '../file/problem.js';
import type { Finding, Path } from '../types/problem.js';
import type { OptionMix, Order } from '../types/programme.js';
import { NAME } from '../values/keys.js';
import { nearest } from '../values/nearest.js';
import { isDate } from '../values/quantity.js';
import { own } from '../values/raw.js';

const FIXED = ['build', 'release', 'due', 'stands at'];

/** The rows of a build list; what is wrong with them joins `findings`. */
export function readBuilds(
  file: string,
  options: OptionMix,
  readTable: ReadTable,
  findings: Finding[],
): Order[] {
  const path: Path = ['programme', 'build list'],
    table = readTable(file);
  if (table.fault !== undefined) {
    findings.push({ path, ...table.fault });
    return [];
  }
  const at = (line: number): Order['written'] => ({ path, source: { file: table.file, line, column: 1 } });
  const known = [...FIXED, ...Object.keys(options)],
    before = findings.length;
  if (!table.headings.includes('build')) {
    const near = nearest('build', table.headings);
    findings.push({
      ...at(table.line),
      wanted: 'a column with the heading build',
      seen: sayHeadings(table.headings, near !== undefined),
      suggestion: near,
    });
    return [];
  }
  table.headings.forEach((heading, i) => {
    if (!known.includes(heading))
      findings.push({
        ...at(table.line),
        wanted: `a column with one of the headings ${known.join(', ')}`,
        seen: sayCell(heading),
        suggestion: nearest(heading, known),
      });
    else if (table.headings.indexOf(heading) < i)
      findings.push({ ...at(table.line), wanted: 'each heading once', seen: `${sayCell(heading)} again` });
  });
  if (findings.length > before) return [];
  return table.rows.map((row) => readRow(row, table.headings, options, at(row.line), findings));
}

function readRow(
  { cells }: TableRow,
  headings: readonly string[],
  options: OptionMix,
  written: Order['written'],
  findings: Finding[],
): Order {
  const cell = (heading: string): string | undefined => cells[headings.indexOf(heading)] || undefined;
  const day = (heading: string): string | undefined => {
    const text = cell(heading);
    if (text === undefined || isDate(text)) return text;
    findings.push({
      ...written,
      wanted: `a day in column "${heading}", such as 2027-03-01`,
      seen: sayCell(text),
    });
    return undefined;
  };
  const own = cell('build');
  if (own === undefined || !NAME.test(own))
    findings.push({
      ...written,
      wanted: 'a build number of 1 to 80 characters in column "build"',
      seen: sayCell(own ?? ''),
    });
  const chosen: Record<string, string> = {};
  for (const option of Object.keys(options)) {
    const value = cell(option);
    if (value === undefined) continue;
    checkOption(option, value, options, written, findings);
    chosen[option] = value;
  }
  const release = day('release'),
    stands = cell('stands at');
  if (release !== undefined && stands !== undefined)
    findings.push({
      ...written,
      wanted: 'either a day of release or the step at which the unit stands already',
      seen: 'both',
    });
  return { build: own, release, due: day('due'), options: chosen, at: stands, written };
}

/** An option, and a value of it, that the programme must have. */
export function checkOption(
  option: string,
  value: string,
  options: OptionMix,
  written: Order['written'],
  findings: Finding[],
): void {
  const mix = own(options, option),
    known = Object.keys(mix ?? options),
    seen = mix === undefined ? option : value;
  if (mix !== undefined && Object.hasOwn(mix, value)) return;
  findings.push({
    ...written,
    wanted: mix === undefined ? 'no option of this name' : `no value of this name in option ${option}`,
    seen: saySeen(seen),
    suggestion: nearest(seen, known),
    ...(mix === undefined && { atKey: true }),
  });
}
