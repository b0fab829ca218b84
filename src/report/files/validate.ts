import type { Compared, ValidateResults } from '../../study/validate/results.js';
import { stableJson } from '../json.js';
import { csv, type FileTable, fileTable } from './folder/csv.js';
import { leftOutFile } from './folder/left-out.js';
import type { Files } from './folder/study-files.js';

/** The report of `validate`. */
export const validateFiles = (results: ValidateResults): Promise<Files> =>
  Promise.resolve(
    new Map([
      ['results.json', stableJson(results)],
      ['measures.csv', csv(measuresData(results))],
      ['days.csv', csv(daysData(results))],
      ...leftOutFile(results.log),
    ]),
  );

/** One row a measure. */
export function measuresData({ measures }: ValidateResults): FileTable {
  return fileTable<Compared>(measures, [
    ['topic', 'topic'],
    ['of', 'of'],
    ['what', 'what'],
    ['log', 'real'],
    ['log_n', 'n'],
    ['model', ({ simulated }) => simulated?.middle],
    ['model_low', ({ simulated }) => simulated?.low],
    ['model_high', ({ simulated }) => simulated?.high],
    ['p_adjusted', 'adjusted'],
    ['agrees', ({ agrees }) => (agrees === null ? undefined : agrees ? 'yes' : 'no')],
  ]);
}

/** One row a day: units shipped since the start. */
export function daysData({ byDay }: ValidateResults): FileTable {
  return fileTable(byDay, [
    ['day', 'day'],
    ['date', 'date'],
    ['log', 'real'],
    ['model_least', 'low'],
    ['model_middle', 'middle'],
    ['model_most', 'high'],
  ]);
}
