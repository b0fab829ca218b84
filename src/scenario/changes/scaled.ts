import type { Distribution } from '../../random/distribution.js';
import { meanOf, scaled, varianceOf } from '../../random/distribution.js';
import { spreadBy } from '../../random/spread.js';
import type { Scenario } from '../types/scenario.js';
import { lengthened } from './lengths.js';
import { type Kind, mapTimes, type Named } from './times.js';

/** What a scale can be set for. */
export const SCALES = ['spread', 'times', 'stops'] as const;
export type ScaleOf = (typeof SCALES)[number];

/** By how much, of what; `of` are names of things, none: everything. */
export interface Scale {
  readonly what: ScaleOf;
  readonly factor: number;
  readonly of: readonly string[];
}

export interface Scaled {
  readonly scenario: Scenario;
  /** Times, and outages, that there are to be scaled. */
  readonly count: number;
  /** Of them those whose spread was cut, since no time is below 0. */
  readonly cut: number;
  /** Of them those that would spread over more than `WIDEST` means. */
  readonly tooWide: number;
}

/** Most that a coefficient of variation may be, as in a time that is written. */
export const WIDEST = 10;

const ASKED: Readonly<Record<ScaleOf, readonly Kind[]>> = {
  spread: ['work', 'way', 'stop'],
  times: ['work', 'way'],
  stops: ['stop'],
};

/** The scenario with the times of some things longer, wider, or its stops longer; all else stays. */
export function scaledScenario(scenario: Scenario, { what, factor, of }: Scale): Scaled {
  let [count, cut, tooWide] = [0, 0, 0];
  const isMeant = ({ kind, names }: Named): boolean =>
    ASKED[what].includes(kind) && (of.length === 0 || of.some((name) => names.includes(name)));
  const widened = (time: Distribution): Distribution => {
    if (time.kind === 'constant') return time;
    count++;
    const { distribution, isCut } = spreadBy(time, factor);
    if (isCut) cut++;
    if (factor > 1 && isTooWide(distribution)) tooWide++;
    return distribution;
  };
  const longer = (time: Distribution): Distribution => {
    if (meanOf(time) === 0) return time;
    count++;
    return factor === 0 ? { kind: 'constant', value: 0 } : factor === 1 ? time : scaled(time, factor);
  };
  const change = what === 'spread' ? widened : longer,
    timed = mapTimes(scenario, (time, named) => (isMeant(named) ? change(time) : time));
  if (what !== 'stops') return { scenario: timed, count, cut, tooWide };
  const { outages, count: some } = lengthened(timed, factor, of);
  return { scenario: { ...timed, outages }, count: count + some, cut, tooWide };
}

const isTooWide = (time: Distribution): boolean => Math.sqrt(varianceOf(time)) > WIDEST * meanOf(time);
