import type { Model } from '../flow/model.js';
import type { Observation } from '../measure/observation.js';
import { programmeClock, type ProgrammeClock } from '../scenario/compile-clock.js';
import { digest } from '../scenario/read-digest.js';
import { askedRate } from '../scenario/release-rate.js';
import type { Scenario } from '../scenario/scenario.js';
import { capacity } from './capacity.js';
import { releaseCalendar } from './release-calendar.js';
import { RESULTS_VERSION, type Results } from './results.js';
import { Sample } from './sample.js';
import { answer } from './summary-answer.js';
import { assumptions } from './summary-assumptions.js';
import { bottlenecks } from './summary-bottlenecks.js';
import { buffers } from './summary-buffers.js';
import { carriers, teams } from './summary-carriers.js';
import { changeovers } from './summary-changeovers.js';
import { crews, overtime, shutdowns } from './summary-crews.js';
import { costs } from './summary-costs.js';
import { dueDates } from './summary-due.js';
import { failures } from './summary-failures.js';
import { findings } from './summary-findings.js';
import { inspections, rolledYield } from './summary-inspections.js';
import { lastUnit } from './summary-last-unit.js';
import { leadTime } from './summary-lead-time.js';
import { quality } from './summary-quality.js';
import { feeders, lanes, stations } from './summary-places.js';
import { shippedAgainstPlan } from './summary-plan.js';
import { outages } from './summary-outages.js';
import { pulseLines } from './summary-pulse.js';
import { judgeRate } from './summary-rate.js';
import { runs } from './summary-runs.js';
import { series, wip } from './summary-series.js';
import { supplies } from './summary-supplies.js';
import { throughput } from './summary-throughput.js';
import { units } from './summary-units.js';
import { warmUp, warmUpFindings } from './summary-warm-up.js';
import { PROGRAM_VERSION } from './version.js';

export interface ToSummarise {
  readonly scenario: Scenario;
  readonly model: Model;
  /** Default: made from the scenario. */
  readonly clock?: ProgrammeClock | undefined;
  /** In replication order, at least one. */
  readonly observations: readonly Observation[];
  /** Name of the scenario's file, without folders. */
  readonly file: string;
  readonly seed: string;
  /** Confidence of all intervals. */
  readonly level: number;
}

/** Replications of a scenario as results. The same replications give the same results to the last bit. */
export function summarise({ scenario, model, clock = programmeClock(scenario), observations, file, seed, level }: ToSummarise): Results {
  if (observations.length === 0) throw new RangeError('replications: expected at least 1 to summarise, saw none; run some');
  const calendar = releaseCalendar(scenario), sample = new Sample(scenario, model, clock, calendar, observations, level);
  const { start, zone, quantity } = scenario.programme;
  const judged = judgeRate(sample), startUp = warmUp(sample), likeliest = bottlenecks(sample), shipping = throughput(sample);
  return {
    format: 'rateproof results', version: RESULTS_VERSION, program: PROGRAM_VERSION, study: 'simulate',
    scenario: { name: scenario.name, note: scenario.note ?? null, file, digest: `sha256:${digest(scenario)}` },
    seed, replications: observations.length, level,
    programme: {
      kind: calendar.kind, start, zone, quantity: quantity ?? null,
      phases: askedRate(scenario).phases,
      observedDays: sample.amount(({ minutes }) => minutes / 1440).mean,
    },
    assumptions: assumptions(scenario),
    answer: answer(sample, judged, shipping.perDay, likeliest),
    series: series(sample),
    wip: wip(sample),
    leadTime: leadTime(sample),
    throughput: shipping,
    stations: stations(sample),
    changeovers: changeovers(sample),
    buffers: buffers(sample),
    crews: crews(sample),
    overtime: overtime(sample),
    shutdowns: shutdowns(sample),
    inspections: inspections(sample),
    rty: rolledYield(sample),
    ...quality(sample),
    lanes: lanes(sample),
    feeders: feeders(sample),
    supplies: supplies(sample),
    failures: failures(sample),
    outages: outages(sample),
    pulseLines: pulseLines(sample),
    carriers: carriers(sample),
    teams: teams(sample),
    precision: null,
    warmUp: startUp,
    bottleneckByArithmetic: capacity(model, scenario).bottleneck?.name ?? null,
    bottlenecks: likeliest,
    lastUnit: lastUnit(sample),
    units: units(sample),
    due: dueDates(sample),
    plan: shippedAgainstPlan(sample),
    journey: null,
    scrapped: sample.amount(({ scrapped }) => scrapped),
    costs: costs(sample),
    findings: [...findings(sample, judged), ...warmUpFindings(startUp)],
    runs: runs(sample, judged.heldIn),
  };
}
