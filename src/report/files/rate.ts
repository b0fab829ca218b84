import type { RateResults } from '../../study/rate/results.js';
import type { Estimate } from '../../study/simulate/results.js';
import type { Chart } from '../charts/chart.js';
import { rateStops } from '../charts/studies/rate-stops.js';
import { rateThroughput } from '../charts/studies/rate-throughput.js';
import { rateWipLead } from '../charts/studies/rate-wip-lead.js';
import { ratePage } from '../page/rate.js';
import { csv } from './csv.js';
import { studyFiles } from './study-files.js';

/** Pictures of a rate report by file name, in the order of the page. */
export const RATE_CHARTS: Readonly<Record<string, (results: RateResults) => Chart>> = {
  '01-throughput-against-rate': rateThroughput,
  '02-wip-and-lead-time-against-rate': rateWipLead,
  '03-what-stops-it': rateStops,
};

/** Every file of a rate report, by name, ready for `writeFolder`. */
export async function rateFiles(results: RateResults): Promise<Map<string, string | Buffer>> {
  return (await studyFiles(results, RATE_CHARTS, ratePage)).set('rates.csv', ratesCsv(results));
}

const spread = (name: string): string[] => [`${name}_mean`, `${name}_low`, `${name}_high`];
const cells = ({ mean, low, high }: Estimate): (number | null)[] => [mean, low, high];

/** One row a rate. */
export function ratesCsv({ points }: RateResults): string {
  const head = [
    'per_day',
    'verdict',
    'why',
    'replications',
    'asked',
    'keep_up_share',
    'keep_up_low',
    'keep_up_high',
    ...spread('open_units_growth_per_week'),
    'gridlocks',
    ...spread('shipped_per_day'),
    ...spread('wip'),
    ...spread('lead_days'),
    'constraint',
    'constraint_share',
    'constraint_low',
    'constraint_high',
  ];
  return csv(
    head,
    points.map((point) => [
      point.perDay,
      point.verdict,
      point.why,
      point.replications,
      point.asked,
      point.keptUp.share,
      point.keptUp.low,
      point.keptUp.high,
      ...cells(point.drift),
      point.gridlocks,
      ...cells(point.shippedPerDay),
      ...cells(point.wip),
      ...cells(point.leadDays),
      point.stops[0]?.name ?? null,
      point.stops[0]?.share.share ?? null,
      point.stops[0]?.share.low ?? null,
      point.stops[0]?.share.high ?? null,
    ]),
  );
}
