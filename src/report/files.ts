import type { Results } from '../study/results.js';
import { CHARTS } from './charts/index.js';
import { runsCsv, seriesCsv, stationsCsv, unitsCsv } from './csv.js';
import { page } from './page.js';
import { studyFiles } from './study-files.js';

/**
 * Every file of a simulate report, by name: `results.json`, the charts that have something to show, `report.html` with
 * the same charts inside, and CSV of the series, the stations, the units and the replications. Ready for `writeFolder`.
 */
export async function reportFiles(results: Results): Promise<Map<string, string | Buffer>> {
  const files = await studyFiles(results, CHARTS, page);
  files.set('series.csv', seriesCsv(results));
  files.set('stations.csv', stationsCsv(results));
  if (results.units.length > 0) files.set('units.csv', unitsCsv(results));
  files.set('runs.csv', runsCsv(results));
  return files;
}
