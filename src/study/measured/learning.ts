import { exp } from '../../random/elementary.js';
import type { NumberedTimes } from '../../records/table/numbered.js';
import { dayText } from '../../records/table/table.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Learning } from '../../scenario/types/steps.js';
import { LEVEL } from '../asked.js';
import { type FitOfLearning, fitLearning, plainTimes } from '../chances/learning.js';
import { logFactor, type TimedUnit } from '../chances/learning-curve.js';
import { basisOf, percentText, roughPercent, type Source, type Written } from '../chances/measured.js';
import { writtenLearning } from '../chances/written.js';
import { sampleOf } from '../fit/kinds/sample.js';
import { type FittedTimes, fitTimes } from '../fit/times.js';
import { type Entry, entryOf, flow, timeEntry } from './entry.js';
import { latest } from './log/latest.js';
import { pathOf, stepPlaces, timePlace } from './places.js';
import type { LearningResult } from './results.js';

/**
 * Learning of each step, and its plain times: as of the first unit where it learns, else as they are.
 * @param isWhole the times are from start to end, not clocked work
 */
export function learningResults(
  steps: readonly NumberedTimes[],
  scenario: Scenario | undefined,
  {
    file,
    seed,
    isWhole = false,
  }: { readonly file: string; readonly seed: string; readonly isWhole?: boolean },
): LearningResult[] {
  const places = scenario === undefined ? undefined : stepPlaces(scenario);
  return steps.map((times) => {
    const timed = times.numbers.map((unit, i) => ({ unit, minutes: times.minutes[i] ?? NaN })),
      place = places?.get(times.step),
      fit = sureFit(timed, place?.step.learning === undefined ? steps.length : 1),
      plain = plainOf(latest({ ...times, minutes: plainTimes(timed, fit) }), seed),
      source: Source = {
        file,
        ...(plain.from === null || plain.to === null ? {} : { from: plain.from, to: plain.to }),
      },
      at = place === undefined ? undefined : timePlace(place, isWhole),
      parts = writtenParts(fit, plain, source, {
        ...{ path: place?.path ?? pathOf(times.step), learning: place?.step.learning },
        hasScenario: places !== undefined,
        timePath: at === undefined ? `${pathOf(times.step)}.work` : at.path,
        why: at?.path === null ? at.why : '',
        isProcess: at !== undefined && at.path !== null && at.isProcess,
        isWhole,
      });
    return {
      step: times.step,
      ...{ n: fit.n, units: fit.units, learns: fit.learns, rate: fit.rate },
      curve: fit.curve?.curve ?? null,
      floor: fit.floor,
      ...{ mean: plain.mean, cv: plain.cv, distribution: plain.distribution, from: plain.from, to: plain.to },
      times: timed,
      line: lineOf(fit),
      ...parts,
      told: [...fit.told, ...plain.fit.warnings.map((warning) => warning.told), ...parts.told],
    };
  });
}

interface Plain {
  readonly fit: FittedTimes;
  /** Minutes. */
  readonly mean: number;
  readonly cv: number | null;
  readonly distribution: string;
  readonly from: string | null;
  readonly to: string | null;
}

/** Fits times without learning; each step has random numbers of its own. */
function plainOf({ step, minutes, at, by }: NumberedTimes, seed: string): Plain {
  const isDated = at.every((each) => !Number.isNaN(each)),
    fit = fitTimes(minutes, { ...(isDated && { at }), by, seed: `${seed}/${step}` }),
    { n, mean, variance } = sampleOf(minutes),
    { chosen } = fit;
  return {
    ...{ fit, mean, cv: n < 2 ? null : Math.sqrt((variance * n) / (n - 1)) / mean },
    distribution: typeof chosen === 'string' ? chosen : chosen.name,
    from: isDated ? dayText(at.reduce((a, b) => Math.min(a, b))) : null,
    to: isDated ? dayText(at.reduce((a, b) => Math.max(a, b))) : null,
  };
}

/**
 * Learning where nobody expects it is told only where it is sure allowing for all steps looked at
 * (Bonferroni): of 50 steps that do not learn one or two would else seem to.
 */
function sureFit(times: readonly TimedUnit[], looked: number): FitOfLearning {
  const fit = fitLearning(times, LEVEL);
  if (looked === 1) return fit;
  const strict = fitLearning(times, 1 - (1 - LEVEL) / looked);
  return { ...fit, learns: strict.learns, floor: strict.floor, told: strict.told };
}

/** Minutes along the curve, at the first unit, at doublings, at the bend, and at the last. */
function lineOf({ learns, curve, units }: FitOfLearning): TimedUnit[] {
  if (!learns || curve === null) return [];
  const at: number[] = [];
  for (let unit = 1; unit < units.to; unit *= 2) at.push(unit);
  const all = new Set([...at, ...(curve.flatFrom < units.to ? [curve.flatFrom] : []), units.to]);
  return [...all]
    .sort((a, b) => a - b)
    .map((unit) => ({ unit, minutes: curve.first * exp(logFactor(curve, unit)) }));
}

interface Where {
  /** Of the step. */
  readonly path: string;
  readonly learning: Learning | undefined;
  readonly hasScenario: boolean;
  readonly timePath: string | null;
  readonly why: string;
  readonly isProcess: boolean;
  readonly isWhole: boolean;
}

type Parts = Pick<LearningResult, 'told' | 'entries' | 'notWritten'>;

/** Learning and plain times go together: the ones without the other would be counted twice, or not at all. */
function writtenParts(fit: FitOfLearning, plain: Plain, source: Source, where: Where): Parts {
  const { path, learning, hasScenario, timePath, why, isProcess, isWhole } = where,
    told: string[] = [],
    none = (sentence: string): Parts => ({ told, entries: [], notWritten: [sentence] });
  if (timePath === null) return none(why);
  if (fit.learns && isProcess) return none('Times of a process fall, which a scenario does not have.');
  const work = timeEntry(timePath, plain.fit.distribution, basisOf(plain.fit.n, source)),
    rate = fit.learns
      ? writtenLearning(fit, source, learning?.builtBefore)
      : learning === undefined
        ? null
        : notLearnt(fit, source);
  // Of a log times are told by themselves, and both files may be included.
  if (learning === undefined && rate === null)
    return { told, entries: isWhole ? [] : [work], notWritten: isWhole ? [BY_TIMES] : [] };
  if (!hasScenario)
    return none(
      'Without a scenario it is not known whether the step has `learning`, so neither it nor the time of ' +
        `the first unit is written. As learning: ${flow(rate ?? {})}`,
    );
  if (learning === undefined)
    return none(
      'The step has no `learning` in the scenario, so neither it nor the time of the first unit is ' +
        `written. To take both, give the step: learning: ${flow(rate ?? {})}`,
    );
  if (rate === null)
    return none(
      'The step learns in the scenario, and these times do not tell how: nothing is written of its work, ' +
        'which is that of the first unit there.',
    );
  const kept = keptFloor(fit, learning, told),
    entries: Entry[] = [entryOf(`${path}.learning`, { ...(rate as object), ...kept })];
  return { told, entries: [...entries, work], notWritten: [] };
}

const BY_TIMES = 'Its work is written by `--of times`.';

/** A scenario that learns where no learning shows: the times stand as they are. Null of too few times. */
const notLearnt = ({ curve, rate, n }: FitOfLearning, source: Source): Written | null =>
  curve === null || rate === null
    ? null
    : {
        rate: {
          value: '100 %',
          basis: basisOf(n, source),
          note: `no learning shows; interval ${roughPercent(rate.low)} to ${roughPercent(rate.high)}`,
        },
      };

/** The floor of the scenario stays where the times have not gone below it. */
function keptFloor(fit: FitOfLearning, learning: Learning | undefined, told: string[]): { floor?: string } {
  const floor = learning?.floor ?? 0,
    { curve, units } = fit;
  if (!fit.learns || curve === null || fit.floor !== null || floor === 0) return {};
  const least = exp(logFactor(curve, units.to));
  if (least > floor) return { floor: percentText(floor) };
  told.push(
    `The scenario has a floor of ${roughPercent(floor)}; the times have gone on to ${roughPercent(least)} ` +
      'of the first, so it is left out.',
  );
  return {};
}
