import type { DrawChart } from './chart.js';
import { bottlenecks } from './bottlenecks.js';
import { buffers } from './buffers.js';
import { changeovers } from './changeovers.js';
import { crewLoad } from './crew-load.js';
import { costPerUnit } from './cost-per-unit.js';
import { firstTimeThrough } from './first-time-through.js';
import { journey } from './journey.js';
import { leadTime } from './lead-time.js';
import { outageRecovery } from './outage-recovery.js';
import { placeTime } from './place-time.js';
import { shippedAgainstPlan } from './shipped-against-plan.js';
import { throughputByWeek } from './throughput-by-week.js';
import { warmUp } from './warm-up.js';
import { wipBySite } from './wip-by-site.js';

export type { Chart, DrawChart } from './chart.js';

/** Every picture of a simulate study. The key is the file name without `.png`; it stays the same where another is left out. */
export const CHARTS: Readonly<Record<string, DrawChart>> = {
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
