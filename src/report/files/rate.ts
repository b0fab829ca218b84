import type { RatePoint, RateResults } from '../../study/rate/results.js';
import { CHARTS } from '../charts/of-study.js';
import { ratePage } from '../page/studies/rate.js';
import { lossesData, trialsData } from './constraint.js';
import { type FileTable, fileTable, measure, proportion } from './folder/csv.js';
import { studyFiles } from './folder/study-files.js';

/** The report of a rate study. */
export const rateFiles = studyFiles<RateResults>({
  charts: CHARTS.rate,
  page: ratePage,
  data: {
    'rates.csv': ratesData,
    'losses.csv': ({ constraint }) => lossesData(constraint),
    'trials.csv': ({ constraint }) => trialsData(constraint),
  },
  sheets: [],
});

/** One row a rate. */
export function ratesData({ points }: RateResults): FileTable {
  return fileTable(points, [
    ['per_day', 'perDay'],
    ['verdict', 'verdict'],
    ['why', 'why'],
    ['replications', 'replications'],
    ['asked', 'asked'],
    ...proportion('keep_up', ({ keptUp }: RatePoint) => keptUp),
    ['can_ship_at_least_per_day', ({ canShip }) => canShip.least],
    ['can_ship_at_most_per_day', ({ canShip }) => canShip.most],
    ['gridlocks', 'gridlocks'],
    ...measure('shipped_per_day', ({ shippedPerDay }: RatePoint) => shippedPerDay),
    ...measure('wip', ({ wip }: RatePoint) => wip),
    ...measure('lead_days', ({ leadDays }: RatePoint) => leadDays),
    ['used_most', ({ stops }) => stops[0]?.name],
    ...proportion('used_most', ({ stops }: RatePoint) => stops[0]?.share),
  ]);
}
