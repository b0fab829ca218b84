import type { Distribution } from '../../random/distribution.js';
import { sumOf } from '../statistics/sums.js';
import { kaplanMeier, type Survival } from './kaplan-meier.js';
import {
  exponentialLifetime,
  type Lifetime,
  leastMean,
  type WeibullLifetime,
  weibullLifetime,
} from './lifetimes.js';
import { counted, roughPercent, roughTime } from './measured.js';
import type { Span, Spans } from './spans.js';
import type { Bounded } from './two-looks.js';

/** What spans say of how long something lasts. */
export interface FitOfSpans {
  /** Spans that ended, and those cut off. */
  readonly ended: number;
  readonly cut: number;
  readonly exponential: Lifetime | null;
  readonly weibull: WeibullLifetime | null;
  readonly chosen: 'exponential' | 'weibull' | 'constant' | 'nothing';
  /** What a scenario should have; null where nothing ended. */
  readonly distribution: Distribution | null;
  /** Of what was chosen; null of a constant, or of nothing. */
  readonly mean: Bounded | null;
  /** Where nothing ended: the mean is no less, at the level. */
  readonly atLeast?: number;
  readonly survival: readonly Survival[];
  readonly told: readonly string[];
}

/** Failures and repairs of one station, as its stops tell. */
export interface FitOfStops {
  readonly spans: Spans;
  readonly toFailure: FitOfSpans;
  readonly toRepair: FitOfSpans;
  readonly told: readonly string[];
}

/** A shape is not told by fewer ends than this: the exponential is taken. */
const FEWEST = 8;

/**
 * Time to failure and time to repair from the spans of a stop log. Exponential or Weibull, whichever has the
 * lower AIC. What runs before the first failure has no known beginning: it counts for an exponential mean,
 * which does not ask how old something is, and not for a Weibull.
 * @param level of intervals, above 0 and below 1
 */
export function fitStops(spans: Spans, level = 0.95): FitOfStops {
  return {
    spans,
    toFailure: fitSpans(spans.up, level, {
      what: 'time to failure',
      running: spans.running,
      failures: spans.failures,
    }),
    toRepair: fitSpans(spans.down, level, { what: 'time to repair' }),
    told: tellSpans(spans),
  };
}

interface Asked {
  readonly what: string;
  /** Minutes and ends in all, where more is known for a constant rate than the spans tell. */
  readonly running?: number;
  readonly failures?: number;
}

export function fitSpans(spans: readonly Span[], level: number, asked: Asked): FitOfSpans {
  const ends = spans.filter(({ ended }) => ended),
    total = sumOf(spans, ({ minutes }) => minutes),
    ended = ends.length,
    cut = spans.length - ended,
    survival = kaplanMeier(spans),
    all = { minutes: asked.running ?? total, ends: asked.failures ?? ended },
    found = { ended, cut, survival, exponential: null, weibull: null, distribution: null, mean: null };
  if (all.ends === 0 || all.minutes <= 0)
    return {
      ...found,
      chosen: 'nothing',
      ...(all.minutes > 0 ? { atLeast: leastMean(all.minutes, level) } : {}),
      told: [tellNothing(asked.what, all.minutes, level)],
    };
  const first = ends[0]?.minutes;
  if (cut === 0 && ended > 1 && ends.every(({ minutes }) => minutes === first) && first !== undefined)
    return {
      ...found,
      chosen: 'constant',
      distribution: { kind: 'constant', value: first },
      told: [`${capital(asked.what)} was ${roughTime(first)} each of ${counted(ended, 'time')}.`],
    };
  // More minutes than the spans tell are cut spans, or have no known beginning.
  const exponential = exponentialLifetime(all.minutes, all.ends, cut > 0 || all.minutes > total, level),
    weibull = weibullLifetime(spans, level),
    // Of the same spans as the Weibull, so that their AIC can be compared.
    same = ended > 0 ? exponentialLifetime(total, ended, cut > 0, level).aic : Infinity,
    shaped = weibull !== null && ended >= FEWEST && weibull.aic < same,
    best = shaped ? weibull : exponential;
  return {
    ...found,
    exponential,
    weibull,
    chosen: best.name,
    distribution: best.distribution,
    mean: best.mean,
    told: [tellMean(asked.what, best.mean, all.ends, cut), tellChoice(weibull, same, ended, shaped)],
  };
}

function tellMean(what: string, { value, low, high, level }: Bounded, ends: number, cut: number): string {
  const with_ = cut === 0 ? '' : `, ${counted(cut, 'span')} cut off by the end of the watch counted as such`;
  return (
    `Mean ${what} ${roughTime(value)} (${roughPercent(level)} interval ${roughTime(low)} to ` +
    `${roughTime(high)}; ${counted(ends, 'time')}${with_}).`
  );
}

function tellChoice(weibull: WeibullLifetime | null, same: number, ended: number, shaped: boolean): string {
  if (ended < FEWEST)
    return (
      `${counted(ended, 'whole span')} ${ended === 1 ? 'tells' : 'tell'} no shape (${FEWEST} are wanted): ` +
      'exponential, as if it had no memory.'
    );
  if (weibull === null) return 'No Weibull of a shape from 0.1 to 100 fits: exponential.';
  const { value, low, high } = weibull.shape,
    shape = `shape ${value.toFixed(2)} (${low.toFixed(2)} to ${high.toFixed(2)})`,
    apart = Math.abs(weibull.aic - same).toFixed(1);
  return shaped
    ? `Weibull by AIC, ${apart} below the exponential: ${shape}.`
    : `Exponential by AIC, ${apart} below the Weibull of ${shape}.`;
}

const tellNothing = (what: string, minutes: number, level: number): string =>
  minutes > 0
    ? `No end in ${roughTime(minutes)}: the mean ${what} is at least ${roughTime(leastMean(minutes, level))} ` +
      `(${roughPercent(level)} sure).`
    : `Nothing tells the ${what}.`;

/** What became of the stops. */
function tellSpans({ failures, running, headless, joined, before, outside, empty }: Spans): string[] {
  const rule = (n: number, what: string, became: string): string[] =>
    n === 0 ? [] : [`${counted(n, what)} ${became}.`];
  return [
    `${counted(failures, 'failure')} in ${roughTime(running)} of running.`,
    ...rule(headless, 'time', 'to a first failure began before the watch: counted as running time only'),
    ...rule(joined, 'stop', 'overlapping or touching another: taken as one with it'),
    ...rule(before, 'stop', 'under way when the watch began: neither failure nor repair time'),
    ...rule(outside, 'stop', 'outside the watch or ending before it begins: left out'),
    ...rule(empty, 'span', 'without a minute that counts: a failure, but no time'),
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
