import type { Distribution } from '../../random/distribution.js';
import { exp, expm1 } from '../../random/elementary.js';

/** Significant digits: one more than hold when it is read back. */
const DIGITS = 7;
/** Of a Weibull's shape, as the scenario takes it; others are written by mean and cv. */
const LEAST_SHAPE = 0.1,
  GREATEST_SHAPE = 100;
/** The greatest coefficient of variation that a scenario takes. */
const GREATEST_CV = 10;

/**
 * A distribution of minutes as a scenario has it: `{ mean: 42 min, cv: 0.31 }`. Read back it is the same to
 * six digits, but observed values, which come back as times with their chances.
 * @throws RangeError where a scenario has no form for it: a normal whose mean before the cut is not above 0, a
 *   cv above 10, an end below 0
 */
export function written(distribution: Distribution): string {
  switch (distribution.kind) {
    case 'constant':
      return time(distribution.value);
    case 'exponential':
      return `{ exponential: { mean: ${spell(distribution.mean)} } }`;
    case 'lognormal': {
      const { mu, sigma } = distribution,
        square = sigma * sigma;
      return `{ ${meanAndCv(exp(mu + square / 2), Math.sqrt(expm1(square)))} }`;
    }
    case 'gamma': {
      const { shape, scale } = distribution;
      return `{ gamma: { ${meanAndCv(shape * scale, 1 / Math.sqrt(shape))} } }`;
    }
    case 'weibull': {
      const { shape, scale } = distribution;
      if (!(shape >= LEAST_SHAPE && shape <= GREATEST_SHAPE))
        throw new RangeError(
          `weibull shape: expected ${LEAST_SHAPE} to ${GREATEST_SHAPE}, as a scenario takes it, got ${shape}`,
        );
      return `{ weibull: { shape: ${digits(shape)}, scale: ${spell(scale)} } }`;
    }
    case 'normal': {
      const { mean, sd, low, high } = distribution;
      return `{ normal: { mean: ${spell(mean)}, sd: ${spell(sd)}, low: ${time(low)}, high: ${time(high)} } }`;
    }
    case 'uniform':
      return `{ uniform: { low: ${time(distribution.low)}, high: ${time(distribution.high)} } }`;
    case 'triangular':
      return `{ triangular: { ${points(distribution)} } }`;
    case 'pert':
      return `{ ${points(distribution)} }`;
    case 'discrete':
      return chances(distribution.values, distribution.weights);
    case 'empirical':
      return chances(
        distribution.values,
        distribution.values.map(() => 1),
      );
    case 'mixture': {
      const parts = shares(distribution.weights).map(
        (share, k) => `{ share: ${share}, time: ${written(distribution.parts[k])} }`,
      );
      return `{ mixture: [${parts.join(', ')}] }`;
    }
  }
}

/** Whether a scenario has a form for it. */
export function canBeWritten(distribution: Distribution): boolean {
  try {
    written(distribution);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

function meanAndCv(mean: number, cv: number): string {
  if (!(cv <= GREATEST_CV)) throw new RangeError(`cv: expected at most ${GREATEST_CV}, got ${cv}`);
  return `mean: ${spell(mean)}, cv: ${digits(cv)}`;
}

const points = ({ low, likely, high }: { low: number; likely: number; high: number }): string =>
  `low: ${time(low)}, likely: ${time(likely)}, high: ${time(high)}`;

function time(minutes: number): string {
  if (!(minutes >= 0 && minutes < Infinity))
    throw new RangeError(`time: expected finite minutes of at least 0, got ${minutes}`);
  return `${digits(minutes)} min`;
}

function spell(minutes: number): string {
  if (!(minutes > 0)) throw new RangeError(`time: expected minutes above 0, got ${minutes}`);
  return time(minutes);
}

/** Equal times are one, with the sum of their weights. */
function chances(values: readonly number[], weights: readonly number[]): string {
  const of = new Map<string, number>();
  values.forEach((value, k) => of.set(time(value), (of.get(time(value)) ?? 0) + weights[k]));
  const each = shares([...of.values()]);
  return `{ discrete: { ${[...of.keys()].map((text, k) => `${text}: ${each[k]}`).join(', ')} } }`;
}

/** Shares of one, as numbers whose sum is 1 to the ninth decimal. */
function shares(weights: readonly number[]): string[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => plain((weight / total).toFixed(12)));
}

/** A number with so many digits that count, never as 1e-7. */
function digits(value: number): string {
  const rounded = Number(value.toPrecision(DIGITS));
  if (Math.abs(rounded) >= 1e21) throw new RangeError(`number: expected one below 1e21, got ${value}`);
  const text = String(rounded);
  return text.includes('e') ? plain(rounded.toFixed(20)) : text;
}

const plain = (decimals: string): string =>
  decimals.includes('.') ? decimals.replace(/\.?0+$/, '') : decimals;
