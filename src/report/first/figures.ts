import { bounds, mean } from '../../study/format.js';
import type { Estimate } from '../../study/statistics/estimate.js';

/**
 * The step to which a figure and its interval are rounded: the largest power of ten that is no more than two
 * thirds of the half-width, so that no digit is told that chance blurs; null where there is no width.
 */
function stepOf({ low, high }: Estimate, scale: number): number | null {
  const half = low === null || high === null ? 0 : ((high - low) / 2) * scale;
  return half > 0 ? Math.floor(Math.log10(half / 1.5) + 1e-9) : null;
}

/** With commas, and with the zeros at the end that its step makes tell something. */
function written(value: number, step: number): string {
  const digits = Math.min(6, Math.max(0, -step));
  return new Intl.NumberFormat('en', {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
    signDisplay: 'negative',
  }).format(value);
}

/** To the nearest step. */
function stepped(value: number, step: number): number {
  const size = 10 ** Math.abs(step),
    steps = Math.round((step < 0 ? value * size : value / size) + 1e-9);
  return step < 0 ? steps / size : steps * size;
}

/** The mean, `0.30`, `16,480`: with as many digits as its interval bears. */
export function figure(estimate: Estimate, scale = 1): string {
  const step = stepOf(estimate, scale);
  return step === null ? mean(estimate, scale) : written(stepped(estimate.mean * scale, step), step);
}

/** The interval, `3.42 to 3.46`, or why there is none. */
export function range(estimate: Estimate, scale = 1): string {
  const step = stepOf(estimate, scale),
    { low, high } = estimate;
  if (step === null || low === null || high === null) return bounds(estimate, scale);
  return `${written(stepped(low * scale, step), step)} to ${written(stepped(high * scale, step), step)}`;
}
