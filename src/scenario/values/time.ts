import { z } from 'zod';
import type { Distribution } from '../../random/distribution.js';
import { leastOf } from '../../random/moments.js';
import { erlangOf, gammaOf, lognormalOf, weibullOf } from '../../random/shapes.js';
import { minutesOf, TIME, timeAdvice } from './quantity.js';
import { chance, duration, keys, name, number, spell, whole, word } from './keys.js';
import type { ReadObserved } from './observed.js';

const cv = number(0, 10).describe(
  'Spread: standard deviation divided by the mean. Crews doing hand work often lie between 0.2 ' +
    'and 0.5 (common practice, no source). Example: 0.3',
);
const low = duration.describe('The shortest time. Example: 35 min');
const likely = duration.describe('The most likely time. Example: 42 min');
const high = duration.describe('The longest time. Example: 60 min');
const mean = spell.describe('The mean time. Example: 42 min');
const sd = duration.describe('The standard deviation. Example: 8 min');
const range = 'a map with the keys low and high';
const threePoints = 'a map with the keys low, likely and high';

const TIME_WANTED = 'a time, such as "20 min" or { low: 35 min, likely: 42 min, high: 60 min }';
type Span = { readonly low: number; readonly high: number };
const ordered = (times: Span & { readonly likely?: number }) =>
  times.low < times.high &&
  (times.likely === undefined || (times.low <= times.likely && times.likely <= times.high));
const inOrder = { error: 'times in order: low below high, likely between them' };
const meanAndSpread = (shape: 'lognormal' | 'gamma', m: number, spread: number): Distribution =>
  shape === 'gamma' ? gammaOf(m, spread) : lognormalOf(m, spread);
const meanShape = word('lognormal', 'gamma')
  .default('lognormal')
  .describe('The form of the spread: `lognormal` (default) or `gamma`.');

/** Forms that need no name. */
const plainForms = [
  keys(
    {
      low,
      likely,
      high,
      shape: word('pert', 'triangular')
        .default('pert')
        .describe('The form between the three points: `pert` (default) or `triangular`.'),
    },
    threePoints,
  )
    .refine(ordered, inOrder)
    .transform(({ shape: kind, ...points }): Distribution => ({ kind, ...points })),
  keys({ low, high }, range)
    .refine(ordered, inOrder)
    .transform((span): Distribution => ({ kind: 'uniform', ...span })),
  keys({ mean, cv, shape: meanShape }, 'a map with the keys mean and cv').transform(
    (t): Distribution => meanAndSpread(t.shape, t.mean, t.cv),
  ),
  keys({ mean, sd, shape: meanShape }, 'a map with the keys mean and sd')
    .refine((t) => t.sd <= 10 * t.mean, { error: 'a standard deviation of at most ten means' })
    .transform((t): Distribution => meanAndSpread(t.shape, t.mean, t.sd / t.mean)),
] as const;

const of = <Inner extends z.ZodType>(kind: string, inner: Inner, text: string) =>
  keys({ [kind]: inner.describe(text) }, `a map with the key ${kind}`);
/** The inside of a form with one key. */
function only<T>(map: Record<string, T>): T {
  return Object.values(map)[0]!;
}

const meanCv = keys({ mean, cv }, 'a map with the keys mean and cv');
const discrete = z
  .record(z.string().regex(TIME, { error: (issue) => timeAdvice(issue.input) }), chance, {
    error: 'a map from times to their chances',
  })
  .refine((rows) => Math.abs(Object.values(rows).reduce((a, b) => a + b, 0) - 1) <= 1e-6, {
    error: 'chances that add up to 100 %',
  })
  .transform(
    (rows): Distribution => ({
      kind: 'discrete',
      values: Object.keys(rows).map((text) => minutesOf(text)!),
      weights: Object.values(rows),
    }),
  );

/** Forms told apart by their one key. */
const namedForms = [
  of('constant', duration, 'Always this time. Example: 20 min').transform(
    (m): Distribution => ({ kind: 'constant', value: only(m) }),
  ),
  of(
    'uniform',
    keys({ low, high }, range).refine(ordered, inOrder),
    'Every time between two is as likely as the next.',
  ).transform((m): Distribution => ({ kind: 'uniform', ...only(m) })),
  of(
    'triangular',
    keys({ low, likely, high }, threePoints).refine(ordered, inOrder),
    'Straight lines between three points.',
  ).transform((m): Distribution => ({ kind: 'triangular', ...only(m) })),
  of(
    'pert',
    keys({ low, likely, high }, threePoints).refine(ordered, inOrder),
    'A smooth curve through three points.',
  ).transform((m): Distribution => ({ kind: 'pert', ...only(m) })),
  of(
    'exponential',
    keys({ mean }, 'a map with the key mean'),
    'Pure chance: the time so far says nothing of the time to come.',
  ).transform((m): Distribution => ({ kind: 'exponential', ...only(m) })),
  of(
    'erlang',
    keys(
      {
        mean,
        phases: whole(1, 1000).describe(
          'How many exponential phases in a row; cv is 1 / √phases. Example: 3',
        ),
      },
      'a map with the keys mean and phases',
    ),
    'The sum of equal exponential phases.',
  ).transform((m): Distribution => erlangOf(only(m).mean, only(m).phases)),
  of('gamma', meanCv, 'A gamma by its mean and spread.').transform(
    (m): Distribution => gammaOf(only(m).mean, only(m).cv),
  ),
  of('lognormal', meanCv, 'A lognormal by its mean and spread; a long tail to the right.').transform(
    (m): Distribution => lognormalOf(only(m).mean, only(m).cv),
  ),
  of(
    'normal',
    keys(
      {
        mean,
        sd: spell.describe('The standard deviation before the cut. Example: 8 min'),
        low: duration.prefault('0 min').describe('Shorter times are cut off. Default: 0 min'),
        high: high.describe('Longer times are cut off. Example: 90 min'),
      },
      'a map with the keys mean, sd and high',
    ).refine(ordered, inOrder),
    'A normal cut at both ends; `mean` and `sd` are those before the cut.',
  ).transform((m): Distribution => ({ kind: 'normal', ...only(m) })),
  of(
    'discrete',
    discrete,
    'A few times with their chances. Example: { 10 min: 20 %, 30 min: 80 % }',
  ).transform(only),
] as const;

const weibull = keys(
  {
    weibull: z
      .union(
        [
          meanCv.transform((t): Distribution => weibullOf(t.mean, t.cv)),
          keys(
            {
              shape: number(0.1, 100).describe('Below 1: many short ones and a long tail. Example: 1.5'),
              scale: spell.describe('63 % of the times are shorter. Example: 40 min'),
            },
            'a map with the keys shape and scale',
          ).transform((t): Distribution => ({ kind: 'weibull', ...t })),
        ],
        { error: 'a map with the keys mean and cv, or shape and scale' },
      )
      .describe('A Weibull by mean and spread, or by shape and scale.'),
  },
  'a map with the key weibull',
).transform((map) => map.weibull);

/**
 * The schema of a random time, giving its distribution in minutes; observed times are read by `readObserved`.
 */
export function timeSchema(readObserved: ReadObserved) {
  const observed = keys(
    {
      observed: name('the name of a CSV file').describe(
        'A CSV file with a heading line, path relative to the folder of the scenario file; each ' +
          'observed time is as likely as the next. Example: times.csv',
      ),
      column: name('the heading of a column').describe(
        'The heading of the column with the times. Example: minutes',
      ),
      unit: word('s', 'min', 'h', 'days').describe('The unit of the numbers in the column.'),
    },
    'a map with the keys observed, column and unit',
  ).transform((map, context): Distribution => {
    const { values, fault } = readObserved(map.observed, map.column, map.unit);
    if (fault !== undefined)
      context.addIssue({
        code: 'custom',
        message: fault.wanted,
        params: fault,
        path: fault.source === undefined ? ['observed'] : [],
      });
    return { kind: 'empirical', values };
  });
  // Exclusive, since a plain union would explain a misspelt key by the one form that lacks nothing else.
  return z
    .xor(
      [
        duration.transform((value): Distribution => ({ kind: 'constant', value })),
        ...plainForms,
        ...namedForms,
        weibull,
        observed,
      ],
      {
        error: (issue) =>
          typeof issue.input === 'number' || typeof issue.input === 'string'
            ? timeAdvice(issue.input)
            : TIME_WANTED,
      },
    )
    .superRefine((distribution, context) => {
      try {
        leastOf(distribution);
      } catch (error) {
        context.addIssue({ code: 'custom', message: error instanceof Error ? error.message : TIME_WANTED });
      }
    })
    .meta({
      id: 'time',
      description:
        'A time: fixed, or drawn anew each time. Write "20 min", { low, likely, high }, { low, high ' +
        '}, { mean, cv }, { mean, sd }, or a form by name.',
    });
}
export type TimeSchema = ReturnType<typeof timeSchema>;
