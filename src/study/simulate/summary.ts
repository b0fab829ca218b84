import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { askedRate } from '../../scenario/programme/rates.js';
import { answer } from '../answer/answer.js';
import { findings } from '../answer/findings.js';
import { runs, withHeld } from '../answer/runs.js';
import { unusualAmong } from '../answer/unusual-weeks.js';
import { warmUp } from '../answer/warm-up.js';
import { capacity } from '../capacity/capacity.js';
import { headOf, type Origin } from '../head.js';
import { judgeRate, type RateJudged, type ToJudge } from '../held/rate-held.js';
import { mayGoInLoads } from '../loads/loads.js';
import { lastUnit, units } from '../programme/dates.js';
import { dueDates } from '../programme/due-dates.js';
import { leadTime } from '../programme/lead-time.js';
import { shippedAgainstPlan } from '../programme/plan.js';
import { series, shownBuckets, throughput, wip } from '../programme/series.js';
import { Deferred, type Pending, resolved } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import { bottlenecks } from '../sections/bottlenecks.js';
import { buffers } from '../sections/buffers.js';
import { carriers, teams } from '../sections/carriers.js';
import { changeovers } from '../sections/changeovers.js';
import { costs } from '../sections/costs.js';
import { crews, overtime, rework, shutdowns } from '../sections/crews.js';
import { defects, escapes } from '../sections/defects.js';
import { equipment } from '../sections/equipment.js';
import { failures } from '../sections/failures.js';
import { comparisons, holds, inspections, rolledYield } from '../sections/inspections.js';
import { lanes } from '../sections/lanes.js';
import { outages, recoveries, type WithoutOutages } from '../sections/outages.js';
import { pulseLines } from '../sections/pulse-lines.js';
import { stations } from '../sections/stations.js';
import { feeders, supplies } from '../sections/supplies.js';
import { standstillTold } from '../standstill/told.js';
import { assumptionsOf } from './assumptions.js';
import type { Results } from './results.js';
import { MOST_PAIRS } from './without-outages.js';

/** The first so many replications are watched closely, which makes them up to a third slower. */
export const CLOSELY = 10;

/** The results, and how the rate was judged: by the same weeks it is told what stops it. */
export interface Simulated {
  readonly results: Results;
  readonly judged: RateJudged;
  /** What is said, once more is known of the rate. */
  readonly answered: (judged: RateJudged) => Pick<Results, 'answer' | 'findings'>;
}

/**
 * All that `simulate` tells of a scenario's replications. The same replications give the same results to the
 * last bit.
 * @param without what the build ships without some outages; it may grow while replications come
 */
export function summary(
  sample: Sample,
  { file, seed }: Pick<Origin, 'file' | 'seed'>,
  without: readonly WithoutOutages[] = [],
): Deferred<Simulated> {
  const { scenario, model, calendar, level } = sample,
    { start, zone, quantity } = scenario.programme;
  // Days are kept only where shipments are counted by them.
  const inLoads = mayGoInLoads(model),
    none = new Int32Array(0);
  const toJudge = sample.fold<ToJudge[]>(
    [],
    (known, { outcome, shipped, leadMean, shippedIn, shippedOn }) => {
      known.push({ outcome, shipped, leadMean, shippedIn, shippedOn: inLoads ? shippedOn : none });
      return known;
    },
  );
  let known: RateJudged | null = null;
  const judged = new Deferred(() => known ?? judgeRate(sample, toJudge.value, level)),
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
    assumptions: assumptionsOf(scenario),
    levers: scenario.levers,
    answer: new Deferred(() => {
      const { window } = judged.value,
        unusual = window === null ? null : unusualAmong(sample, window, toJudge.value, level);
      return answer(sample, judged.value, shipping.perDay.value, unusual);
    }),
    series: series(sample, shown),
    wip: wip(sample, shown),
    leadTime: leadTime(sample),
    throughput: shipping,
    stations: stations(sample),
    changeovers: changeovers(sample),
    buffers: buffers(sample),
    crews: crews(sample, shown),
    equipment: equipment(sample),
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
    recoveries: recoveries(sample, judged, without, MOST_PAIRS),
    pulseLines: pulseLines(sample),
    carriers: carriers(sample),
    teams: teams(sample),
    precision: null,
    warmUp: warmUp(sample),
    bottleneckByArithmetic: capacity(model, scenario).bottleneck?.name ?? null,
    bottlenecks: likeliest,
    constraint: null,
    weakest: null,
    lastUnit: lastUnit(sample),
    units: units(sample),
    due: dueDates(sample),
    plan: shippedAgainstPlan(sample),
    journey: null,
    standstill: standstillTold(sample, sample.clock),
    scrapped: sample.events(({ scrapped }) => scrapped),
    costs: costs(sample),
    findings: inTheWay,
    runs: new Deferred(() => withHeld(rows.value, toJudge.value.map(judged.value.heldIn))),
  };
  return new Deferred(() => ({
    results: resolved<Results>(results),
    judged: judged.value,
    answered: (value) => {
      known = value;
      return resolved<Pick<Results, 'answer' | 'findings'>>({
        answer: results.answer,
        findings: results.findings,
      });
    },
  }));
}
