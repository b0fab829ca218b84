import type { Costs } from '../types/costs.js';
import { own } from '../values/raw.js';

/** A place or a space of floor: at a station, or in a bank of a lane. */
export interface Floor {
  readonly kind: 'station' | 'bank' | 'arrival bank';
  /** Station or lane. */
  readonly of: string;
  /** Where it lies. */
  readonly site: string;
}

/** Money for one such space for a day; 0 where nothing gives it a price. */
export function spacePrice({ spaceDay = 0, spaceDayAt: at }: Costs, { kind, of, site }: Floor): number {
  if (at === undefined) return spaceDay;
  const banks = own(at.lanes, of),
    its = { station: own(at.stations, of), bank: banks?.bank, 'arrival bank': banks?.arrivalBank }[kind];
  return its ?? own(at.sites, site) ?? spaceDay;
}
