import fc from 'fast-check';

/** Values that a planner's slip, a spreadsheet or a prankster might leave behind. */

const NUMBERS = [
  ...[0, 1, 2, 3, -1, -0.5, 0.1, 0.5, 1e-9, 7, 99, 1000, 1e6, 1e9, 1e15, 2 ** 53, 1e300, -1e300],
  ...[Number.MAX_VALUE, Number.MIN_VALUE, NaN, Infinity, -Infinity, -0],
];

/** Names and other texts; none can leave the folder that it is used in. */
export const NAMES = [
  ...['', ' ', 'x', 'constructor', '__proto__', 'toString', 'hasOwnProperty', 'a\nb', 'a\tb', 'a\rb'],
  ...[
    '\u001b[31mred',
    '\u009b2J',
    '\u202eabc',
    '\u2066a',
    'שלום',
    'مرحبا abc',
    '\ufeffx',
    '\u0000',
    '\u2028',
  ],
  ...['ﬀ', '💥', 'e\u0301', '\ud800', 'x'.repeat(81), 'x'.repeat(5000), 'con', 'null', 'true', 'yes', '-'],
  ...['--out', '&a', '*a', '<<', '<script>alert(1)</script>', '=1+1', '%s', '${x}', '{', '[', "'", '"', '#'],
  ...[
    ': ',
    ', ',
    '7',
    '1e5',
    'own',
    'unlimited',
    'base',
    'usual',
    'value',
    'basis',
    'note',
    'include',
    'a.b',
  ],
  ...['a[0]', '[0]', 'changes', 'remove', 'saturated', 'mser-5', 'NaN', 'Infinity', 'a|b', 'a > b', 'a / b'],
];

const QUANTITIES = [
  ...['5 min', '0 min', '-5 min', '1e9 h', '5 parsecs', '5min', '5 MIN', '５ min', '1,000 min', '1 000 min'],
  ...['0.0000001 s', '999999999 days', '1/2 h', '5 min 30 s', '∞ min', 'NaN min', '0x10 min', '1_000 h'],
  ...['3 weeks', '4 months', '12 years', '876000 h', '1000000 h', '0 %', '50 %', '100 %', '500 %', '-1 %'],
  ...['0.000001 %', '33.333333333333333 %', '50%', '%', 'min', '1 in 5', '1 in 0', '1 in 1000000'],
];

const DATES = [
  ...['2027-02-30', '2027-13-01', '0000-01-01', '9999-12-31', '1582-10-10', '2027-03-28', '-2027-01-01'],
  ...['2027-3-1', '27-03-01', '2027-03-01T00:00', '+275760-09-13', '1970-01-01', '2500-01-01', '2028-02-29'],
  ...['06:00', '24:00', '25:00', '06:00-14:30', '22:00-06:00', '06:00-06:00', '00:00-24:00', '6-14', '6:00'],
  ...['Mon-Fri', 'Fri-Mon', 'Mon', 'Mon,Tue', 'Europe/Oslo', 'Europe/Nowhere', 'UTC', 'Pacific/Apia'],
];

const TIMES: readonly unknown[] = [
  { low: '1 min', likely: '2 min', high: '3 min' },
  { low: '3 min', likely: '2 min', high: '1 min' },
  { low: '2 min', likely: '2 min', high: '2 min' },
  { low: '0 min', high: '0 min' },
  { mean: '42 min', cv: 0 },
  { mean: '42 min', cv: 10 },
  { mean: '42 min', sd: '12 h', shape: 'gamma' },
  { exponential: { mean: '0 min' } },
  { exponential: { mean: '100000 h' } },
  { erlang: { mean: '2 h', phases: 1000 } },
  { weibull: { mean: '42 min', cv: 10 } },
  { weibull: { shape: 0.1, scale: '40 min' } },
  { weibull: { shape: 100, scale: '40 min' } },
  { normal: { mean: '0 min', sd: '1 s', low: '60 min', high: '70 min' } },
  { discrete: { '10 min': '20 %', '30 min': '80 %' } },
  { discrete: { '10 min': 0, '30 min': 1 } },
  { discrete: {} },
  { observed: 'times.csv', column: 'minutes', unit: 'min' },
  { observed: 'nowhere.csv', column: 'minutes', unit: 'min' },
  { value: '20 min', basis: 'guess' },
  { value: { low: '5 min', high: '9 min' }, basis: 'estimate', note: 'so said' },
];

const nested = (depth: number): unknown => {
  let value: unknown = 1;
  for (let i = 0; i < depth; i++) value = i % 2 === 0 ? [value] : { a: value };
  return value;
};
const SHAPES: readonly unknown[] = [
  ...[
    null,
    true,
    false,
    [],
    {},
    [null],
    [[]],
    [{}],
    { a: 1 },
    { low: 3 },
    { '': '' },
    nested(59),
    nested(80),
  ],
  ...[{ value: 3, basis: 'guess' }, { value: [], note: 1 }, { include: 'x.yaml' }, { basis: 'so' }],
  ...[{ per_day: 4 }, { 'per day': 4 }, { 'per week': 0.001 }, { from: '2027-06-07', 'per day': 9 }],
  Array.from({ length: 3000 }, (_, i) => i),
  Array.from({ length: 300 }, () => ({ step: 'x', at: 'bench', work: '5 min' })),
  Object.fromEntries(Array.from({ length: 1000 }, (_, i) => [`name ${i}`, {}])),
];

export const hostileNumber = fc.oneof(
  fc.constantFrom(...NUMBERS),
  fc.integer({ min: 0, max: 50 }),
  fc.double({ noNaN: true }),
);
export const hostileName = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...NAMES) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 12 }) },
);
export const hostileValue: fc.Arbitrary<unknown> = fc.oneof(
  hostileNumber,
  fc.constantFrom(...QUANTITIES),
  fc.constantFrom(...DATES),
  fc.constantFrom(...TIMES),
  fc.constantFrom(...SHAPES),
  hostileName,
);
