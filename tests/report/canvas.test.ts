import { GlobalFonts } from '@napi-rs/canvas';
import { describe, expect, it } from 'vitest';
import { FONT_FAMILY, newCanvas, renderPng, textWidth } from '../../src/report/canvas.js';
import { fit, wrap } from '../../src/report/text.js';

describe('fonts of the pictures', () => {
  it('come from the packages, under names that no machine has, so that every machine draws the same', () => {
    newCanvas(1, 1);
    const names = FONT_FAMILY.split(', ').map((name) => name.replaceAll('"', ''));
    expect(names).toHaveLength(2);
    for (const name of names) {
      expect(
        GlobalFonts.families
          .find(({ family }) => family === name)
          ?.styles.map(({ weight }) => weight)
          .sort(),
      ).toHaveLength(2);
    }
  });

  it('measure as the fonts say: Inter digits have an advance of 0.6 to 0.7 em and semi-bold is wider', () => {
    const digit = textWidth('8', 100) / 100;
    expect(digit).toBeGreaterThan(0.6);
    expect(digit).toBeLessThan(0.7);
    expect(textWidth('throughput', 13, '600')).toBeGreaterThan(textWidth('throughput', 13));
  });

  it('draw a letter that only the second font has', () => {
    const canvas = newCanvas(60, 60),
      context = canvas.getContext('2d');
    const inkOf = (text: string): string => {
      context.fillStyle = '#fff';
      context.fillRect(0, 0, 60, 60);
      context.fillStyle = '#000';
      context.font = `40px ${FONT_FAMILY}`;
      context.fillText(text, 5, 45);
      return canvas.toDataURL('image/png');
    };
    // U+2602 is in DejaVu Sans, not in Inter; U+E000 (private use) is in neither and gives the box for a
    // missing letter.
    expect(inkOf('\u2602')).not.toBe(inkOf('\ue000'));
    expect(inkOf('\u2602')).not.toBe(inkOf(' '));
  });
});

describe('every text of a picture', () => {
  const labels = (font: object) => ({ legend: { labels: { font: { size: 12, ...font } } } });
  const picture = (plugins: object): Promise<Buffer> =>
    renderPng(
      {
        type: 'bar',
        data: { labels: ['a'], datasets: [{ label: 'does not hold', data: [1] }] },
        options: { plugins },
      },
      300,
      200,
    );

  it('is in the fonts of the report, also a legend that names none', async () => {
    const plain = await picture(labels({}));
    expect(plain.equals(await picture(labels({ family: FONT_FAMILY })))).toBe(true);
    expect(plain.equals(await picture(labels({ family: 'Report DejaVu' })))).toBe(false);
  });
});

describe('text that must fit', () => {
  const title = 'Ships 3.38 a day against 4 asked (95 % CI 3.29 to 3.47, 40 replications) and more';

  it('is broken into lines that are no wider than asked, and loses no word where all fit', () => {
    const lines = wrap(title, 300, 18, '600');
    expect(lines.length).toBeGreaterThan(1);
    for (const line of lines) expect(textWidth(line, 18, '600')).toBeLessThanOrEqual(300);
    expect(wrap(title, 500, 18, '600').join(' ')).toBe(title);
  });

  it('keeps an interval on one line', () => {
    expect(
      wrap(title, 500, 18, '600').some((line) => line.includes('(95 % CI 3.29 to 3.47, 40 replications)')),
    ).toBe(true);
  });

  it('is shortened in the middle', () => {
    const short = fit('final assembly station for the rear body, number 12', 150, 13);
    expect(textWidth(short, 13)).toBeLessThanOrEqual(150);
    expect(short).toMatch(/^final .*….*12$/);
  });
});
