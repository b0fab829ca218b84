import type { Distribution } from '../../random/distribution.js';
import type { Scenario } from '../../scenario/types/scenario.js';

export const RELIEF_KINDS = [
  'person',
  'place',
  'space',
  'truck',
  'departure',
  'carrier',
  'work',
  'defect',
  'overtime',
  'failure',
] as const;
export type ReliefKind = (typeof RELIEF_KINDS)[number];

/** One small change of a scenario that may help. */
export interface Relief {
  readonly kind: ReliefKind;
  /**
   * What is changed, as a planner reads it: `one person more in welders (hall)`; tells it from all others.
   */
  readonly text: string;
  /** A changed copy; the scenario itself stays. */
  readonly change: (scenario: Scenario) => Scenario;
}

/** A map with one of its entries changed; the order of names stays. */
export function withEntry<Value>(
  map: Readonly<Record<string, Value>>,
  name: string,
  change: (value: Value) => Value,
): Readonly<Record<string, Value>> {
  return Object.fromEntries(
    Object.entries(map).map(([key, value]) => [key, key === name ? change(value) : value]),
  );
}

/**
 * The distribution of `factor` (above 0) times the quantity: the form and the coefficient of variation stay.
 */
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
