import { z } from 'zod';
import type { DeliveryDates, DeliveryRhythm, Reorder, Supply } from './scenario-supplies.js';
import { chance, date, keys, name, spell, whole } from './schema-quantity.js';
import type { TimeSchema } from './schema-time.js';

const DAY = 1440;
const DELIVERIES = 'a list such as [{ on: 2027-03-08, lot: 12 }], or { lot: 10, every: 7 days }';

const dated = keys(
  {
    on: date.describe(
      'The day of the delivery: it is there when the working day of the site begins, or that of the next working day. Example: 2027-03-08',
    ),
    lot: whole(1).describe('Parts that come then. Example: 12'),
  },
  'a delivery: a map with the keys on and lot',
);
const rhythm = keys(
  {
    lot: whole(1).describe('Parts that come each time. Example: 10'),
    every: spell
      .refine((minutes) => minutes % DAY === 0, { error: 'a number of whole days, such as 7 days' })
      .describe('Days from one delivery to the next, weekends counted. Example: 7 days'),
    from: date
      .optional()
      .describe('The first delivery. Default: the start of the programme. Example: 2027-03-08'),
    to: date
      .optional()
      .describe('No delivery after this day. Default: they go on to the end of the run. Example: 2028-06-30'),
  },
  DELIVERIES,
).transform(
  (r): DeliveryRhythm => ({ kind: 'rhythm', lot: r.lot, everyDays: r.every / DAY, from: r.from, to: r.to }),
);

/** A bought-in part: a stock that is filled up in lots from outside. */
export function supplySchema(time: TimeSchema) {
  const reorder = keys(
    {
      level: whole(0).describe(
        'A lot is ordered when stock and lots on order, less the parts that units wait for, are at this level (plus the safety stock) or below. Example: 4',
      ),
      lot: whole(1).describe('Parts in a lot. Example: 8'),
      'lead time': time.describe(
        'From the order to the arrival of the lot, by the clock, drawn for each lot; a lot may overtake another. Example: { low: 10 days, high: 20 days }',
      ),
    },
    'reorder: a map with the keys level, lot and lead time',
  ).transform(
    (r): Omit<Reorder, 'safetyStock'> => ({
      kind: 'reorder',
      level: r.level,
      lot: r.lot,
      leadTime: r['lead time'],
    }),
  );
  const late = keys(
    {
      chance: chance.describe('The chance that a lot is late, for each lot by itself. Example: 10 %'),
      by: time.describe('How late it then is. Example: { low: 2 days, high: 10 days }'),
    },
    'late: a map with the keys chance and by',
  );
  return keys(
    {
      site: name('the name of a site').describe(
        'The site where the parts come in; steps of this site take them. Example: final plant',
      ),
      'at start': whole(0).default(0).describe('Parts in stock when the run starts. Default: 0. Example: 6'),
      reorder: reorder
        .optional()
        .describe('Lots are ordered by a reorder level. Example: { level: 4, lot: 8, lead time: 15 days }'),
      deliveries: z
        .union(
          [
            z
              .array(dated)
              .min(1, { error: 'at least one delivery' })
              .transform((dates): DeliveryDates => ({ kind: 'dates', dates })),
            rhythm,
          ],
          { error: DELIVERIES },
        )
        .optional()
        .describe(
          'Instead of `reorder`: lots by a plan, on dates or in a rhythm, whatever is in stock. Example: { lot: 10, every: 7 days, from: 2027-03-08 }',
        ),
      'safety stock': whole(0)
        .optional()
        .describe('Parts kept for bad days: added to the reorder level. Default: 0. Example: 3'),
      late: late
        .optional()
        .describe(
          'Lots that come later than planned. Default: none. Example: { chance: 10 %, by: { low: 2 days, high: 10 days } }',
        ),
    },
    'a supply: a map with site, and reorder or deliveries',
  )
    .superRefine((s, context) => {
      if (context.issues.length > 0) return; // misspelt keys first
      const wrong = (path: string[], message: string, seen?: string): void =>
        context.addIssue({ code: 'custom', path, message, params: { seen } });
      if ((s.reorder === undefined) === (s.deliveries === undefined))
        wrong([], 'exactly one of reorder and deliveries', s.reorder === undefined ? 'neither' : 'both');
      else if (s['safety stock'] !== undefined && s.reorder === undefined)
        wrong(
          ['safety stock'],
          'a safety stock only together with reorder; with deliveries raise at start, or the first lot',
        );
    })
    .transform(
      (s): Supply => ({
        site: s.site,
        atStart: s['at start'],
        late: s.late,
        // One of them is there: see above.
        order:
          s.reorder === undefined ? s.deliveries! : { ...s.reorder, safetyStock: s['safety stock'] ?? 0 },
      }),
    );
}
