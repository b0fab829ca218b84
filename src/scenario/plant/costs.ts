import { z } from 'zod';
import { possibleSchema } from '../changes/possible.js';
import { stationsOf } from '../lookup/placed.js';
import type { Costs, HourPrice } from '../types/costs.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, named } from '../values/keys.js';
import { money, ownPrices, spacePrices } from '../whole/space-price.js';

const hourPrice = z
  .union(
    [
      money.transform((hour): HourPrice => ({ hour, overtimeHour: hour })),
      keys(
        {
          hour: money.describe('An hour on shift of one person, busy or idle. Example: 46'),
          'overtime hour': money
            .optional()
            .describe('An hour of overtime. Default: the same as any other hour. Example: 69'),
        },
        'a map with the key hour',
      ).transform((p): HourPrice => ({ hour: p.hour, overtimeHour: p.overtimeHour ?? p.hour })),
    ],
    { error: 'the price of an hour, such as 46 or { hour: 46, overtime hour: 69 }' },
  )
  .describe(
    'The price of an hour, or a map with hour and overtime hour. Example: { hour: 46, overtime hour: 69 }',
  );

const truck = keys(
  {
    trip: money.default(0).describe('One trip, there and back. Default: 0. Example: 420'),
    day: money
      .default(0)
      .describe('One truck for a day of the calendar, whether it drives or not. Default: 0. Example: 250'),
  },
  'prices of a lane: a map with trip or day',
);
const carrier = keys(
  {
    day: money.describe(
      'One of them for a day of the calendar, in use or not; one that comes on a date from then on. ' +
        'Example: 12',
    ),
  },
  'the price of carriers: a map with the key day',
);
const supply = keys(
  {
    lot: money.default(0).describe('Each lot received: freight and handling. Default: 0. Example: 900'),
    'stock day': money.default(0).describe('One part in stock for a day. Default: 0. Example: 4'),
  },
  'prices of a supply: a map with lot or stock day',
);
const perDay = (text: string) => keys({ day: money.describe(text) }, 'a map with the key day').optional();

/** Prices: from them the cost of a unit shipped. */
export const costsSchema = keys(
  {
    currency: z
      .string({ error: 'the name of a currency, such as EUR' })
      .regex(/^\S{1,8}$/, { error: 'the name of a currency, of 1 to 8 characters, such as EUR' })
      .describe('The name of the currency, shown with every amount. Example: EUR'),
    people: named(hourPrice, 'crews with the price of an hour, such as { painters: 46, default: 42 }')
      .default({})
      .describe(
        'What people cost for all their hours on shift, by crew; crews of one name in several sites ' +
          'cost the same, and `default` stands for those not named. Default: no cost. ' +
          'Example: { painters: { hour: 46, overtime hour: 69 }, default: 42 }',
      ),
    trucks: named(truck, 'lanes with their prices, such as { ferry: { trip: 420 } }')
      .prefault({})
      .describe(
        'What transport costs, by lane. Example: { coachworks to final plant: { trip: 420, day: 250 } }',
      ),
    equipment: named(
      keys(
        { day: money.describe('One piece for a day of the calendar, in use or not. Example: 90') },
        'a map with the key day',
      ),
      'equipment with its price, such as { hoist: { day: 90 } }',
    )
      .optional()
      .describe(
        'What shared equipment costs, by name; that of one name in several sites costs the same. ' +
          'Default: no cost. Example: { hoist: { day: 90 } }',
      ),
    carriers: named(carrier, 'carriers with their prices, such as { body dollies: { day: 12 } }')
      .optional()
      .describe(
        'What carriers cost: rent, capital and care. Default: no cost. Example: { body dollies: { day: ' +
          '12 } }',
      ),
    unit: perDay('Capital cost and care of one unit in work, per calendar day. Example: 180').describe(
      'What units in work cost. Example: { day: 180 }',
    ),
    late: perDay(
      'One unit for each calendar day after its due date until it is shipped, or to the end of the run if ' +
        'it never is. Example: 400',
    ).describe('What late and lost units cost; only with due dates. Example: { day: 400 }'),
    'send back': money
      .optional()
      .describe(
        'Each time an inspection sends something back: paperwork and moves. Labour is counted separately. ' +
          'Default: 0. Example: 250',
      ),
    scrap: money
      .optional()
      .describe('Each unit scrapped: its material, less its salvage value. Default: 0. Example: 20000'),
    changeovers: named(money, 'stations with the price of a changeover, such as { colour booth: 60 }')
      .default({})
      .describe(
        'The material of one changeover, by station: solvent, masking. Handling solvents is governed ' +
          'by local codes. Example: { colour booth: 60 }',
      ),
    'buffer place': spacePrices
      .optional()
      .describe(
        'What floor space costs: each space of a limited buffer or bank, and each place of a station. ' +
          'Example: { day: 12, sites: { final plant: 20 }, stations: { colour booth: 14 } }',
      ),
    supplies: named(supply, 'supplies with their prices, such as { power packs: { lot: 900 } }')
      .prefault({})
      .describe(
        'Cost of bringing in and keeping bought-in parts, by supply. Example: { power packs: { lot: ' +
          '900, stock day: 4 } }',
      ),
    standing: perDay('What runs whether units are built or not, per calendar day. Example: 600').describe(
      'Rent, leases, contracts and what else costs the same whatever is built. Example: { day: 600 }',
    ),
    changes: possibleSchema
      .optional()
      .describe(
        'What could be changed, by name, with what it costs, when it is there and what it needs; `reliefs` ' +
          'also ranks by gain per money then. No result of a build depends on it. Example: { second ' +
          'colour booth: { relief: place, of: colour booth, price: 410000, ready after: 5 months } }',
      ),
  },
  'costs: a map with currency and prices',
).transform(
  ({ unit, late, standing, bufferPlace, ...prices }): Costs => ({
    currency: prices.currency,
    people: prices.people,
    trucks: prices.trucks,
    equipment: prices.equipment,
    carriers: prices.carriers,
    unitDay: unit?.day,
    sendBack: prices.sendBack,
    scrap: prices.scrap,
    changeovers: prices.changeovers,
    supplies: prices.supplies,
    spaceDay: bufferPlace?.day,
    spaceDayAt: ownPrices(bufferPlace),
    lateDay: late?.day,
    standingDay: standing?.day,
    changes: prices.changes,
  }),
);

/** Prices of what never happens. */
export function* costFindings(scenario: Scenario): Iterable<Finding> {
  const stations = stationsOf(scenario);
  for (const name of Object.keys(scenario.costs?.changeovers ?? {})) {
    const placed = stations.get(name);
    if (placed !== undefined && placed.station.changeover === undefined)
      yield {
        path: ['costs', 'changeovers', name],
        wanted: 'a station with a changeover',
        seen: `"${name}", which has none`,
        atKey: true,
      };
  }
  const { dueAfterMin, list } = scenario.programme.orders;
  if (scenario.costs?.lateDay !== undefined && dueAfterMin === undefined && !list.some(isDue))
    yield {
      path: ['costs', 'late'],
      wanted: 'due dates (due after, or due in the build list), or no price of late units',
      seen: 'units that are never due',
      atKey: true,
    };
}

const isDue = ({ due }: { readonly due: string | undefined }): boolean => due !== undefined;
