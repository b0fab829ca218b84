import { renderPng } from '../canvas.js';
import type { Chart } from '../charts/chart.js';
import { stableJson } from '../json.js';
import type { Picture } from '../page/page.js';

/**
 * The files that the report of every study has, by name: `results.json`, the charts that have something to
 * show, and `report.html` with the same charts inside.
 */
export async function studyFiles<Results>(
  results: Results,
  charts: Readonly<Record<string, (results: Results) => Chart | null>>,
  page: (results: Results, pictures: readonly Picture[]) => string,
): Promise<Map<string, string | Buffer>> {
  const pictures = await Promise.all(
    Object.entries(charts).flatMap(([name, draw]) => {
      const chart = draw(results);
      return chart === null ? [] : [pictureOf(name, chart)];
    }),
  );
  return new Map<string, string | Buffer>([
    ['results.json', stableJson(results)],
    ...pictures.map(({ name, png }) => [`${name}.png`, png] as const),
    ['report.html', page(results, pictures)],
  ]);
}

async function pictureOf(name: string, { alt, width, height, configuration }: Chart): Promise<Picture> {
  return { name, alt, width, height, png: await renderPng(configuration, width, height) };
}
