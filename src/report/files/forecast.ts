import type { ForecastResults } from '../../study/validate/start/forecast.js';
import { stableJson } from '../json.js';
import { csv, fileTable } from './folder/csv.js';
import { leftOutFile } from './folder/left-out.js';
import type { Files } from './folder/study-files.js';

/** The report of `forecast`. */
export const forecastFiles = (results: ForecastResults): Promise<Files> =>
  Promise.resolve(
    new Map([
      ['results.json', stableJson(results)],
      [
        'orders.csv',
        csv(
          fileTable(results.orders, [
            ['order', 'unit'],
            ['stands_at', 'at'],
            ['due', 'due'],
            ['late_builds', 'late'],
            ['days_late', 'daysLate'],
            ['out_half', 'half'],
            ['out_four_in_five', 'fourInFive'],
          ]),
        ),
      ],
      ...leftOutFile(results.log),
    ]),
  );
