import { z } from 'zod';
import type { OptionMix, Programme } from './scenario.js';
import { chance, date, keys, named, number, spell, duration, whole, word } from './schema-quantity.js';
import type { TimeSchema } from './schema-time.js';
import { zone } from './schema-zone.js';

/** A programme before its defaults from elsewhere: its zone may come from the first site. */
export type ProgrammeRead = Omit<Programme, 'zone'> & { readonly zone: string | undefined };

/** Start of runs that name no date. */
const NO_DATE = '2001-01-01';

const mix = z.union(
  [
    chance.transform((yes): Record<string, number> => ({ yes, no: 1 - yes })),
    named(chance, 'values with their shares')
      .refine((shares) => Math.abs(Object.values(shares).reduce((a, b) => a + b, 0) - 1) <= 1e-6, { error: 'shares that add up to 100 %', when: whenMap }),
  ],
  { error: 'values with their shares, such as { red: 70 %, white: 30 % }, or one chance for yes or no, such as 35 %' },
);
/** The sum is asked for only where each share could be read. */
function whenMap(payload: { value: unknown; issues: unknown[] }): boolean {
  return payload.issues.length === 0 && typeof payload.value === 'object' && payload.value !== null;
}

const perDay = number(0, 100_000).describe('Units released per working day, spread evenly over the working time of the first station\'s site; may be a fraction; 0 is a pause. Example: 4');
const from = date.optional().describe('The first day of this rate. Default: the start; only the first rate may leave it out. Example: 2027-06-07');
const ratePhase = keys({ from, 'per day': perDay }, 'a map with the keys from and per day');
const rate = z
  .union([ratePhase.transform((phase) => [phase]), z.array(ratePhase).min(1, { error: 'at least one rate' })], { error: 'a rate, such as { per day: 4 }, or a list of them with dates' })
  .describe('How fast units are released: one rate, or a ramp as a list of rates with dates. Example: [{ from: 2027-03-01, per day: 2 }, { from: 2027-06-07, per day: 4 }]');

export function programmeSchema(time: TimeSchema) {
  return keys(
    {
      start: date.optional().describe(`The first day. Needed with \`rate\` and \`until\`; default ${NO_DATE} for steady-state runs and drawn arrivals. Example: 2027-03-01`),
      zone: zone.optional().describe('The time zone of the dates and weeks of the programme. Default: that of the first site. Example: Europe/Oslo'),
      quantity: whole(1, 10_000_000).optional().describe('Units in all; the run ends when the last has been shipped or scrapped. Leave it out for a steady-state run. Example: 420'),
      rate: rate.optional(),
      arrivals: z
        .union([word('saturated'), time], { error: 'the word saturated, or a time between units such as { exponential: { mean: 2 h } }' })
        .optional()
        .describe('Instead of `rate`: the time between units, drawn anew for each; or `saturated`: a unit is always ready to enter. Example: { exponential: { mean: 2 h } }'),
      until: date.optional().describe('The run ends at the start of this day at the latest, with whatever has been shipped by then. Example: 2028-12-31'),
      options: named(mix, 'options, such as { colour: { red: 70 %, white: 30 % }, stripe: 35 % }')
        .default({})
        .describe('What differs between units. Each option has values with shares that add up to 100 %; a single chance makes a yes or no option. Example: { colour: { red: 70 %, white: 20 %, lime: 10 % }, stripe: 35 % }'),
      length: spell.optional().describe('For a steady-state run (no quantity): how long to observe after the warm-up. Example: 5000 h'),
      'warm up': duration.optional().describe('For a steady-state run: time before observing begins, for the line to fill. Default: 0 min. Example: 500 h'),
    },
    'a programme: a map with rate or arrivals, and quantity or length',
  )
    .superRefine((p, context) => {
      if (context.issues.length > 0) return; // misspelt keys first
      const wrong = (path: string[], message: string, seen?: string): void => context.addIssue({ code: 'custom', path, message, params: { seen } });
      if ((p.rate === undefined) === (p.arrivals === undefined)) wrong([], 'exactly one of rate and arrivals', p.rate === undefined ? 'neither' : 'both');
      if (p.quantity === undefined && p.length === undefined && p.until === undefined) wrong([], 'an end of the run: a quantity, a date until, or for a steady-state run a length', 'none of them');
      if (p.quantity !== undefined && p.length !== undefined) wrong(['length'], 'either a quantity or a length, not both', 'both');
      if (p['warm up'] !== undefined && p.length === undefined) wrong(['warm up'], 'a warm up only together with a length', 'no length');
      if (p.start === undefined && p.length === undefined && (p.rate !== undefined || p.until !== undefined)) wrong(['start'], 'missing; should be a first day, such as "2027-03-01", with rate or until');
    })
    .transform((p): ProgrammeRead => {
      const start = p.start ?? NO_DATE;
      return {
        start,
        zone: p.zone,
        options: p.options as OptionMix,
        release:
          p.arrivals === 'saturated'
            ? { kind: 'saturated' }
            : p.arrivals !== undefined
              ? { kind: 'interval', interval: p.arrivals }
              : { kind: 'rate', phases: (p.rate ?? []).map((phase, i) => ({ from: phase.from ?? (i === 0 ? start : ''), perDay: phase['per day'] })) },
        quantity: p.quantity,
        until: p.until,
        lengthMin: p.length,
        warmUpMin: p['warm up'] ?? 0,
      };
    });
}
