import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { digest } from '../../scenario/read.js';
import { askedRate } from '../../scenario/programme/rates.js';
import { capacity } from '../capacity/capacity.js';
import { Later, type Pending } from '../sample/deferred.js';
import { RESULTS_VERSION, type Results } from './results.js';
import type { Sample } from '../sample/sample.js';
import { answer } from '../answer/answer.js';
import { assumptions } from '../answer/assumptions.js';
import { bottlenecks } from '../sections/bottlenecks.js';
import { buffers } from '../sections/buffers.js';
import { carriers, teams } from '../sections/carriers.js';
import { changeovers } from '../sections/changeovers.js';
import { crews, overtime, shutdowns } from '../sections/crews.js';
import { costs } from '../sections/costs.js';
import { dueDates } from '../programme/due-dates.js';
import { failures } from '../sections/failures.js';
import { findings } from '../answer/findings.js';
import { inspections, rolledYield } from '../sections/inspections.js';
import { lastUnit } from '../programme/dates.js';
import { leadTime } from '../programme/lead-time.js';
import { quality } from '../sections/defects.js';
import { feeders, lanes, stations } from '../sections/stations.js';
import { shippedAgainstPlan } from '../programme/plan.js';
import { outages } from '../sections/outages.js';
import { pulseLines } from '../sections/pulse-lines.js';
import { judgeRate, type ToJudge } from '../programme/rate-held.js';
import { runs, withHeld } from '../answer/runs.js';
import { series, shownBuckets, wip } from '../programme/series.js';
import { supplies } from '../sections/supplies.js';
import { throughput } from '../programme/series.js';
import { units } from '../programme/dates.js';
import { warmUp, warmUpFindings } from '../answer/warm-up.js';
import { PROGRAM_VERSION } from '../version.js';

/** What the results say of where they come from. */
export interface Origin {
  /** Name of the scenario's file, without folders. */
  readonly file: string;
  readonly seed: string;
}

/**
 * All that `simulate` tells of a scenario's replications. The same replications give the same results to the
 * last bit.
 */
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
    days = sample.amount(({ minutes }) => minutes / MINUTES_PER_DAY),
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
