import { describe, expect, it } from 'vitest';
import { day, estimated, percent, rounded } from '../../../src/report/sheets/cells.js';
import { laidOut } from '../../../src/report/sheets/layout.js';

const estimate = { mean: 3.4, low: 3.3, high: 3.5, level: 0.95, n: 20 };

describe('a table as a sheet', () => {
  it('has a column for the mean, for each end of its interval, and for what is said in place of one', () => {
    const { head, rows } = laidOut(
      ['Name', 'Units'],
      [
        ['a', estimated(estimate)],
        ['b', estimated({ ...estimate, low: null, high: null, needs: 190 })],
        ['c', estimated({ ...estimate, mean: 0, low: null, high: null, most: 0.15 })],
        ['d', estimated({ ...estimate, mean: 0, n: 0, low: null, high: null })],
      ],
    );
    expect(head).toEqual(['Name', 'Units', 'Units: low', 'Units: high', 'Units: needs', 'Units: under']);
    expect(rows.map((row) => row.map(({ value }) => value))).toEqual([
      ['a', 3.4, 3.3, 3.5, null, null],
      ['b', 3.4, null, null, 190, null],
      ['c', 0, null, null, null, 0.15],
      ['d', null, null, null, null, null],
    ]);
  });

  it('leaves words among values in the column of the value', () => {
    const { head, rows } = laidOut(['Spaces'], [[rounded(4)], ['unlimited'], ['']]);
    expect(head).toEqual(['Spaces']);
    expect(rows.flat().map(({ value }) => value)).toEqual([4, 'unlimited', null]);
  });

  it('keeps a share between 0 and 1 and shows it in per cent', () => {
    const { rows } = laidOut(['Used, %'], [[percent({ ...estimate, mean: 0.62, low: 0.6, high: 0.64 })]]);
    expect(rows[0]).toEqual([0.62, 0.6, 0.64].map((value) => ({ value, format: '0.0%' })));
  });

  it('shows as many decimals in a column as its largest number leaves room for, none of whole numbers', () => {
    const formatOf = (...values: number[]) =>
      laidOut(
        ['n'],
        values.map((value) => [rounded(value)]),
      ).rows[0]?.[0]?.format;
    expect(formatOf(1, 20_000)).toBe('#,##0');
    expect(formatOf(0.2, -0.9)).toBe('0.0000');
    expect(formatOf(0.2, 3.4)).toBe('0.000');
    expect(formatOf(0.2, -256.5)).toBe('0.00');
    expect(formatOf(0.2, 16_480)).toBe('#,##0.0');
    // But for one of which that would leave a digit.
    expect(formatOf(0.078, 40.2)).toBe('0.0000');
    expect(formatOf(0, 40.2)).toBe('0.00');
  });

  it('makes days of days that a workbook knows, and words of others', () => {
    const values = ['2027-08-16', '1900-02-28', '12027-08-16', 'soon', null].map(
      (date) => laidOut(['Day'], [[day(date)]]).rows[0]?.[0]?.value,
    );
    expect(values).toEqual([new Date('2027-08-16'), '1900-02-28', '12027-08-16', 'soon', null]);
  });

  it('has no number that is none, and no -0', () => {
    const { rows } = laidOut(['n'], [[rounded(NaN)], [rounded(Infinity)], [rounded(-0)]]);
    expect(rows.flat().map(({ value }) => value)).toEqual([null, null, 0]);
  });
});
