import type { Compared, DayRow, ValidateResults } from '../../study/validate/results.js';
import { CHARTS } from '../charts/of-study.js';
import { validatePage } from '../page/records/validate.js';
import { type FileColumn, type FileTable, fileTable } from './folder/csv.js';
import { leftOutRows } from './folder/left-out.js';
import { studyFiles } from './folder/study-files.js';

/** The report of `validate`. */
export const validateFiles = studyFiles<ValidateResults>({
  charts: CHARTS.validate,
  page: validatePage,
  data: { 'measures.csv': measuresData, 'days.csv': daysData, 'left-out.csv': ({ log }) => leftOutRows(log) },
  sheets: ['days.csv', 'left-out.csv'],
});

/** One row a measure. */
function measuresData({ measures }: ValidateResults): FileTable {
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

/** One row a day: units shipped since the start, then mean units at each site and on each lane. */
function daysData({ byDay, wipByDay }: ValidateResults): FileTable {
  const ends = [
    ['log', 'real'],
    ['model_least', 'low'],
    ['model_middle', 'middle'],
    ['model_most', 'high'],
  ] as const;
  return fileTable(byDay, [
    ['day', 'day'],
    ['date', 'date'],
    ['log', 'real'],
    ['model_least', 'low'],
    ['model_middle', 'middle'],
    ['model_most', 'high'],
    ...wipByDay.flatMap((place) =>
      ends.map(
        ([name, end]): FileColumn<DayRow> => [`${place.place}_${name}`, ({ day }) => place[end][day - 1]],
      ),
    ),
  ]);
}
