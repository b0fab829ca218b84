import type { Results } from '../../study/simulate/results.js';
import type { DrawChart } from '../charts/chart.js';
import { bottlenecks } from '../charts/simulate/bottlenecks.js';
import { buffers } from '../charts/simulate/buffers.js';
import { changeovers } from '../charts/simulate/changeovers.js';
import { costPerUnit } from '../charts/simulate/costs.js';
import { crewLoad } from '../charts/simulate/crews.js';
import { firstTimeThrough } from '../charts/simulate/inspections.js';
import { journey } from '../charts/simulate/journey.js';
import { leadTime } from '../charts/simulate/lead-time.js';
import { outageRecovery } from '../charts/simulate/outages.js';
import { shippedAgainstPlan } from '../charts/simulate/plan.js';
import { placeTime } from '../charts/simulate/stations.js';
import { throughputByWeek } from '../charts/simulate/throughput.js';
import { warmUp } from '../charts/simulate/warm-up.js';
import { wipBySite } from '../charts/simulate/wip.js';
import { page } from '../page/simulate.js';
import { runsCsv, seriesCsv, stationsCsv, unitsCsv } from './csv.js';
import { studyFiles } from './study-files.js';

/**
 * Every file of a simulate report, by name: `results.json`, the charts that have something to show,
 * `report.html` with the same charts inside, and CSV of the series, the stations, the units and the
 * replications. Ready for `writeFolder`.
 */
export async function reportFiles(results: Results): Promise<Map<string, string | Buffer>> {
  const files = await studyFiles(results, CHARTS, page);
  files.set('series.csv', seriesCsv(results));
  files.set('stations.csv', stationsCsv(results));
  if (results.units.length > 0) files.set('units.csv', unitsCsv(results));
  files.set('runs.csv', runsCsv(results));
  return files;
}

export type { Chart, DrawChart } from '../charts/chart.js';

/**
 * Every picture of a simulate study. The key is the file name without `.png`; it stays the same where another
 * is left out.
 */
export const CHARTS: Readonly<Record<string, DrawChart<Results>>> = {
  '01-throughput-by-week': throughputByWeek,
  '02-wip-by-site': wipBySite,
  '03-place-time': placeTime,
  '04-bottlenecks': bottlenecks,
  '05-lead-time': leadTime,
  '06-buffers': buffers,
  '07-first-time-through': firstTimeThrough,
  '08-shipped-against-plan': shippedAgainstPlan,
  '09-journey': journey,
  '10-changeovers': changeovers,
  '11-crew-load': crewLoad,
  '12-outage-recovery': outageRecovery,
  '13-cost-per-unit': costPerUnit,
  '14-warm-up': warmUp,
};
