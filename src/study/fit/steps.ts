import type { StepTimes } from '../../records/table/clocked.js';
import { dayText } from '../../records/table/table.js';
import type { Estimate } from '../statistics/estimate.js';
import { momentsOf } from '../statistics/interval.js';
import { valuesSeen } from './factors.js';
import type { Fitted } from './fitted.js';
import { curveOf } from './kinds/families.js';
import type { StepPlace } from './places.js';
import { clockedMean, LEVEL } from './shown/against.js';
import { type Histogram, histogramOf } from './shown/histogram.js';
import { type QuantilePlot, quantilePlot } from './shown/quantiles.js';
import { type FittedTimes, fitTimes } from './times.js';

/** What the times of one step say. */
export interface FittedStep {
  readonly step: string;
  /** Minutes, in the order of the table. */
  readonly times: readonly number[];
  readonly fit: FittedTimes;
  /** Minutes, of all times as clocked. */
  readonly mean: Estimate;
  /** Standard deviation over mean; null of a single time. */
  readonly cv: number | null;
  readonly histogram: Histogram;
  readonly quantiles: QuantilePlot | null;
  /** Why an option that matters is not written, by option. */
  readonly unwritten: readonly { readonly option: string; readonly why: string }[];
  readonly place: StepPlace;
  /** First and last day; null where a row of the step has none. */
  readonly from: string | null;
  readonly to: string | null;
}

/** Fits the times of each step; each has random numbers of its own, so that no step depends on the others. */
export function fitStep({ step, minutes, at, by }: StepTimes, seed: string, place: StepPlace): FittedStep {
  const isDated = at.every((each) => !Number.isNaN(each)),
    whyNot = new Map(
      Object.entries(by).map(([option, column]) => [option, place.whyNot(option, valuesSeen(column))]),
    ),
    options = [...whyNot].flatMap(([option, why]) => (why === null ? [option] : [])),
    stream = `${seed}/${step}`,
    fit = fitTimes(minutes, {
      ...(isDated && { at }),
      by,
      options,
      factorsNow: place.factorsNow,
      seed: stream,
    }),
    { mean, variance, n } = momentsOf(minutes),
    { sample, unit, distribution } = fit;
  return {
    step,
    times: minutes,
    fit,
    place,
    mean: clockedMean(minutes, LEVEL),
    cv: n < 2 ? null : Math.sqrt(variance) / mean,
    histogram: histogramOf(sample, unit, curveOf(distribution)),
    quantiles: plotOf(fit, `${stream}/band`) ?? null,
    unwritten: fit.options
      .filter(({ isFelt }) => isFelt)
      .flatMap(({ option }) => {
        const why = whyNot.get(option) ?? whyLeft(fit, option);
        return why === null ? [] : [{ option, why }];
      }),
    from: isDated ? dayText(at.reduce((a, b) => Math.min(a, b))) : null,
    to: isDated ? dayText(at.reduce((a, b) => Math.max(a, b))) : null,
  };
}

/** Against what a scenario gets, else against the nearest of what does not stand. */
function plotOf(
  { candidates, chosen, sample, distribution, unit }: FittedTimes,
  stream: string,
): QuantilePlot | undefined {
  const shown = isFitted(chosen) ? chosen : candidates.at(0);
  return chosen === 'three points' || shown === undefined
    ? quantilePlot(sample, distribution, {
        against: 'three points',
        isChosen: true,
        stream,
        unit,
        hasBand: false,
      })
    : quantilePlot(sample, shown.distribution, {
        ...{ against: shown.name, isChosen: isFitted(chosen), stream, unit, hasBand: true },
      });
}

export const isFitted = (chosen: FittedTimes['chosen']): chosen is Fitted => typeof chosen !== 'string';

function whyLeft({ taken: { left, factors, kept } }: FittedTimes, option: string): string | null {
  if (kept.includes(option)) return 'the table does not contradict the factor that the scenario has';
  const found = left.find((each) => each.option === option),
    others = factors.map((each) => each.option).join(' and ');
  if (found === undefined) return null;
  return found.why === 'explained'
    ? `it matters no more when ${others} is taken out`
    : `the table does not tell it from ${others}`;
}
