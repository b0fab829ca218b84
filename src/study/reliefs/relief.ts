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
