import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { exp } from '../../random/elementary.js';
import { power } from '../../random/power.js';
import {
  type Curve,
  type FittedCurve,
  flatteningCurve,
  logFactor,
  type TimedUnit,
  unitCurve,
  wrightCurve,
} from './learning-curve.js';
import { counted, roughPercent, roughTime } from './measured.js';
import type { Bounded } from './two-looks.js';

/** What times by build number say of learning. */
export interface FitOfLearning {
  readonly n: number;
  /** Least and greatest build number. */
  readonly units: { readonly from: number; readonly to: number };
  /** Whether times fall for sure: the whole interval of the slope is below 0. */
  readonly learns: boolean;
  /** Null where the times are too few or too close in number to tell anything. */
  readonly curve: FittedCurve | null;
  /** 2^slope, with Student's t interval of the slope. */
  readonly rate: Bounded | null;
  /** Lowest time as a share of the first unit's; null without a floor that clearly shows. */
  readonly floor: number | null;
  /** All curves that were tried. */
  readonly tried: readonly FittedCurve[];
  readonly told: readonly string[];
}

/** Fewer times, or units of less than one doubling, tell no rate. */
const FEWEST = 6,
  DOUBLING = 2;

/**
 * Another form than Crawford's is taken where its AIC is lower by more than this: of times without a floor 1 or
 * 2 of 100 samples then show one, of 80 with a scatter of 15 % and flat from the 8th on about 89.
 */
const CLEARLY = 4;

/**
 * Learning from times of one step: a line of ln minutes over ln unit, Wright's form or one with a floor where
 * that clearly fits better.
 * @param times of a single step, units numbered by how often the step had been done, from 1
 * @param level of intervals, above 0 and below 1
 * @throws RangeError where a time is not above 0 or a unit no whole number from 1
 */
export function fitLearning(times: readonly TimedUnit[], level = 0.95): FitOfLearning {
  for (const { unit, minutes } of times) {
    if (!(Number.isInteger(unit) && unit >= 1))
      throw new RangeError(`learning: expected a whole build number from 1, got ${unit}`);
    if (!(minutes > 0)) throw new RangeError(`learning: expected minutes above 0, got ${minutes}`);
  }
  const n = times.length,
    from = times.reduce((least, { unit }) => Math.min(least, unit), Infinity),
    to = times.reduce((most, { unit }) => Math.max(most, unit), 0),
    none = { n, units: { from, to }, learns: false, curve: null, rate: null, floor: null, tried: [] };
  if (n < FEWEST) return { ...none, told: [`Only ${counted(n, 'time')}: too few to tell learning.`] };
  if (to < DOUBLING * from)
    return {
      ...none,
      told: [
        `Units ${from} to ${to} are less than one doubling: learning falls by the doubling and cannot be told.`,
      ],
    };
  const crawford = unitCurve(times),
    wright = wrightCurve(times),
    bent = flatteningCurve(times),
    tried = [crawford, wright, ...(bent === null ? [] : [bent])],
    curve = chosen(crawford, wright, bent),
    half = tQuantile((1 + level) / 2, curve.freedom) * curve.slopeError,
    learns = curve.slope + half < 0,
    rate = {
      value: power(2, curve.slope),
      low: power(2, curve.slope - half),
      high: power(2, curve.slope + half),
      level,
    },
    floor = learns && curve.flatFrom < Infinity ? exp(logFactor(curve, curve.flatFrom)) : null;
  return {
    n,
    units: { from, to },
    learns,
    curve,
    rate,
    floor,
    tried,
    told: tell(n, from, to, curve, rate, learns, floor),
  };
}

function chosen(crawford: FittedCurve, wright: FittedCurve, bent: FittedCurve | null): FittedCurve {
  if (bent !== null && bent.slope < 0 && bent.aic < Math.min(crawford.aic, wright.aic) - CLEARLY) return bent;
  return wright.aic < crawford.aic - CLEARLY ? wright : crawford;
}

/**
 * The plain times, as of the first unit, for the fit of times: each divided by what learning leaves of it.
 * Without learning they are as they were.
 */
export const plainTimes = (times: readonly TimedUnit[], { learns, curve }: FitOfLearning): number[] =>
  times.map(({ unit, minutes }) =>
    learns && curve !== null ? minutes / exp(logFactor(curve, unit)) : minutes,
  );

const NAMES: Readonly<Record<Curve, string>> = {
  unit: 'unit form (Crawford)',
  'cumulative mean': 'cumulative mean form (Wright)',
};

function tell(
  n: number,
  from: number,
  to: number,
  curve: FittedCurve,
  rate: Bounded,
  learns: boolean,
  floor: number | null,
): string[] {
  const of = `${counted(n, 'time')} of units ${from} to ${to}`,
    interval = `${roughPercent(rate.level)} interval ${roughPercent(rate.low)} to ${roughPercent(rate.high)}`;
  if (!learns)
    return [
      rate.low > 1
        ? `Times rise with the build number in ${of}: to ${roughPercent(rate.value)} with each doubling ` +
          `(${interval}). That is no learning; look for what changed.`
        : `No learning shows in ${of}: the rate would be ${roughPercent(rate.value)} (${interval}, which holds ` +
          `100 %), so the times stand as they are.`,
    ];
  return [
    `Each doubling of the build number leaves ${roughPercent(rate.value)} of the time (${interval}; ${of}, ` +
      `${NAMES[curve.curve]}); the first unit took about ${roughTime(curve.first)}.`,
    ...(floor === null
      ? []
      : [
          `From unit ${curve.flatFrom} on times fall no more: the floor is ${roughPercent(floor)} of the first.`,
        ]),
    ...(from > 1
      ? [`The records begin at unit ${from}: the time of the first unit is drawn back along the curve.`]
      : []),
  ];
}
