import type { Scenario } from '../../scenario/types/scenario.js';
import type { Thing } from './thing.js';

export const RELIEF_KINDS = [
  'person',
  'team',
  'place',
  'space',
  'truck',
  'departure',
  'carrier',
  'target stock',
  'lot',
  'lead time',
  'stock',
  'delivery',
  'lateness',
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
  /** Of what it is more, or less. */
  readonly of: Thing;
  /** A changed copy; the scenario itself stays. */
  readonly change: (scenario: Scenario) => Scenario;
}

/** With one entry of one of its maps changed; the order of names stays. */
export const withEntry = <
  Key extends string,
  Of extends Readonly<Record<Key, Readonly<Record<string, unknown>>>>,
>(
  of: Of,
  map: Key,
  name: string,
  change: (value: Of[Key][string]) => Of[Key][string],
): Of => ({
  ...of,
  [map]: Object.fromEntries(
    Object.entries(of[map]).map(([key, value]) => [
      key,
      key === name ? change(value as Of[Key][string]) : value,
    ]),
  ),
});
