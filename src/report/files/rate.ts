import type { RatePoint, RateResults } from '../../study/rate/results.js';
import type { DrawChart } from '../charts/chart.js';
import { lossLadder } from '../charts/studies/constraint-ladder.js';
import { trialGains } from '../charts/studies/constraint-trials.js';
import { rateStops } from '../charts/studies/rate-stops.js';
import { rateThroughput } from '../charts/studies/rate-throughput.js';
import { rateWipLead } from '../charts/studies/rate-wip-lead.js';
import { triedAt } from '../constraint.js';
import { ratePage } from '../page/rate.js';
import { lossesData, trialsData } from './constraint.js';
import { type FileTable, fileTable, measure, proportion } from './csv.js';
import { studyFiles } from './study-files.js';

/** Every picture of a rate study, in the order of the page. */
export const RATE_CHARTS = {
  '01-throughput-against-rate': rateThroughput,
  '04-losses': ({ constraint }) => lossLadder(constraint, constraint?.perDay ?? null),
  '05-trials': (results) => trialGains(results.constraint, triedAt(results)),
  '02-wip-and-lead-time-against-rate': rateWipLead,
  '03-used-most': rateStops,
} satisfies Record<string, DrawChart<RateResults>>;

/** The report of a rate study. */
export const rateFiles = studyFiles<RateResults>({
  charts: RATE_CHARTS,
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
