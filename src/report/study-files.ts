import { renderPng } from './canvas.js';
import type { Chart } from './charts/chart.js';
import { stableJson } from './json.js';
import type { Picture } from './page-shape.js';

/** The files that the report of every study has, by name: `results.json`, the charts that have something to show, and `report.html` with the same charts inside. */
export function studyFiles<Results>(
  results: Results, charts: Readonly<Record<string, (results: Results) => Chart | null>>, page: (results: Results, pictures: readonly Picture[]) => string,
): Map<string, string | Buffer> {
  const files = new Map<string, string | Buffer>([['results.json', stableJson(results)]]), pictures: Picture[] = [];
  for (const [name, draw] of Object.entries(charts)) {
    const chart = draw(results);
    if (chart === null) continue;
    const png = renderPng(chart.configuration, chart.width, chart.height);
    files.set(`${name}.png`, png);
    pictures.push({ name, alt: chart.alt, width: chart.width, height: chart.height, png });
  }
  return files.set('report.html', page(results, pictures));
}
