import { describe, expect, it } from 'vitest';
import { isTime } from '../../../src/scenario/values/forms.js';
import { timeSchema } from '../../../src/scenario/values/time.js';

const MIN = '10 min',
  HOUR = '60 min',
  span = { low: MIN, high: HOUR },
  points = { low: MIN, likely: '20 min', high: HOUR },
  spread = { mean: '20 min', cv: 0.3 };

/** Each way to write a time that is a map. */
const WRITTEN = [
  points,
  span,
  spread,
  { mean: '20 min', sd: MIN },
  { ...points, shape: 'triangular' },
  { constant: MIN },
  { uniform: span },
  { triangular: points },
  { pert: points },
  { exponential: { mean: '20 min' } },
  { erlang: { mean: '20 min', phases: 3 } },
  { gamma: spread },
  { lognormal: spread },
  { normal: { mean: '20 min', sd: MIN, high: HOUR } },
  { discrete: { '10 min': 0.2, '30 min': 0.8 } },
  { weibull: spread },
  {
    mixture: [
      { share: 0.8, time: MIN },
      { share: 0.2, time: spread },
    ],
  },
  { observed: 'times.csv', column: 'minutes', unit: 'min' },
];

describe('a time that is a map', () => {
  const time = timeSchema(() => ({ values: [1, 2], fault: undefined }));

  it.each(WRITTEN.map((map) => [JSON.stringify(map), map] as const))(
    '%s is one value to those who say where it comes from',
    (_, map) => {
      expect(time.safeParse(map).success).toBe(true);
      expect(isTime(map)).toBe(true);
    },
  );

  it('is here in every form that the schema knows', () => {
    const forms = time.def.options.length;
    // A fixed time is no map; one form without a name stands here twice, with its shape and without.
    expect(WRITTEN).toHaveLength(forms);
  });

  it.each([
    [[{ share: 1, time: MIN }], 'a list of two or more of { share: 80 %, time: 20 min }'],
    [
      [
        { share: 0.8, time: MIN },
        { share: 0.3, time: MIN },
      ],
      'shares that add up to 100 %',
    ],
    [{ '80 %': MIN }, 'a list of two or more of { share: 80 %, time: 20 min }'],
  ])('is no mixture of %j', (mixture, wanted) => {
    const { issues } = time.safeParse({ mixture }).error!;
    expect(JSON.stringify(issues)).toContain(JSON.stringify(wanted));
  });

  it.each([
    {
      mixture: [
        { share: 0.5, time: MIN },
        { share: 0.5, time: HOUR },
      ],
    },
    { observed: 'times.csv', column: 'minutes', unit: 'min' },
  ])('of part of a mixture is not %j', (inner) => {
    const mixture = [
      { share: 0.8, time: MIN },
      { share: 0.2, time: inner },
    ];
    expect(time.safeParse({ mixture }).success).toBe(false);
  });

  it.each([{}, { crew: { low: MIN } }, { mean: '20 min', crew: 1 }, { uniform: span, note: 1 }])(
    'is not %j',
    (map) => {
      expect(isTime(map)).toBe(false);
    },
  );
});
