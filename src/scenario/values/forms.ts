import { z } from 'zod';
import type { Distribution } from '../../random/distribution.js';
import type { Simple } from '../../random/kinds/simple.js';
import { erlangOf, gammaOf, lognormalOf, weibullOf } from '../../random/shapes.js';
import { keys } from './keys.js';
import { minutesOf, TIME, timeAdvice } from './quantity.js';
import type { RawMap } from './raw.js';
import { chance, duration, number, spell, whole, word } from './scalars.js';

const low = duration.describe('The shortest time. Example: 35 min');
const likely = duration.describe('The most likely time. Example: 42 min');
const high = duration.describe('The longest time. Example: 60 min');
const mean = spell.describe('The mean time. Example: 42 min');
const cv = number(0, 10).describe(
  'Coefficient of variation: standard deviation divided by the mean. Crews doing hand work often ' +
    'lie between 0.2 and 0.5 (common practice, no source). Example: 0.3',
);
const sd = duration.describe('The standard deviation. Example: 8 min');
const meanShape = word('lognormal', 'gamma')
  .default('lognormal')
  .describe('Shape of the distribution: `lognormal` (default) or `gamma`.');
const pointShape = word('pert', 'triangular')
  .default('pert')
  .describe('Shape between the three points: `pert` (default) or `triangular`.');

type Span = { readonly low: number; readonly high: number; readonly likely?: number };
const ordered = (times: Span): boolean =>
  times.low < times.high &&
  (times.likely === undefined || (times.low <= times.likely && times.likely <= times.high));
const inOrder = { error: 'times in order: low below high, likely between them' };
const meanAndSpread = (shape: 'lognormal' | 'gamma', m: number, spread: number): Simple =>
  shape === 'gamma' ? gammaOf(m, spread) : lognormalOf(m, spread);

const THREE_POINTS = 'a map with the keys low, likely and high';
const span = keys({ low, high }, 'a map with the keys low and high').refine(ordered, inOrder);
const threePoints = keys({ low, likely, high }, THREE_POINTS).refine(ordered, inOrder);
const meanCv = keys({ mean, cv }, 'a map with the keys mean and cv');

/** Forms that need no name. */
export const plainForms = [
  keys({ low, likely, high, shape: pointShape }, THREE_POINTS)
    .refine(ordered, inOrder)
    .transform(({ shape: kind, ...points }): Simple => ({ kind, ...points })),
  span.transform((times): Simple => ({ kind: 'uniform', ...times })),
  keys({ mean, cv, shape: meanShape }, 'a map with the keys mean and cv').transform((time) =>
    meanAndSpread(time.shape, time.mean, time.cv),
  ),
  keys({ mean, sd, shape: meanShape }, 'a map with the keys mean and sd')
    .refine((time) => time.sd <= 10 * time.mean, { error: 'a standard deviation of at most ten means' })
    .transform((time) => meanAndSpread(time.shape, time.mean, time.sd / time.mean)),
] as const;
const PLAIN_KEYS = new Set(Object.keys({ low, likely, high, mean, cv, sd, shape: meanShape }));

const meanPhases = keys(
  { mean, phases: whole(1, 1000).describe('Number of phases in series; cv is 1 / √phases. Example: 3') },
  'a map with the keys mean and phases',
);
const cutNormal = keys(
  {
    mean,
    sd: spell.describe('The standard deviation before truncation. Example: 8 min'),
    low: duration.prefault('0 min').describe('No shorter times occur. Default: 0 min'),
    high: high.describe('No longer times occur. Example: 90 min'),
  },
  'a map with the keys mean, sd and high',
).refine(ordered, inOrder);
const sumOf = (shares: readonly number[]): number => shares.reduce((a, b) => a + b, 0);
const isWhole = (sum: number): boolean => Math.abs(sum - 1) <= 1e-6;
const timesWithChances = z
  .record(z.string().regex(TIME, { error: (issue) => timeAdvice(issue.input) }), chance, {
    error: 'a map from times to their chances',
  })
  .refine((rows) => isWhole(sumOf(Object.values(rows))), { error: 'chances that add up to 100 %' });
const shapeScale = keys(
  {
    shape: number(0.1, 100).describe('Below 1: many short times and a long tail. Example: 1.5'),
    scale: spell.describe('63 % of the times are shorter. Example: 40 min'),
  },
  'a map with the keys shape and scale',
);

/** A form with a name: how it is written under the name, what it means, what it makes. */
const form =
  <Inner extends z.ZodType, Made extends Distribution = Simple>(
    inner: Inner,
    meaning: string,
    make: (written: z.output<Inner>) => Made,
  ) =>
  (kind: string) =>
    keys({ [kind]: inner.transform(make).describe(meaning) }, `a map with the key ${kind}`).transform(
      (map) => Object.values(map)[0] as Made,
    );

/** Forms told apart by their one key. */
const NAMED = {
  constant: form(duration, 'Always this time. Example: 20 min', (value) => ({ kind: 'constant', value })),
  uniform: form(span, 'All times between the two bounds are equally likely.', (times) => ({
    kind: 'uniform',
    ...times,
  })),
  triangular: form(threePoints, 'Straight lines through three points.', (times) => ({
    kind: 'triangular',
    ...times,
  })),
  pert: form(threePoints, 'A smooth curve through three points.', (times) => ({ kind: 'pert', ...times })),
  exponential: form(
    keys({ mean }, 'a map with the key mean'),
    'Memoryless: the elapsed time says nothing about the remaining time.',
    (time) => ({ kind: 'exponential', ...time }),
  ),
  erlang: form(meanPhases, 'The sum of equal exponential phases.', (time) =>
    erlangOf(time.mean, time.phases),
  ),
  gamma: form(meanCv, 'A gamma by its mean and spread.', (time) => gammaOf(time.mean, time.cv)),
  lognormal: form(meanCv, 'A lognormal by its mean and spread; a long tail to the right.', (time) =>
    lognormalOf(time.mean, time.cv),
  ),
  normal: form(
    cutNormal,
    'A normal truncated at both ends; `mean` and `sd` are those before truncation.',
    (time) => ({ kind: 'normal', ...time }),
  ),
  discrete: form(
    timesWithChances,
    'A few times with their chances. Example: { 10 min: 20 %, 30 min: 80 % }',
    (rows) => ({
      kind: 'discrete',
      values: Object.keys(rows).map((text) => minutesOf(text) ?? NaN),
      weights: Object.values(rows),
    }),
  ),
  weibull: form(
    z.union([meanCv, shapeScale], { error: 'a map with the keys mean and cv, or shape and scale' }),
    'A Weibull by mean and spread, or by shape and scale.',
    (time) => ('mean' in time ? weibullOf(time.mean, time.cv) : { kind: 'weibull', ...time }),
  ),
};
const simpleNamed = Object.entries(NAMED).map(([kind, make]) => make(kind));

export const TIME_WANTED = 'a time, such as "20 min" or { low: 35 min, likely: 42 min, high: 60 min }';
/** What is said of a time that is in none of the forms. */
export const timeError = ({ input }: { readonly input?: unknown }): string =>
  typeof input === 'number' || typeof input === 'string' ? timeAdvice(input) : TIME_WANTED;

/** A time that never changes, alone. */
export const constantTime = duration.transform((value): Simple => ({ kind: 'constant', value }));
const simpleTime = z.xor([constantTime, ...plainForms, ...simpleNamed], { error: timeError }).meta({
  id: 'simple-time',
  description: 'A time: as any other, but no mixture and no observed times.',
});
const PARTS_WANTED = 'a list of two or more of { share: 80 %, time: 20 min }';
const mixture = form(
  z
    .array(
      keys(
        {
          share: chance.describe('How often the time is of this part. Example: 20 %'),
          time: simpleTime.describe('The time then. Example: { mean: 2 h, cv: 0.5 }'),
        },
        'a map with the keys share and time',
      ),
      { error: PARTS_WANTED },
    )
    .min(2, { error: PARTS_WANTED, abort: true })
    .superRefine((parts, context) => {
      const sum = sumOf(parts.map(({ share }) => share));
      if (!isWhole(sum))
        context.addIssue({
          code: 'custom',
          message: 'shares that add up to 100 %',
          params: { seen: `${Number((100 * sum).toFixed(4))} %` },
        });
    }),
  'Now one time, now another: each is drawn from one part of the list, chosen by share.',
  (parts) => ({
    kind: 'mixture',
    parts: parts.map(({ time }) => time),
    weights: parts.map(({ share }) => share),
  }),
);
export const namedForms = [...simpleNamed, mixture('mixture')];

/** Keys that a map which is a time can have. */
export const FORM_KEYS: readonly string[] = [...PLAIN_KEYS, ...Object.keys(NAMED), 'mixture', 'observed'];

/** A map that is one time, whatever the number of its keys. */
export function isTime(map: RawMap): boolean {
  const written = Object.keys(map);
  if ('observed' in map) return true;
  if (written.length === 1 && written.every((key) => key === 'mixture' || Object.hasOwn(NAMED, key)))
    return true;
  return ('low' in map || 'mean' in map) && written.every((key) => PLAIN_KEYS.has(key));
}
