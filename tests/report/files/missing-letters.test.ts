import { describe, expect, it } from 'vitest';
import { newCanvas, renderPng } from '../../../src/report/canvas.js';
import { hasShape, MissingLetters } from '../../../src/report/files/folder/missing-letters.js';
import { reportFiles } from '../../../src/report/files/simulate.js';
import { sampleResults } from '../samples/results.js';

/** A private plane: no font has it, so it is a box on every machine. */
const BOX = '\u{10fffd}';
const noticeOf = (text: string, has?: (letter: string) => boolean): string | undefined => {
  const letters = new MissingLetters(has);
  letters.look(text);
  return letters.notice();
};
const picture = (label: string): Promise<Buffer> =>
  renderPng(
    { type: 'bar', data: { labels: [label], datasets: [{ label: 'one', data: [1] }] }, options: {} },
    300,
    200,
  );

describe('letters of pictures', () => {
  it('are there on every machine in Latin, Greek, Cyrillic, Arabic and Hebrew, with signs', () => {
    expect(
      noticeOf(
        'Łódź — «Tür» ≤ 3.4 ± 0.2 → ÷ Ωλ Цех окраски مقصورة الطلاء תא צביעה e\u0301 \u2068a\u2069\u00a0x',
      ),
    ).toBeUndefined();
  });

  it('that no font has are told once each, in their order, and no more than a dozen', () => {
    expect(noticeOf('station 涂装 涂车 é', () => false)).toBe(
      'notice: this machine has no font for these characters of the pictures: 涂装车; install one, ' +
        'for example Noto Sans CJK; the page and the CSV files have them',
    );
    expect(noticeOf('โรงพ่นสี', () => false)).toContain('for example Noto Sans;');
    expect(noticeOf('一二三四五六七八九十百千万', () => false)).toContain(': 一二三四五六七八九十百千…;');
    expect(noticeOf(`odd ${BOX}`)).toContain(`pictures: ${BOX};`);
  });

  it.each(['涂', 'ブ', '도', 'ห', 'ट'])(
    'are told to be missing where they are drawn as boxes, and not where the machine has a font: %s',
    async (letter) => {
      newCanvas(1, 1);
      const isBox = (await picture(letter)).equals(await picture(BOX));
      expect(hasShape(letter)).toBe(!isBox);
      expect(noticeOf(letter) === undefined).toBe(!isBox);
    },
  );
});

describe('the files of a report', () => {
  const named = (name: string) => {
    const results = sampleResults({});
    return {
      ...results,
      // Without it the picture of the stations is of the whole run.
      constraint: null,
      stations: results.stations.map((station) => ({ ...station, name: `${name} ${station.name}` })),
    };
  };
  const noticesOf = async (name: string): Promise<string[]> => {
    const notices: string[] = [];
    await reportFiles(named(name), (line) => notices.push(line));
    return notices;
  };

  it('come with a notice where a name is not in its pictures, and with none otherwise', async () => {
    expect(await noticesOf(`booth ${BOX}`)).toEqual([expect.stringContaining(`pictures: ${BOX};`)]);
    expect(await noticesOf('Łódź booth')).toEqual([]);
  });
});
