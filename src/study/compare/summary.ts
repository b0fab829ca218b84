import { basename } from 'node:path';
import { programmeClock } from '../../scenario/programme/clock.js';
import { askedRate } from '../../scenario/programme/rates.js';
import { standstills } from '../answer/gridlock.js';
import { count } from '../format.js';
import { headOf, type Origin } from '../head.js';
import { defined } from '../lists.js';
import { overLoads } from '../loads/over-loads.js';
import { countingResult } from '../loads/words.js';
import { lastUnitDates } from '../programme/dates.js';
import { unitsOver } from '../programme/series.js';
import { planned } from '../sample/planned.js';
import type { Reading } from '../sample/reading.js';
import { familyLevel } from '../statistics/difference.js';
import { type Estimate } from '../statistics/estimate.js';
import { amount } from '../statistics/skewed-interval.js';
import { ratio } from '../statistics/sums.js';
import { baseWindow, type ComparedVariant, countingOfVariant, type Measure, measuresOf } from './measures.js';
import type { ComparedInWeeks, CompareResults, VariantResult } from './results.js';
import { compareSentence } from './sentence.js';
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
  asked: Origin & Pick<CompareResults, 'whatIfsFile'>,
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
    compared: measures.map((measure) =>
      compared(measure, values(base, measure), values(whatIf, measure), differenceLevel),
    ),
  }));
  const measured = measures.map(({ id, name, unit, better, zone }) => ({ id, name, unit, better, zone }));
  const counting = window === null ? null : countingOfVariant(base, window, base);
  const results: CompareResults = {
    ...headOf('compare', asked),
    whatIfsFile: basename(asked.whatIfsFile),
    replications,
    differenceLevel,
    answer: compareSentence({
      ...{ base: baseResult, whatIfs: whatIfResults, measures: measured },
      ...{ level, differenceLevel },
    }),
    window:
      window === null || counting === null
        ? null
        : {
            from: window.from,
            to: window.to,
            workingDays: window.workingDays,
            counting: countingResult(counting),
          },
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
    constraint: null,
    weakest: null,
  };
  return {
    results,
    judged: {
      window,
      askedPerDay: baseResult.askedPerDay,
      heldIn: (seen) => ratio(counting?.shipped(seen) ?? NaN, window?.workingDays ?? NaN),
    },
  };
}

/** @param workingDays of the buckets shown */
function variantResult(
  { name, note, changes, key, scenario, model, readings }: ReadVariant,
  workingDays: readonly number[],
  level: number,
): VariantResult {
  const { bucketEdges: edges } = model.programme,
    smooth = overLoads(planned(scenario, model)),
    stood = readings.flatMap(({ outcome, endedAt }) => (outcome === 'gridlock' ? [endedAt] : [])),
    over = (value: (reading: Reading) => number): Estimate => amount(readings.map(value), level);
  return {
    name,
    note,
    changes,
    digest: `sha256:${key}`,
    askedPerDay: askedRate(scenario).highest,
    gridlocks: stood.length,
    standstill: standstills(stood, readings.length, programmeClock(scenario)),
    unfinished:
      scenario.programme.quantity === undefined
        ? 0
        : readings.filter(({ outcome }) => outcome !== 'finished').length,
    shippedPerDay: workingDays.map((days, b) => over(({ shippedIn }) => ratio(shippedIn[b] ?? NaN, days))),
    shippedOverLoads:
      smooth === null ? null : workingDays.map((_, b) => over((reading) => smooth(reading, b))),
    lastUnit: lastUnitDates(
      scenario,
      readings.map(({ lastUnitDay }) => lastUnitDay),
      programmeClock(scenario),
      level,
    ),
    wip: workingDays.map((_, b) => {
      const from = edges[b] ?? NaN,
        to = edges[b + 1] ?? NaN;
      return over((each) => unitsOver(each, each.wipIn[b] ?? NaN, each.endedAt > from, from, to));
    }),
  };
}

const finite = (value: number | undefined): number | null =>
  value !== undefined && Number.isFinite(value) ? value : null;

function findings(
  { name, gridlocks, standstill, unfinished }: VariantResult,
  replications: number,
): string[] {
  const of = (some: number): string => `${some} of ${count(replications, 'replication')}`;
  return [
    ...(standstill === null ? [] : [`${name}: ${standstill.note} (gridlock)`]),
    ...(unfinished > gridlocks
      ? [
          `${name}: not finished in ${of(unfinished)}; ` +
            'pairs without a last unit are left out of its comparison',
        ]
      : []),
  ];
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
