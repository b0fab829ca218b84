import { describe, expect, it } from 'vitest';
import { wrap } from '../../src/report/text.js';
import { piecesOf, unbroken } from '../../src/report/unbroken.js';

describe('figures that hang together', () => {
  it.each([
    ['at 95 % CI 3.41 to 3.51,', ['at', '95 % CI', '3.41 to 3.51,']],
    ['3.46 a day are', ['3.46 a day', 'are']],
    ['at least 4 a working day', ['at', 'least', '4 a working day']],
    ['20 per week, 6 h', ['20 per week,', '6 h']],
    ['3.44 ± 0.02 units', ['3.44', '± 0.02 units']],
    ['16,480 EUR a unit', ['16,480 EUR', 'a', 'unit']],
    ['-0.08 to 0.12 days later', ['-0.08 to 0.12 days', 'later']],
    ['1,000 units, 3 weekly', ['1,000 units,', '3', 'weekly']],
    // Names and dates are no figures.
    ['bay 4 and P50', ['bay', '4', 'and', 'P50']],
    ['by 2027-04-27 at', ['by', '2027-04-27', 'at']],
  ])('%s', (text, pieces) => {
    expect(piecesOf(text)).toEqual(pieces);
  });

  it('changes no letter but spaces', () => {
    const text = 'Ships 3.46 a day (95 % CI 3.41 to 3.51) while 4 are asked';
    expect(unbroken(text).replaceAll('\u00a0', ' ')).toBe(text);
  });

  it('stay in one line of a picture, whatever its width', () => {
    const text = 'Ships 3.46 a day, with 95 % CI from 3.41 to 3.51 at 16,480 EUR';
    for (let width = 120; width < 500; width += 7) {
      const lines = wrap(text, width, 12);
      expect(lines.join(' ')).toBe(text);
      for (const figure of ['3.46 a day,', '95 % CI', '3.41 to 3.51', '16,480 EUR'])
        expect(
          lines.some((line) => line.includes(figure)),
          `${figure} at ${width}`,
        ).toBe(true);
    }
  });
});
