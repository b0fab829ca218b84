import type { Distribution } from '../random/distribution.js';

/** The distribution of `factor` (above 0) times the quantity: the form and the coefficient of variation stay. */
export function scaled(d: Distribution, factor: number): Distribution {
  const by = (value: number): number => value * factor;
  switch (d.kind) {
    case 'constant':
      return { ...d, value: by(d.value) };
    case 'uniform':
      return { ...d, low: by(d.low), high: by(d.high) };
    case 'triangular':
    case 'pert':
      return { ...d, low: by(d.low), likely: by(d.likely), high: by(d.high) };
    case 'exponential':
      return { ...d, mean: by(d.mean) };
    case 'gamma':
    case 'weibull':
      return { ...d, scale: by(d.scale) };
    case 'lognormal':
      return { ...d, mu: d.mu + Math.log(factor) };
    case 'normal':
      return { ...d, mean: by(d.mean), sd: by(d.sd), low: by(d.low), high: by(d.high) };
    case 'discrete':
    case 'empirical':
      return { ...d, values: d.values.map(by) };
  }
}
