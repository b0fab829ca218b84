import type { Equipment } from '../types/plant.js';
import type { ReliefKind } from '../types/possible.js';
import type { Scenario } from '../types/scenario.js';
import type { Thing } from './thing.js';

export type { ReliefKind };

/** One small change of a scenario that may help. */
export interface Relief {
  readonly kind: ReliefKind;
  /**
   * What is changed, as a planner reads it: `one person more in welders (hall)`; tells it from all others.
   */
  readonly text: string;
  /** Of what it is more, or less. */
  readonly of: Thing;
  /** Tells reliefs of one kind and thing apart: `rework`, `arrival bank`, a kind of defect. */
  readonly which?: string | undefined;
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

/** With other equipment that stations of a site share. */
export const withEquipment = (
  of: Scenario,
  site: string,
  name: string,
  change: (equipment: Equipment) => Equipment,
): Scenario =>
  withEntry(of, 'sites', site, ({ equipment = {}, ...its }) => ({
    ...its,
    ...withEntry({ equipment }, 'equipment', name, change),
  }));
