import type { RateResults } from '../../study/results-rate.js';
import type { Chart } from './chart.js';
import { rateStops } from './rate-stops.js';
import { rateThroughput } from './rate-throughput.js';
import { rateWipLead } from './rate-wip-lead.js';

/** Pictures of a rate report by file name, in the order of the page. */
export const RATE_CHARTS: Readonly<Record<string, (results: RateResults) => Chart>> = {
  '01-throughput-against-rate': rateThroughput,
  '02-wip-and-lead-time-against-rate': rateWipLead,
  '03-what-stops-it': rateStops,
};
