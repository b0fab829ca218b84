import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { askedRate } from '../../scenario/programme/rates.js';
import { answer } from '../answer/answer.js';
import { findings } from '../answer/findings.js';
import { runs, withHeld } from '../answer/runs.js';
import { warmUp, warmUpFindings } from '../answer/warm-up.js';
import { capacity } from '../capacity/capacity.js';
import { headOf, type Origin } from '../head.js';
import { lastUnit, units } from '../programme/dates.js';
import { dueDates } from '../programme/due-dates.js';
import { leadTime } from '../programme/lead-time.js';
import { shippedAgainstPlan } from '../programme/plan.js';
import { judgeRate, type ToJudge } from '../programme/rate-held.js';
import { series, shownBuckets, throughput, wip } from '../programme/series.js';
import { Deferred, type Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import { bottlenecks } from '../sections/bottlenecks.js';
import { buffers } from '../sections/buffers.js';
import { carriers, teams } from '../sections/carriers.js';
import { changeovers } from '../sections/changeovers.js';
import { costs } from '../sections/costs.js';
import { crews, overtime, rework, shutdowns } from '../sections/crews.js';
import { defects, escapes } from '../sections/defects.js';
import { failures } from '../sections/failures.js';
import { holds } from '../sections/holds.js';
import { comparisons, inspections, rolledYield } from '../sections/inspections.js';
import { lanes } from '../sections/lanes.js';
import { outages } from '../sections/outages.js';
import { pulseLines } from '../sections/pulse-lines.js';
import { stations } from '../sections/stations.js';
import { feeders, supplies } from '../sections/supplies.js';
import type { Results } from './results.js';

/**
 * All that `simulate` tells of a scenario's replications. The same replications give the same results to the
 * last bit.
 */
export function summary(sample: Sample, { file, seed }: Pick<Origin, 'file' | 'seed'>): Deferred<Results> {
  const { scenario, model, calendar, level } = sample,
    { start, zone, quantity } = scenario.programme;
  const toJudge = sample.fold<ToJudge[]>([], (known, { outcome, shipped, leadMean, shippedIn }) => {
    known.push({ outcome, shipped, leadMean, shippedIn });
    return known;
  });
  const judged = new Deferred(() => judgeRate(sample, toJudge.value, level)),
    startUp = warmUp(sample),
    likeliest = bottlenecks(sample),
    shipping = throughput(sample);
  const shown = shownBuckets(sample),
    rows = runs(sample),
    days = sample.amount(({ minutes }) => minutes / MINUTES_PER_DAY),
    inTheWay = findings(sample, judged);
  const results: Pending<Results> = {
    ...headOf('simulate', { scenario, file, seed, level }),
    replications: new Deferred(() => sample.replications),
    programme: {
      kind: calendar.kind,
      start,
      zone,
      quantity: quantity ?? null,
      phases: askedRate(scenario).phases,
      observedDays: new Deferred(() => days.value.mean),
    },
    assumptions: scenario.assumptions.map(({ path, words, value, basis, note }) => ({
      path,
      words,
      value,
      basis,
      note: note ?? null,
    })),
    answer: new Deferred(() => answer(sample, judged.value, shipping.perDay.value, likeliest.value)),
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
    defects: defects(sample),
    escapes: escapes(sample),
    holds: holds(sample),
    comparisons: comparisons(sample),
    rework: rework(sample),
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
    findings: new Deferred(() => [...inTheWay.value, ...warmUpFindings(startUp.value)]),
    runs: new Deferred(() => withHeld(rows.value, toJudge.value.map(judged.value.heldIn))),
  };
  return new Deferred(() => results);
}
