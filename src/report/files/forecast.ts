import type { ForecastResults } from '../../study/forecast/forecast.js';
import { CHARTS } from '../charts/of-study.js';
import { forecastPage } from '../page/records/forecast.js';
import { type FileTable, fileTable } from './folder/csv.js';
import { leftOutRows } from './folder/left-out.js';
import { studyFiles } from './folder/study-files.js';

/** The report of `forecast`. */
export const forecastFiles = studyFiles<ForecastResults>({
  charts: CHARTS.forecast,
  page: forecastPage,
  data: { 'orders.csv': ordersData, 'days.csv': daysData, 'left-out.csv': ({ log }) => leftOutRows(log) },
  sheets: ['days.csv', 'left-out.csv'],
});

/** One row an order. */
function ordersData({ orders }: ForecastResults): FileTable {
  return fileTable(orders, [
    ['order', 'unit'],
    ['stands_at', 'at'],
    ['due', 'due', 'day'],
    ['late_builds', 'late', 'count'],
    ['days_late', 'daysLate', 'count'],
    ['out_half', 'half', 'day'],
    ['out_four_in_five', 'fourInFive', 'day'],
  ]);
}

/** One row a day: units shipped from the moment on, and units due. */
function daysData({ byDay }: ForecastResults): FileTable {
  return fileTable(byDay, [
    ['date', 'date', 'day'],
    ['shipped_p10', 'p10', 'count'],
    ['shipped_p50', 'p50', 'count'],
    ['shipped_p90', 'p90', 'count'],
    ['due', 'due', 'count'],
  ]);
}
