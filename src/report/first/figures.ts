import { bounds, exact, mean } from '../../study/format.js';
import { boundsOf, type Estimate, mapped } from '../../study/statistics/estimate.js';

/**
 * Decimals to the largest power of ten that is no more than two thirds of the half-width, so that no digit is
 * told that chance blurs; below 0 left of the point, null where there is no width.
 */
export function decimalsOf({ low, high }: Pick<Estimate, 'low' | 'high'>, scale: number): number | null {
  const half = low === null || high === null ? 0 : ((high - low) / 2) * scale,
    size = Math.max(Math.abs(low ?? 0), Math.abs(high ?? 0)) * scale;
  // Where nothing is left to chance only rounding is between them.
  return half > 1e-9 * size ? -Math.floor(Math.log10(half / 1.5) + 1e-9) : null;
}

/**
 * With commas, and with the zeros at the end that so many decimals make tell something. Halves up, also where
 * 0.575 times 100 falls a hair below 57.5; no negative zero.
 */
export function rounded(value: number, decimals: number): string {
  const shift = 10 ** Math.min(0, decimals),
    near = (value + Math.sign(value) * 1e-9 * Math.abs(value)) * shift,
    text = (decimals < 0 ? Math.round(near) / shift : near).toFixed(Math.max(0, decimals));
  const [whole = '', rest] = text.replace('-', '').split('.');
  return (
    (value < 0 && Number(text) !== 0 ? '-' : '') +
    exact(Number(whole)) +
    (rest === undefined ? '' : `.${rest}`)
  );
}

/** More cannot be read. */
const MOST = 6;

/** The mean, `0.30`, `16,480`: with as many digits as its interval bears. */
export function figure(estimate: Estimate, scale = 1): string {
  const decimals = decimalsOf(estimate, scale);
  return decimals === null
    ? mean({ ...estimate, low: null, high: null }, scale)
    : rounded(estimate.mean * scale, Math.min(MOST, decimals));
}

/** The interval, `3.42 to 3.46`, or why there is none. */
export function range(estimate: Estimate, scale = 1): string {
  const decimals = decimalsOf(estimate, scale),
    { low, high } = estimate;
  if (decimals === null || low === null || high === null) return bounds(estimate, scale);
  const end = (value: number): string => rounded(value * scale, Math.min(MOST, decimals));
  return `${end(low)} to ${end(high)}`;
}

/** So much wider an interval may be told for a digit less. */
const WIDER = 1.3;

/**
 * The interval with one digit less, its ends rounded outwards, where it is then not much wider: of 3.951 to
 * 3.967 `3.95 to 3.97`; else as it is.
 * @param beside told in the same sentence: with no fewer decimals than that has, so that both look alike
 */
export function roundRange(estimate: Estimate, scale = 1, beside?: Estimate): string {
  const { low, high } = boundsOf(mapped(estimate, (value) => value * scale)),
    told = outwards(estimate, scale),
    least = beside === undefined ? null : decimalsTold(beside, scale),
    decimals = decimalsTold(estimate, scale);
  if (least !== null && decimals !== null && least > decimals)
    return `${rounded(low, least)} to ${rounded(high, least)}`;
  return told === null
    ? range(estimate, scale)
    : `${rounded(told.below, told.decimals)} to ${rounded(told.above, told.decimals)}`;
}

/** With a digit less than chance blurs; null where that makes the interval much wider. */
function outwards(
  estimate: Estimate,
  scale: number,
): { readonly below: number; readonly above: number; readonly decimals: number } | null {
  const decimals = (decimalsOf(estimate, scale) ?? NaN) - 1,
    size = 10 ** -decimals,
    { low, high } = boundsOf(mapped(estimate, (value) => value * scale)),
    below = Math.floor(low / size + 1e-9) * size,
    above = Math.ceil(high / size - 1e-9) * size;
  return decimals < MOST && above - below <= WIDER * (high - low) ? { below, above, decimals } : null;
}

/** How many decimals `roundRange` gives it by itself; null where it has no interval. */
function decimalsTold(estimate: Estimate, scale: number): number | null {
  const decimals = outwards(estimate, scale)?.decimals ?? decimalsOf(estimate, scale);
  return decimals === null ? null : Math.min(MOST, decimals);
}

/** Forms of a value as a scenario has them, and how one says them. */
const FORMS: readonly (readonly [form: RegExp, said: string])[] = [
  [/^\{ low: ([^,{}]+), likely: ([^,{}]+), high: ([^,{}]+) \}$/, '$1 to $3, most likely $2'],
  [/^\{ low: ([^,{}]+), high: ([^,{}]+) \}$/, '$1 to $2'],
  [/^\{ mean: ([^,{}]+), cv: ([^,{}]+) \}$/, '$1 on average, spread $2 of it'],
  [/^\{ exponential: \{ mean: ([^,{}]+) \} \}$/, '$1 on average, exponential'],
];

/** `30 min to 4 h, most likely 75 min`; a form that is not known as the scenario has it. */
export function valueTold(value: string): string {
  const [form, said] = FORMS.find(([each]) => each.test(value)) ?? [];
  return form === undefined || said === undefined ? value : value.replace(form, said);
}
