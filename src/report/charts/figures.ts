import { bounds } from '../../study/format.js';
import { type Estimate, isSame } from '../../study/statistics/estimate.js';
import { decimalsOf, rounded } from '../first/figures.js';

/** Writes estimates of one picture, or one column of it, with one number of decimals at most. */
export interface Figures {
  /** `3.44`. */
  readonly mean: (estimate: Estimate) => string;
  /** `+0.30`: of a difference. */
  readonly signed: (estimate: Estimate) => string;
  /** `3.44 (3.42 to 3.46)`; the mean alone where both ends read like it, `none` where there is no value. */
  readonly short: (estimate: Estimate) => string;
}

/**
 * Digits that can be read off a picture: of each estimate as far as its interval allows, but no
 * more than three digits of the greatest where there are decimals, and of numbers below 1 two. `scale` is 100
 * for per cent.
 */
export function figures(all: readonly Estimate[], scale = 1): Figures {
  const greatest = Math.max(0, ...all.flatMap(ends).map((value) => Math.abs(value * scale))),
    size = greatest > 0 ? Math.floor(Math.log10(greatest) + 1e-9) : 0,
    most = size < 0 ? 1 - size : Math.max(0, 2 - size);
  const write = (estimate: Estimate, value: number): string =>
    rounded(value * scale, Math.min(most, decimals(estimate, scale)));
  const mean = (estimate: Estimate): string => {
    const text = write(estimate, estimate.mean);
    // Without an interval a zero at the end tells nothing.
    return isSure(estimate) ? text : text.replace(/(\.\d*?)0+$/, '$1').replace(/\.$/, '');
  };
  return {
    mean,
    signed: (estimate) => {
      const text = mean(estimate);
      return estimate.mean > 0 && /[1-9]/.test(text) ? `+${text}` : text;
    },
    short: (estimate) => {
      if (estimate.n === 0) return 'none';
      const { low, high } = estimate,
        middle = mean(estimate);
      if (!isSure(estimate) || low === null || high === null) return `${middle} (${bounds(estimate, scale)})`;
      const [from, to] = [write(estimate, low), write(estimate, high)];
      return from === middle && to === middle ? middle : `${middle} (${from} to ${to})`;
    },
  };
}

/** The same of a single estimate. */
export const told = (estimate: Estimate, scale = 1): string => figures([estimate], scale).mean(estimate);
export const toldShort = (estimate: Estimate, scale = 1): string =>
  figures([estimate], scale).short(estimate);

/** `3.44 a day (3.42 to 3.46)`, `20 a week in every build`. */
export const toldOf = (estimate: Estimate, unit: string): string => {
  if (isSame(estimate)) return `${told(estimate)} ${unit} in every build`;
  const [middle = '', ...rest] = toldShort(estimate).split(' (');
  return [`${middle} ${unit}`, ...rest].join(' (');
};

/** Whether it has an interval that is one. */
const isSure = (estimate: Estimate): boolean =>
  estimate.needs === undefined &&
  estimate.most === undefined &&
  !isSame(estimate) &&
  estimate.low !== null &&
  estimate.high !== null;

const ends = ({ mean, low, high }: Estimate): number[] =>
  [mean, low ?? mean, high ?? mean].filter((value) => Number.isFinite(value));

/** As on the first screen of the page; without an interval three digits. */
function decimals(estimate: Estimate, scale: number): number {
  const known = isSure(estimate) ? decimalsOf(estimate, scale) : null,
    size = Math.abs(estimate.mean * scale) / 100;
  return known ?? (size > 0 ? -Math.floor(Math.log10(size) + 1e-9) : 0);
}
