import { programmeClock } from '../../scenario/programme/clock.js';
import type { ComparedVariant } from './design.js';
import { baseWindow, measuresOf, type Measure } from './measures.js';
import { difference, familyLevel } from '../statistics/difference.js';
import { bounds, count, intervalName, number, signed, withInterval } from '../format.js';
import { amount } from '../statistics/interval.js';
import type { Reading } from './reading.js';
import { RESULTS_VERSION, type Estimate } from '../simulate/results.js';
import type { ComparedMeasure, ComparedVerdict, CompareResults, VariantResult } from './results.js';
import { ratio } from '../sample/sample.js';
import { PROGRAM_VERSION } from '../version.js';

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
    format: 'rateproof results',
    version: RESULTS_VERSION,
    program: PROGRAM_VERSION,
    study: 'compare',
    scenario: { name: scenario.name, note: scenario.note ?? null, file, digest: `sha256:${base.key}` },
    whatIfsFile,
    seed,
    replications,
    level,
    differenceLevel,
    answer: answer(measures, found, whatIfs),
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

/** A what-if against the base: values by replication, paired. */
export function compared(
  measure: Pick<Measure, 'id' | 'unit' | 'better'>,
  base: readonly number[],
  changed: readonly number[],
  level: number,
  differenceLevel: number,
): ComparedMeasure {
  const { difference: seen, pairingGain } = difference(base, changed, differenceLevel),
    scale = Math.abs(amount(base, level).mean);
  const verdict = verdictOf(seen, measure.better);
  const relative =
    scale > 0
      ? {
          ...seen,
          mean: seen.mean / scale,
          low: seen.low === null ? null : seen.low / scale,
          high: seen.high === null ? null : seen.high / scale,
        }
      : null;
  return {
    measure: measure.id,
    value: amount(changed, level),
    difference: seen,
    relative,
    pairingGain,
    verdict,
    words: wordsOf(verdict, seen, measure.unit),
  };
}

function verdictOf({ low, high }: Estimate, better: 'more' | 'less'): ComparedVerdict {
  if (low === null || high === null) return 'not settled';
  if (low <= 0 && high >= 0) return 'no difference seen';
  return low > 0 === (better === 'more') ? 'better' : 'worse';
}

function wordsOf(verdict: ComparedVerdict, { low, high, n }: Estimate, unit: string): string {
  if (verdict === 'not settled')
    return `not settled, ${n === 0 ? 'no replication' : '1 replication'} in which both have a value`;
  if (verdict !== 'no difference seen') return verdict;
  const most = Math.max(-low!, high!);
  return most === 0
    ? 'the same in every replication'
    : `no difference seen larger than ${number(most)} ${unit}`;
}

/** What the what-ifs do to the throughput; where none is seen to change it, to the mean lead time. */
function answer(
  measures: readonly Measure[],
  base: CompareResults['base'],
  whatIfs: CompareResults['whatIfs'],
): string {
  const said = (m: number, verdict: ComparedVerdict): { readonly text: string; readonly size: number }[] =>
    whatIfs
      .flatMap(({ name, compared: all }) => {
        const { difference: seen, verdict: own } = all[m]!;
        return own === verdict
          ? [
              {
                text: `${name} by ${signed(seen)} (${intervalName(seen.level)} ${bounds(seen)})`,
                size: Math.abs(seen.mean),
              },
            ]
          : [];
      })
      .sort((a, b) => b.size - a.size);
  const list = (items: readonly { readonly text: string }[]): string =>
    items.map(({ text }) => text).join(', ');
  const start = `The base ships ${withInterval(base.values[0]!.value, measures[0]!.unit)}.`;
  const part = (m: number, more: string, less: string, same: string): string => {
    const better = said(m, 'better'),
      worse = said(m, 'worse');
    if (better.length + worse.length === 0) return same;
    return [
      ...(better.length > 0 ? [`${more}: ${list(better)}.`] : []),
      ...(worse.length > 0 ? [`${less}: ${list(worse)}.`] : []),
    ].join(' ');
  };
  const isSettled = whatIfs.some(({ compared: all }) => all[0]!.verdict !== 'not settled');
  if (!isSettled) return `${start} One replication says nothing of differences.`;
  const locked = [base, ...whatIfs].filter(({ gridlocks }) => gridlocks > 0).map(({ name }) => name);
  return [
    start,
    part(0, 'Seen to ship more', 'Seen to ship less', 'No what-if is seen to ship more or less.'),
    part(1, 'Lead time shorter, days', 'Lead time longer, days', 'No change of the mean lead time is seen.'),
    ...(locked.length > 0 ? [`In gridlock at least once: ${locked.join(', ')}.`] : []),
  ].join(' ');
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
