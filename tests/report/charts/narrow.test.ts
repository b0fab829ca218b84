import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { renderPng } from '../../../src/report/canvas.js';
import type { DrawChart } from '../../../src/report/charts/chart.js';
import { CHARTS } from '../../../src/report/charts/of-study.js';
import { LAYOUT } from '../../../src/report/style.js';
import { readPng } from '../samples/png.js';

const wide = { ...LAYOUT };

/** The sample reports of the demo. */
const FOLDERS = {
  simulate: 'rescue-tender',
  compare: 'compare',
  factors: 'factors',
  rate: 'rate',
  reliefs: 'reliefs',
  buffers: 'buffers',
  reach: 'reach',
  fit: 'fit',
} as const;

describe.each(Object.entries(FOLDERS))('pictures of %s on a phone', (study, folder) => {
  const results = JSON.parse(
    readFileSync(new URL(`../../../reports/${folder}/results.json`, import.meta.url), 'utf8'),
  ) as never;
  beforeAll(() => {
    Object.assign(LAYOUT, { width: 346, hasTitles: false, mostRows: 10 });
  });
  afterAll(() => {
    Object.assign(LAYOUT, wide);
  });
  it.each(Object.entries(CHARTS[study as keyof typeof FOLDERS] as Record<string, DrawChart<never>>))(
    '%s is as wide as the screen, cut at no edge, and its title and note are short',
    async (_, draw) => {
      const chart = draw(results);
      if (chart === null) return;
      const pixels = readPng(await renderPng(chart.configuration, chart.width, chart.height));
      expect([pixels.width, pixels.height]).toEqual([2 * 346, 2 * chart.height]);
      expect(pixels.frameIsWhite(1)).toBe(true);
      expect(chart.finding.length).toBeLessThanOrEqual(110);
      expect(chart.how.length).toBeLessThanOrEqual(240);
      expect(chart.finding).not.toMatch(/\bCI\b|\bP\d\d\b|\d\.\d{3}/);
      expect(chart.how).not.toMatch(/\bCI\b|\bP\d\d\b/);
    },
  );
});
