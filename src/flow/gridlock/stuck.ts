import type { Unit } from '../floor/unit.js';
import type { Alive } from './alive.js';
import { type LackKind, lacksOf } from './lacks.js';

/** One unit or sub-assembly that can never go on: where it stands, what stays with it, what it waits for. */
export interface Stuck {
  readonly number: number;
  /** Name of the route: the unit's, or the feeder of a sub-assembly. */
  readonly route: string;
  /** It stands in a place of a station, in a space ahead of a station or lane, in a truck, or outside. */
  readonly in: 'place' | 'space' | 'truck' | 'outside';
  /** The station or lane; where it wants to go in, if it stands outside. */
  readonly where: string;
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
}
export const NO_STANDSTILL: Standstill = { ring: [], behind: 0 };

/** @param members of the ring, who can never go on */
export function standstillOf(alive: Alive, members: readonly Unit[]): Standstill {
  return {
    ring: members.map((unit) => ({
      ...whereIs(unit),
      number: unit.number,
      route: unit.step.route.name,
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
  };
}

function whereIs(unit: Unit): Pick<Stuck, 'in' | 'where'> {
  const { place, truck, arrivedBy, step } = unit,
    wanted = step.station?.name ?? step.lane!.name;
  if (place !== null) return { in: 'place', where: place.station.name };
  if (truck !== null) return { in: 'truck', where: truck.lane.name };
  // As in a limited one, which is a station of that name.
  if (arrivedBy !== null) return { in: 'place', where: `${arrivedBy.name}: arrival bank` };
  return { in: step.buffer.holds(unit) ? 'space' : 'outside', where: wanted };
}
