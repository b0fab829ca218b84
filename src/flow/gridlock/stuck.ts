import type { Unit } from '../floor/unit.js';
import type { Alive } from './alive.js';
import { heldOf } from './held.js';
import type { Held } from './holder.js';
import { type LackKind, lacksOf } from './lacks.js';
import { type Whereabouts, whereIs } from './whereabouts.js';

/** One unit or sub-assembly that can never go on: where it stands, what stays with it, what it waits for. */
export interface Stuck extends Whereabouts {
  /** Carriers, and crews of teams, that stay with it. */
  readonly keeps: readonly string[];
  readonly lacks: readonly Lack[];
}
export interface Lack {
  readonly kind: LackKind;
  /** Name of the station, lane, pulse line, feeder, supply, carrier or crew. */
  readonly name: string;
  /** Those who have it, by their index in the ring. */
  readonly by: readonly number[];
}

/** Rule 16: the units that hold each other, by build number, and how many can never go on behind them. */
export interface Standstill {
  readonly ring: readonly Stuck[];
  readonly behind: number;
  /** What the ring lacks, and who on the whole floor has it. */
  readonly held: readonly Held[];
}
export const NO_STANDSTILL: Standstill = { ring: [], behind: 0, held: [] };

/** @param members of the ring, who can never go on */
export function standstillOf(alive: Alive, members: readonly Unit[]): Standstill {
  return {
    ring: members.map((unit) => ({
      ...whereIs(unit),
      keeps: alive.run.shop.companions
        .filter(({ bit }) => (unit.companionBits & bit) !== 0)
        .map(({ resource }) => resource.name),
      lacks: lacksOf(alive, unit).map(({ kind, name, holders }) => ({
        kind,
        name,
        by: holders.map((holder) => members.indexOf(holder)).filter((index) => index >= 0),
      })),
    })),
    behind: alive.dead.length - members.length,
    held: heldOf(alive, members),
  };
}
