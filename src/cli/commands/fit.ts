import { basename } from 'node:path';
import { command } from '../arguments/command.js';
import { flag, optional, repeatable, type Word, withDefault, word } from '../arguments/option.js';
import { ANSWER, INCLUDE_FROM } from '../arguments/options.js';
import { filledText } from '../arguments/readers.js';
import { EXIT } from '../exit-code.js';
import { outputWidth, printJson, printResults, say } from '../output.js';
import { UsageError } from '../usage-error.js';

const { out, replace, quiet } = ANSWER;
const column = (what: string, example: string) =>
  optional<string>(`column of ${what}`, filledText('the name of a column', example));
const SCENARIO: Word<readonly string[]> = {
  ...word('FILE', 'scenario FILE', 'the scenario whose steps they are, YAML; may be left out'),
  isMany: true,
  read: (texts) => texts,
};

export const fit = command({
  name: 'fit',
  words: { table: word('TABLE', 'TABLE', 'times that were clocked, CSV or XLSX'), scenario: SCENARIO },
  summary: 'times that were clocked, as distributions for a scenario',
  about:
    'cleans a table of times, fits distributions to those of each step, and writes what a scenario includes',
  examples: [
    ['rateproof fit times.csv line.yaml', 'what the times of a time study say of each step'],
    'rateproof fit times.csv line.yaml --out out/fitted   (then include: [fitted.yaml])',
    'rateproof fit times.xlsx line.yaml --step operation --minutes clocked --date day --by cab',
  ],
  options: {
    step: column('the steps, default step', 'operation'),
    minutes: column('the times: 42.5, "1.5 h" or "1:30"; default minutes', 'clocked'),
    date: column('dates, for drift; default date, if there is one', 'day'),
    unit: column('build numbers, to find rows that stand twice; default unit, if there is one', 'number'),
    by: repeatable('column of an option that times may depend on; may be given several times'),
    ...{ out, replace, quiet },
    json: flag('print what results.json holds instead of the table'),
    includeFrom: INCLUDE_FROM,
    seed: withDefault('any text; the same seed gives the same results', '1', filledText('a text', '1')),
  },
  request: (given) => {
    const [, second] = given.scenario;
    if (second !== undefined)
      throw new UsageError(`expected one scenario FILE, got ${second} besides`, 'give one file');
    return given;
  },
  run: async ({ table, scenario: [file], includeFrom, seed, json, quiet, ...asked }) => {
    const { checkOut, writeReport } = await import('../report-folder.js');
    if (asked.out !== undefined) checkOut(asked.out, asked.replace);
    const { loadPlaces } = await import('../records/places.js');
    const { loadTable, readable } = await import('../records/table-file.js');
    const { readTimes } = await import('../../records/table/clocked.js');
    const { fitStep } = await import('../../study/fit/steps.js');
    const { fitResults } = await import('../../study/fit/results.js');
    const { rowsDigest } = await import('../../study/fit/digest.js');
    const { fitFiles, fitJson } = await import('../../report/files/fit.js');
    const { fitTable } = await import('../../report/terminal/records/fit.js');
    const scenario = loadPlaces(file, includeFrom);
    const lines = await loadTable(table),
      read = await readable(table, () => readTimes(lines, asked, scenario.steps));
    if (read.steps.length === 0)
      throw new UsageError(
        `${table}: expected at least one row that can be used, got none of ${read.rows}`,
        read.oddities[0]?.told ?? 'each row names a step and its minutes',
        read.oddities.map(({ told, lines: at }) => `${table}: line ${at.join(', ')}: ${told}`),
      );
    const results = fitResults(
      read,
      read.steps.map((each) => fitStep(each, seed, scenario.placeOf(each.step))),
      {
        table: basename(table),
        tableDigest: rowsDigest(lines),
        scenarioFile: file === undefined ? null : basename(file),
        scenarioDigest: scenario.digest,
        seed,
      },
    );
    if (json) printJson(fitJson(results));
    else printResults(fitTable(results, outputWidth()));
    if (asked.out !== undefined) {
      writeReport(asked.out, await fitFiles(results, say), asked.replace);
      if (!quiet) say(`wrote ${asked.out}; include fitted.yaml in the scenario to use it`);
    }
    return EXIT.done;
  },
});
