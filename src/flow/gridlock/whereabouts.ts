import type { Unit } from '../floor/unit.js';

/** A unit or sub-assembly, and where it is. */
export interface Whereabouts {
  readonly number: number;
  /** Name of the route: the unit's, or the feeder of a sub-assembly. */
  readonly route: string;
  /** It stands in a place of a station, in a space ahead of a station or lane, in a truck, or outside. */
  readonly in: 'place' | 'space' | 'truck' | 'outside';
  /** The station or lane; where it wants to go in, if it stands outside. */
  readonly where: string;
}

export function whereIs(unit: Unit): Whereabouts {
  const { number, place, truck, arrivedBy, step } = unit,
    at = (standsIn: Whereabouts['in'], where: string): Whereabouts => ({
      ...{ number, route: step.route.name },
      ...{ in: standsIn, where },
    });
  if (place !== null) return at('place', place.station.name);
  if (truck !== null) return at('truck', truck.lane.name);
  // As in a limited one, which is a station of that name.
  if (arrivedBy !== null) return at('place', `${arrivedBy.name}: arrival bank`);
  return at(step.buffer.holds(unit) ? 'space' : 'outside', step.station?.name ?? step.lane!.name);
}
