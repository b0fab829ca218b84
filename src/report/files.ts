import type { Results } from '../study/results.js';
import { renderPng } from './canvas.js';
import { CHARTS } from './charts/index.js';
import { runsCsv, seriesCsv, stationsCsv, unitsCsv } from './csv.js';
import { stableJson } from './json.js';
import { page } from './page.js';
import type { Picture } from './page-shape.js';

/**
 * Every file of a simulate report, by name: `results.json`, the charts that have something to show, `report.html` with
 * the same charts inside, and CSV of the series, the stations, the units and the replications. Ready for `writeFolder`.
 */
export function reportFiles(results: Results): Map<string, string | Buffer> {
  const files = new Map<string, string | Buffer>([['results.json', stableJson(results)]]);
  const pictures: Picture[] = [];
  for (const [name, draw] of Object.entries(CHARTS)) {
    const chart = draw(results);
    if (chart === null) continue;
    const png = renderPng(chart.configuration, chart.width, chart.height);
    files.set(`${name}.png`, png);
    pictures.push({ name, alt: chart.alt, width: chart.width, height: chart.height, png });
  }
  files.set('report.html', page(results, pictures));
  files.set('series.csv', seriesCsv(results));
  files.set('stations.csv', stationsCsv(results));
  if (results.units.length > 0) files.set('units.csv', unitsCsv(results));
  files.set('runs.csv', runsCsv(results));
  return files;
}
