import { basename } from 'node:path';
import { programmeClock } from '../../scenario/programme/clock.js';
import { headOf, type Origin } from '../head.js';
import { defined } from '../lists.js';
import { overLoads } from '../loads/over-loads.js';
import { type Offer, offered } from '../priced/offer.js';
import { plannedEnd } from '../programme/dates.js';
import { unitsOver } from '../programme/series.js';
import { planned } from '../sample/planned.js';
import type { Reading } from '../sample/reading.js';
import { familyLevel } from '../statistics/difference.js';
import { type Estimate } from '../statistics/estimate.js';
import { amount } from '../statistics/skewed-interval.js';
import { ratio } from '../statistics/sums.js';
import { baseWindow, type ComparedVariant, type Measure, measuresOf } from './measures.js';
import type { ComparedInWeeks, CompareResults, VariantResult } from './results.js';
import { compareSentence } from './sentence.js';
import { findings, finite, judgedIn, standOf, windowResult } from './stand.js';
import { compared, zoneOf } from './verdict.js';
import { type Zones, zoneShare } from './zones.js';

/** A variant with what was read of its replications, in their order. */
interface ReadVariant extends ComparedVariant {
  readonly readings: readonly Reading[];
}

/**
 * Readings of a base, the first of all, and its what-ifs as results. The same readings give the same results,
 * wherever they were made.
 */
export function summariseComparison(
  all: readonly ReadVariant[],
  asked: Origin &
    Pick<CompareResults, 'whatIfsFile'> & { readonly offers?: Readonly<Record<string, Offer>> | undefined },
  zones: Zones,
): ComparedInWeeks {
  const [base, whatIfs] = [defined(all[0]), all.slice(1)],
    { level } = asked,
    { buckets } = programmeClock(base.scenario),
    replications = base.readings.length;
  const window = baseWindow(base, base.readings),
    measures = measuresOf(base, window).map((measure) => ({
      ...measure,
      zone: zoneOf(base.readings.map(measure.of(base)), zoneShare(zones, measure.id)),
    })),
    differenceLevel = familyLevel(level, whatIfs.length * measures.length);
  const values = (variant: ReadVariant, { of }: Measure): number[] => variant.readings.map(of(variant));
  const shown = lastBucket(all, buckets.labels.length),
    workingDays = buckets.workingDays.slice(0, shown);
  const result = (of: ReadVariant): VariantResult => variantResult(of, workingDays, level);

  const baseResult = {
    ...result(base),
    values: measures.map((measure) => ({
      measure: measure.id,
      value: amount(values(base, measure), differenceLevel),
    })),
  };
  const whatIfResults = whatIfs.map((whatIf) => ({
    ...result(whatIf),
    ...offered(asked.offers, whatIf.key),
    compared: measures.map((measure) =>
      compared(measure, values(base, measure), values(whatIf, measure), differenceLevel),
    ),
  }));
  const measured = measures.map(({ id, name, unit, better, zone }) => ({ id, name, unit, better, zone }));
  const results: CompareResults = {
    ...headOf('compare', asked),
    whatIfsFile: basename(asked.whatIfsFile),
    replications,
    differenceLevel,
    answer: compareSentence({
      ...{ base: baseResult, whatIfs: whatIfResults, measures: measured },
      ...{ level, differenceLevel },
    }),
    window: windowResult(base, window),
    measures: measured,
    base: baseResult,
    whatIfs: whatIfResults,
    series: {
      unit: buckets.unit,
      labels: buckets.labels.slice(0, shown),
      starts: buckets.starts.slice(0, shown),
      workingDays,
    },
    findings: [baseResult, ...whatIfResults].flatMap((each) => findings(each, replications)),
    runs: all.flatMap((of) => {
      const columns = measures.map((measure) => values(of, measure));
      return of.readings.map(({ replication, outcome }, r) => ({
        variant: of.name,
        replication,
        outcome,
        values: columns.map((column) => finite(column[r])),
      }));
    }),
    plannedEnd: plannedEnd(planned(base.scenario, base.model)),
    constraint: null,
    weakest: null,
  };
  return { results, judged: judgedIn(base, window) };
}

/** @param workingDays of the buckets shown */
function variantResult(variant: ReadVariant, workingDays: readonly number[], level: number): VariantResult {
  const { scenario, model, readings } = variant,
    { bucketEdges: edges } = model.programme,
    smooth = overLoads(planned(scenario, model)),
    over = (value: (reading: Reading) => number): Estimate => amount(readings.map(value), level);
  return {
    ...standOf(variant, readings, level),
    shippedPerDay: workingDays.map((days, b) => over(({ shippedIn }) => ratio(shippedIn[b] ?? NaN, days))),
    shippedOverLoads:
      smooth === null ? null : workingDays.map((_, b) => over((reading) => smooth(reading, b))),
    wip: workingDays.map((_, b) => {
      const from = edges[b] ?? NaN,
        to = edges[b + 1] ?? NaN;
      return over((each) => unitsOver(each, each.wipIn[b] ?? NaN, each.endedAt > from, from, to));
    }),
  };
}

/** Buckets up to the last in which a variant had units or shipped some. */
function lastBucket(all: readonly ReadVariant[], buckets: number): number {
  const lives = (b: number): boolean =>
    all.some(({ readings }) =>
      readings.some(({ shippedIn, wipIn }) => (shippedIn[b] ?? 0) > 0 || (wipIn[b] ?? 0) > 0),
    );
  let shown = buckets;
  while (shown > 0 && !lives(shown - 1)) shown--;
  return shown;
}
