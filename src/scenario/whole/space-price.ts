import { z } from 'zod';
import type { Costs } from '../types/costs.js';
import { keys, named } from '../values/keys.js';
import { own } from '../values/raw.js';
import { number } from '../values/scalars.js';

const MONEY = 'an amount of money: a plain number from 0, without the currency, such as 46';
export const money = number(0, 1e12, MONEY);

const banks = z
  .union(
    [
      money.transform((day) => ({ bank: day, arrivalBank: day })),
      keys(
        {
          bank: money.optional().describe('A space of the bank ahead of loading, a day. Example: 9'),
          'arrival bank': money
            .optional()
            .describe('A space of the bank after unloading, a day. Example: 14'),
        },
        'a map with bank or arrival bank',
      ),
    ],
    { error: 'the price of a space of both banks, such as 9, or { bank: 9, arrival bank: 14 }' },
  )
  .describe(
    'The price of a space of both banks, or a map with bank and arrival bank. Example: ' +
      '{ bank: 9, arrival bank: 14 }',
  );
const PLACE = 'a map with the key day, and perhaps sites, stations or lanes with prices of their own';
/** What floor space costs. */
export const spacePrices = keys(
  {
    day: money.describe('One space or place for a day, where nothing below says otherwise. Example: 12'),
    sites: named(money, 'sites with the price of a space, such as { final plant: 20 }')
      .optional()
      .describe(
        'Of all spaces and places of a site: those of its stations, the banks of the lanes that leave it ' +
          'and the arrival banks of those that come in. Default: `day`. Example: { final plant: 20 }',
      ),
    stations: named(money, 'stations with the price of a space, such as { colour booth: 14 }')
      .optional()
      .describe(
        'Of the places of a station and the spaces ahead of it. Default: that of its site. ' +
          'Example: { colour booth: 14 }',
      ),
    lanes: named(banks, 'lanes with the price of a space, such as { ferry: 9 }')
      .optional()
      .describe(
        'Of the banks of a lane. Default: that of the site where they are. ' +
          'Example: { coachworks to final plant: { bank: 9, arrival bank: 14 } }',
      ),
  },
  PLACE,
);

/** Undefined where all spaces cost the same. */
export function ownPrices({
  sites,
  stations,
  lanes,
}: Partial<z.output<typeof spacePrices>> = {}): Costs['spaceDayAt'] {
  if (sites === undefined && stations === undefined && lanes === undefined) return undefined;
  return { sites: sites ?? {}, stations: stations ?? {}, lanes: lanes ?? {} };
}

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
