import { programmeClock } from '../../scenario/programme/clock.js';
import { baseWindow, type ComparedVariant, measuresOf } from './measures.js';
import { familyLevel } from '../statistics/difference.js';
import { count } from '../format.js';
import { amount, type Estimate } from '../statistics/interval.js';
import type { Reading } from './reading.js';
import { headOf } from '../head.js';
import type { CompareResults, VariantResult } from './results.js';
import { ratio } from '../statistics/sums.js';
import { compareSentence } from './answer.js';
import { compared } from './difference.js';

export interface ComparisonToSummarise {
  /** The base first. */
  readonly variants: readonly ComparedVariant[];
  /** By variant in their order, in replication order. */
  readonly readings: readonly (readonly Reading[])[];
  readonly file: string;
  readonly whatIfsFile: string;
  readonly seed: string;
  readonly level: number;
}

/**
 * Readings of a base and its what-ifs as results. The same readings give the same results, wherever they were
 * made.
 */
export function summariseComparison({
  variants,
  readings,
  file,
  whatIfsFile,
  seed,
  level,
}: ComparisonToSummarise): CompareResults {
  const base = variants[0]!,
    { scenario } = base,
    clock = programmeClock(scenario),
    { buckets } = clock;
  const window = baseWindow(base, readings[0]!),
    measures = measuresOf(variants, window),
    differenceLevel = familyLevel(level, variants.length - 1);
  const values = measures.map(({ of }) => variants.map((_, v) => readings[v]!.map(of[v]!)));
  const shown = lastBucket(readings, buckets.labels.length);
  const variant = (v: number): VariantResult => {
    const { name, note, changes, key, scenario: changed, model } = variants[v]!,
      of = readings[v]!,
      { bucketEdges } = model.programme;
    const inBuckets = (value: (reading: Reading, bucket: number) => number): Estimate[] =>
      Array.from({ length: shown }, (_, b) =>
        amount(
          of.map((each) => value(each, b)),
          level,
        ),
      );
    return {
      name,
      note,
      changes,
      digest: `sha256:${key}`,
      gridlocks: of.filter(({ outcome }) => outcome === 'gridlock').length,
      unfinished:
        changed.programme.quantity === undefined
          ? 0
          : of.filter(({ outcome }) => outcome !== 'finished').length,
      shippedPerDay: inBuckets(({ shippedIn }, b) => ratio(shippedIn[b] ?? NaN, buckets.workingDays[b]!)),
      wip: inBuckets((each, b) => wipInBucket(each, bucketEdges, b)),
    };
  };
  const whatIfs = variants.slice(1).map((_, i) => ({
    ...variant(i + 1),
    compared: measures.map((measure, m) =>
      compared(measure, values[m]![0]!, values[m]![i + 1]!, level, differenceLevel),
    ),
  }));
  const found = {
    ...variant(0),
    values: measures.map(({ id }, m) => ({ measure: id, value: amount(values[m]![0]!, level) })),
  };
  const replications = readings[0]!.length;
  return {
    ...headOf('compare', { scenario, file, seed, level }),
    whatIfsFile,
    replications,
    differenceLevel,
    answer: compareSentence(measures, found, whatIfs),
    window: window === null ? null : { from: window.from, to: window.to, workingDays: window.workingDays },
    measures: measures.map(({ id, name, unit, better }) => ({ id, name, unit, better })),
    base: found,
    whatIfs,
    series: {
      unit: buckets.unit,
      labels: buckets.labels.slice(0, shown),
      starts: buckets.starts.slice(0, shown),
      workingDays: buckets.workingDays.slice(0, shown),
    },
    findings: [found, ...whatIfs].flatMap((each) => findings(each, replications)),
    runs: variants.flatMap(({ name }, v) =>
      readings[v]!.map(({ replication, outcome }, r) => ({
        variant: name,
        replication,
        outcome,
        values: values.map((of) => (Number.isFinite(of[v]![r]!) ? of[v]![r]! : null)),
      })),
    ),
  };
}

function findings({ name, gridlocks, unfinished }: VariantResult, replications: number): string[] {
  const of = (some: number): string => `${some} of ${count(replications, 'replication')}`;
  return [
    ...(gridlocks > 0
      ? [`${name}: gridlock in ${of(gridlocks)}; its other values speak of the time before it`]
      : []),
    ...(unfinished > gridlocks
      ? [
          `${name}: not finished in ${of(unfinished)}; pairs without a last unit are left out of its comparison`,
        ]
      : []),
  ];
}

/** Buckets up to the last in which a variant had units or shipped some. */
function lastBucket(readings: readonly (readonly Reading[])[], buckets: number): number {
  const lives = (b: number): boolean =>
    readings.some((of) => of.some(({ shippedIn, wipIn }) => shippedIn[b]! > 0 || wipIn[b]! > 0));
  let shown = buckets;
  while (shown > 0 && !lives(shown - 1)) shown--;
  return shown;
}

/**
 * Mean units over a bucket: none are left once a run is finished; NaN where a run had stopped with units
 * inside.
 */
function wipInBucket({ outcome, endedAt, wipIn }: Reading, edges: ArrayLike<number>, bucket: number): number {
  const from = edges[bucket]!,
    to = edges[bucket + 1]!,
    units = wipIn[bucket] ?? NaN;
  if (outcome === 'finished')
    return to > endedAt ? units * (Math.max(0, endedAt - from) / (to - from)) : units;
  return endedAt > from ? units : NaN;
}
