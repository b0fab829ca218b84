import { describe, expect, it } from 'vitest';
import { valuesTold } from '../../../src/report/page/rests.js';
import { behindIt } from '../../../src/report/tables/assumptions.js';

describe('what stands behind a measured value', () => {
  it.each([
    [
      { n: 84, from: '2027-08-16', to: '2027-10-29', file: 'times.csv' },
      '84 values, 2027-08-16 to 2027-10-29, times.csv',
    ],
    [{ n: 412, found: 17 }, '17 of 412'],
    [{ n: 1, from: '2027-08-16' }, '1 value, from 2027-08-16'],
    [{ n: 1200, to: '2027-08-16' }, '1,200 values, to 2027-08-16'],
    [undefined, ''],
  ])('is told in few words: %j', (measured, expected) => {
    expect(behindIt(measured)).toBe(expected);
  });

  it('stands on the page beside the value', () => {
    expect(
      valuesTold([{ basis: 'measured', words: 'the work of prime', value: '42 min', measured: { n: 84 } }]),
    ).toEqual(['Measured: the work of prime, 42 min; 84 values.']);
  });
});
