import { basename } from 'node:path';
import { command } from '../arguments/command.js';
import { flag, optional, repeatable, type Word, withDefault, word } from '../arguments/option.js';
import { ANSWER, INCLUDE_FROM } from '../arguments/options.js';
import { filledText, oneOf, perCent } from '../arguments/readers.js';
import { EXIT } from '../exit-code.js';
import { outputWidth, printJson, printResults, say } from '../output.js';
import { COLUMNS, checkedFit, onlyOfLogs } from '../records/fit-request.js';
import { UsageError } from '../usage-error.js';
import { day, NAMES } from './records/options.js';

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
  words: {
    table: word('TABLE', 'TABLE', 'what was clocked or counted, CSV or XLSX, or a floor log'),
    scenario: SCENARIO,
  },
  summary: 'what was clocked or counted on the floor, as values for a scenario',
  about:
    'cleans a table of times, of what inspections found, or of stops, or a floor log; fits what it tells, ' +
    'and writes what a scenario includes',
  examples: [
    ['rateproof fit times.csv line.yaml', 'what the times of a time study say of each step'],
    'rateproof fit times.csv line.yaml --out out/fitted   (then include: [fitted.yaml])',
    'rateproof fit found.csv line.yaml --of chances --by colour',
    'rateproof fit floor.csv line.yaml --of learning --from 2027-08-16',
    'rateproof fit times.xlsx line.yaml --step operation --minutes clocked --date day --by cab',
  ],
  options: {
    of: withDefault(
      'what to fit: times, chances, learning or stops',
      'times',
      oneOf('times', 'chances', 'learning', 'stops'),
    ),
    step: column('the steps, default step', 'operation'),
    minutes: column('the times: 42.5, "1.5 h" or "1:30"; default minutes', 'clocked'),
    date: column('dates, for drift; default date, if there is one', 'day'),
    unit: column('build numbers, to find rows that stand twice; default unit, if there is one', 'number'),
    by: repeatable('column of an option that values may depend on; may be given several times'),
    defect: column('kinds of defect; default defect, if there is one', 'kind'),
    found: column('what was found: yes or no, or how many; default found', 'result'),
    units: column('how many units were looked at; default units, if there is one', 'checked'),
    station: column('stations or equipment that stopped, default station', 'machine'),
    began: column('when stops began, default from', '"down at"'),
    ended: column('when stops ended, default to; empty: not yet', '"up at"'),
    up: column('minutes up before a stop, default up', 'ran'),
    down: column('minutes down, default down; empty: no stop yet', 'stood'),
    inUse: optional('share of its hours in which a station is in use, default all', perCent),
    from: optional('first day, of a floor log or of stops', day),
    to: optional('last day, of a floor log or of stops', day),
    names: NAMES,
    ...{ out, replace, quiet },
    json: flag('print what results.json holds instead of the table'),
    includeFrom: INCLUDE_FROM,
    seed: withDefault('any text; the same seed gives the same results', '1', filledText('a text', '1')),
  },
  request: checkedFit,
  run: async (request) => {
    const { table, of, includeFrom, seed, json, quiet, ...asked } = request,
      [file] = request.scenario;
    const { checkOut, writeReport } = await import('../report-folder.js');
    if (asked.out !== undefined) checkOut(asked.out, asked.replace);
    const { isLogFile } = await import('../records/is-log.js');
    const isLog = COLUMNS.every((key) => asked[key] === undefined) && isLogFile(table);
    if (of !== 'times' || isLog)
      return (await import('../records/fit-records.js')).fitRecords(request, isLog);
    if (asked.from !== undefined || asked.to !== undefined) throw onlyOfLogs();
    const { loadPlaces } = await import('../records/places.js');
    const { loadTable, readable } = await import('../records/table-file.js');
    const { readNames } = await import('../records/names-file.js');
    const { readTimes } = await import('../../records/table/clocked.js');
    const { fitStep } = await import('../../study/fit/steps.js');
    const { fitResults } = await import('../../study/fit/results.js');
    const { fingerprint } = await import('../../study/run/identity.js');
    const { fitFiles, fitJson } = await import('../../report/files/fit.js');
    const { fitTable } = await import('../../report/terminal/records/fit.js');
    const scenario = loadPlaces(file, includeFrom),
      names = asked.names === undefined ? undefined : readNames(asked.names);
    const lines = await loadTable(table),
      read = await readable(table, () => readTimes(lines, asked, scenario.steps, names));
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
        tableDigest: fingerprint(lines),
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
