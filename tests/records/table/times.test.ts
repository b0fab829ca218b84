import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { asWritten, isoTime } from '../../../src/records/log/write.js';
import { dayOf, isDate } from '../../../src/records/table/civil.js';
import { decimalMark, numberIn } from '../../../src/records/table/numbers.js';
import { TimeReader } from '../../../src/records/table/times.js';
import { WallClock } from '../../../src/records/table/wall-clock.js';

const read = (text: string) => new TimeReader().read(text);

describe('times of a log', () => {
  it('are those of another reader, for any date, clock and offset', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('1990-01-01'), max: new Date('2080-01-01'), noInvalidDate: true }),
        fc.integer({ min: -14 * 4, max: 14 * 4 }),
        (date, quarters) => {
          const minutes = date.getTime() / 60_000,
            text = isoTime(minutes, quarters * 15);
          // By JavaScript, and by Temporal.
          expect(Date.parse(text)).toBe(date.getTime());
          expect(read(text)).toEqual({ minutes: asWritten(minutes), isLocal: false });
          const { year, month, day } = Temporal.PlainDate.from(date.toISOString().slice(0, 10));
          expect(dayOf(year, month, day)).toBe(Math.floor(minutes / 1440));
        },
      ),
    );
  });

  it('are written and read again to the microsecond, without a drift', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e7, max: 6e7, noNaN: true }), (minutes) => {
        const once = read(isoTime(minutes, 0))!.minutes;
        expect(Math.abs(once - minutes)).toBeLessThan(2e-8);
        expect(once).toBe(asWritten(minutes));
        expect(read(isoTime(once, 120))!.minutes).toBe(once);
      }),
    );
  });

  it.each([
    ['2027-08-16T06:00:00+02:00', '2027-08-16T04:00:00Z'],
    ['2027-08-16 06:00:00,25 +0200', '2027-08-16T04:00:00.25Z'],
    ['2027-08-16t06:00z', '2027-08-16T06:00:00Z'],
    ['2027-08-16T06:00-03', '2027-08-16T09:00:00Z'],
  ])('%s is %s', (text, iso) => {
    expect(read(text)).toEqual({ minutes: Date.parse(iso) / 60_000, isLocal: false });
  });

  it.each([
    '2027-02-29T06:00Z',
    '2027-13-01T06:00Z',
    '2027-08-16T24:00Z',
    '2027-08-16T06:60Z',
    '2027-08-16',
    '2027-08-16T06:00+2',
    '2027-08-16T06:00:61Z',
    '16.13.2027 06:00',
    '8/9/2027 06:00',
    '06:00',
    'x',
    '2027-08-16T06:00:00.Z',
  ])('%s is none', (text) => {
    expect(read(text)).toBeUndefined();
  });

  it('knows leap years', () => {
    expect([2000, 2024, 1900, 2100, 2027].map((year) => isDate(year, 2, 29))).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
  });
});

describe('a wall clock', () => {
  it('says of any minute near its changes what Temporal says', () => {
    for (const zone of ['Europe/Oslo', 'America/Chicago', 'Australia/Lord_Howe', 'Asia/Kolkata']) {
      const clock = new WallClock(zone);
      for (let local = Date.UTC(2027, 0, 1) / 60_000; local < Date.UTC(2028, 0, 1) / 60_000; local += 15) {
        if (local % 1440 > 300) continue;
        const plain = Temporal.PlainDateTime.from(new Date(local * 60_000).toISOString().slice(0, 19)),
          [earlier, later] = (['earlier', 'later'] as const).map(
            (disambiguation) => plain.toZonedDateTime(zone, { disambiguation }).epochMilliseconds / 60_000,
          ),
          isThere = plain.toZonedDateTime(zone).toPlainDateTime().equals(plain),
          wanted = !isThere ? 'skipped' : earlier === later ? 'one' : 'twice';
        if (clock.meaning(local) !== wanted) throw new Error(`${zone} ${plain.toString()}: ${wanted}`);
        if (isThere && (clock.instant(local) !== earlier || clock.second(local) !== later))
          throw new Error(`${zone} ${plain.toString()}: ${clock.instant(local)} ${clock.second(local)}`);
      }
    }
  });
});

describe('numbers of a column', () => {
  it('have the decimal mark that the column proves', () => {
    expect(decimalMark(['12', '12,5'])).toBe(',');
    expect(decimalMark(['12.5', '1,234.5'])).toBe('.');
    expect(decimalMark(['1.234,5'])).toBe(',');
    expect(decimalMark(['1,234', '12'])).toBeUndefined();
    expect(decimalMark(['12,5', '12.5'])).toBe('both');
    expect(numberIn('1.234,5', ',')).toBe(1234.5);
    expect(numberIn('1,234.5', '.')).toBe(1234.5);
    expect(numberIn('12,5', '.')).toBeNaN();
    expect(numberIn('-3', ',')).toBe(-3);
    expect(numberIn('1e3', '.')).toBe(1000);
  });
});
