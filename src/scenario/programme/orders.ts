import type { OptionMix, Order } from '../types/programme.js';
import type { Finding, Path } from '../types/problem.js';
import { z } from 'zod';
import { nearest } from '../values/nearest.js';
import { saySeen } from '../file/problem.js';
import { isDate } from '../values/quantity.js';

import { date, duration, flag, keys, name, NAME, optionValue, whole } from '../values/keys.js';
import type { ReadTable, TableRow } from '../file/csv.js';

const build = z.union([name('a build number'), z.number().transform(String)], {
  error: 'a build number, such as RT-017',
});

const standing = keys(
  {
    at: name('the name of a step or lane').describe(
      'The step that it is about to begin, or the lane whose truck it waits for. Example: inspect primer',
    ),
    units: whole(1, 100_000).default(1).describe('How many such units. Default: 1. Example: 2'),
    build: build.optional().describe('Your own build number of the unit, if it is one. Example: RT-017'),
    due: date.optional().describe('The day at the end of which it is due. Example: 2027-04-30'),
    options: z
      .record(z.string(), optionValue, { error: 'a map from options to values' })
      .default({})
      .describe('What is known of its options; the others are drawn. Example: { colour: red }'),
  },
  'a map with the key at, and perhaps units, build, due, options',
).superRefine((entry, context) => {
  if (entry.build !== undefined && entry.units > 1)
    context.addIssue({ code: 'custom', path: ['units'], message: '1 unit for a build number' });
});

/** Keys of a programme that tell of single units. */
export const orderKeys = {
  'build list': name('the name of a CSV file')
    .optional()
    .describe(
      'A CSV file with one row a unit, path relative to the folder of the scenario file. Columns: ' +
        '`build` (your own build number, each once); and as you like `release` (the day of its ' +
        'release; without one it is released in its turn by the rate), `due` (the day at the end of ' +
        'which it is due), `stands at` (the step or lane at which it stands when the run starts), ' +
        'and one column for each option (an empty cell, or no column: drawn by chance). Example: builds.csv',
    ),
  'due after': duration
    .optional()
    .describe(
      'When a unit is due without a date of its own: so long after its release, by the clock. A ' +
        'unit of the opening counts from the start of the run. Example: 25 days',
    ),
  opening: z
    .array(standing, { error: 'a list of units, such as [{ at: inspect primer, units: 2 }]' })
    .default([])
    .describe(
      'Units that stand on the floor when the run starts, each at the step that it is about to ' +
        'begin. They count in the quantity and come first in build order. Example: [{ at: inspect ' +
        'primer, units: 2 }]',
    ),
  'replace scrapped': flag
    .default(false)
    .describe(
      'With true the order of a scrapped unit is built again at once: same build number, options ' +
        'and due date; the run ends when all orders are shipped. Default: false. Example: true',
    ),
} as const;

interface Written {
  readonly 'build list'?: string | undefined;
  readonly opening: readonly z.output<typeof standing>[];
  readonly options: OptionMix;
}

/** The orders of a programme, and what is wrong with them by themselves. */
export function readOrders(
  programme: Written,
  readTable: ReadTable,
): { readonly list: Order[]; readonly findings: Finding[] } {
  const { opening, options, 'build list': file } = programme,
    findings: Finding[] = [],
    list: Order[] = [];
  opening.forEach(({ at, units, build: own, due, options: chosen }, i) => {
    const path: Path = ['programme', 'opening', i];
    for (const [option, value] of Object.entries(chosen))
      checkOption(option, value, options, { path: [...path, 'options', option] }, findings);
    for (let unit = 0; unit < units; unit++)
      list.push({ build: own, release: undefined, due, options: chosen, at, written: { path } });
  });
  if (file !== undefined) list.push(...readBuilds(file, options, readTable, findings));
  const seen = new Set<string>();
  for (const { build: own, written } of list) {
    if (own === undefined) continue;
    if (seen.has(own))
      findings.push({ ...written, wanted: 'each build number once', seen: `${saySeen(own)} again` });
    seen.add(own);
  }
  return { list, findings };
}

const FIXED = ['build', 'release', 'due', 'stands at'];

function readBuilds(file: string, options: OptionMix, readTable: ReadTable, findings: Finding[]): Order[] {
  const path: Path = ['programme', 'build list'],
    table = readTable(file);
  if (table.fault !== undefined) {
    findings.push({ path, ...table.fault });
    return [];
  }
  const at = (line: number): Order['written'] => ({ path, source: { file, line, column: 1 } });
  const known = [...FIXED, ...Object.keys(options)],
    before = findings.length;
  table.headings.forEach((heading, i) => {
    if (!known.includes(heading))
      findings.push({
        ...at(table.line),
        wanted: `a column with one of the headings ${known.join(', ')}`,
        seen: saySeen(heading),
        suggestion: nearest(heading, known),
      });
    else if (table.headings.indexOf(heading) < i)
      findings.push({ ...at(table.line), wanted: 'each heading once', seen: `${saySeen(heading)} again` });
  });
  if (!table.headings.includes('build'))
    findings.push({
      ...at(table.line),
      wanted: 'a column with the heading build',
      seen: `the headings ${table.headings.join(', ')}`,
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
      seen: saySeen(text),
    });
    return undefined;
  };
  const own = cell('build');
  if (own === undefined || !NAME.test(own))
    findings.push({
      ...written,
      wanted: 'a build number of 1 to 80 characters in column "build"',
      seen: saySeen(own ?? ''),
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

function checkOption(
  option: string,
  value: string,
  options: OptionMix,
  written: Order['written'],
  findings: Finding[],
): void {
  if (!Object.hasOwn(options, option))
    findings.push({
      ...written,
      wanted: 'no option of this name',
      seen: saySeen(option),
      suggestion: nearest(option, Object.keys(options)),
      atKey: true,
    });
  else if (!Object.hasOwn(options[option]!, value))
    findings.push({
      ...written,
      wanted: `no value of this name in option ${option}`,
      seen: saySeen(value),
      suggestion: nearest(value, Object.keys(options[option]!)),
    });
}

/**
 * Units that stand on the floor at the start, that have a day of release, and that are released by the rate
 * (undefined without a quantity).
 */
export function orderCounts(
  list: readonly Order[],
  quantity: number | undefined,
): { opening: number; dated: number; byRate: number | undefined } {
  const opening = list.filter(({ at }) => at !== undefined).length,
    dated = list.filter(({ release }) => release !== undefined).length;
  return { opening, dated, byRate: quantity === undefined ? undefined : quantity - opening - dated };
}
