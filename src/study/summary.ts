import { digest } from '../scenario/read-digest.js';
import { askedRate } from '../scenario/release-rate.js';
import { capacity } from './capacity.js';
import { Later, type Pending } from './later.js';
import { RESULTS_VERSION, type Results } from './results.js';
import type { Sample } from './sample.js';
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
import { judgeRate, type ToJudge } from './summary-rate.js';
import { runs, withHeld } from './summary-runs.js';
import { series, shownBuckets, wip } from './summary-series.js';
import { supplies } from './summary-supplies.js';
import { throughput } from './summary-throughput.js';
import { units } from './summary-units.js';
import { warmUp, warmUpFindings } from './summary-warm-up.js';
import { PROGRAM_VERSION } from './version.js';

/** What the results say of where they come from. */
export interface Origin {
  /** Name of the scenario's file, without folders. */
  readonly file: string;
  readonly seed: string;
}

/** All that `simulate` tells of a scenario's replications. The same replications give the same results to the last bit. */
export function summary(sample: Sample, { file, seed }: Origin): Later<Results> {
  const { scenario, model, calendar, level } = sample,
    { start, zone, quantity } = scenario.programme;
  const toJudge = sample.fold<ToJudge[]>([], (known, { outcome, shipped, leadMean, shippedIn }) => {
    known.push({ outcome, shipped, leadMean, shippedIn });
    return known;
  });
  const judged = new Later(() => judgeRate(sample, toJudge.value, level)),
    startUp = warmUp(sample),
    likeliest = bottlenecks(sample),
    shipping = throughput(sample);
  const shown = shownBuckets(sample),
    rows = runs(sample),
    days = sample.amount(({ minutes }) => minutes / 1440),
    inTheWay = findings(sample, judged);
  const results: Pending<Results> = {
    format: 'rateproof results',
    version: RESULTS_VERSION,
    program: PROGRAM_VERSION,
    study: 'simulate',
    scenario: {
      name: scenario.name,
      note: scenario.note ?? null,
      file,
      digest: `sha256:${digest(scenario)}`,
    },
    seed,
    replications: new Later(() => sample.replications),
    level,
    programme: {
      kind: calendar.kind,
      start,
      zone,
      quantity: quantity ?? null,
      phases: askedRate(scenario).phases,
      observedDays: new Later(() => days.value.mean),
    },
    assumptions: assumptions(scenario),
    answer: new Later(() => answer(sample, judged.value, shipping.perDay.value, likeliest.value)),
    series: series(sample, shown),
    wip: wip(sample, shown),
    leadTime: leadTime(sample),
    throughput: shipping,
    stations: stations(sample),
    changeovers: changeovers(sample),
    buffers: buffers(sample),
    crews: crews(sample, shown),
    overtime: overtime(sample, shown),
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
    findings: new Later(() => [...inTheWay.value, ...warmUpFindings(startUp.value)]),
    runs: new Later(() => withHeld(rows.value, toJudge.value.map(judged.value.heldIn))),
  };
  return new Later(() => results);
}
