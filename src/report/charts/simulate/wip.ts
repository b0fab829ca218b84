import type { Results } from '../../../study/simulate/results.js';
import { LINES } from '../../style.js';
import { type Chart, intervalNote } from '../chart.js';
import { figures, told } from '../figures.js';
import { type TimeLine, timeChart } from '../over-time/time.js';
import { weekMarks } from '../over-time/week-marks.js';

/**
 * Units inside each site and on each lane, over time. At most as many lines as can be told apart; the rest is
 * said.
 */
export function wipBySite(results: Results): Chart | null {
  const places = [...results.wip.places].sort((a, b) => b.mean.mean - a.mean.mean);
  const largest = places[0];
  if (largest === undefined || largest.series.length === 0) return null;
  const shown = places.slice(0, LINES.length),
    left = places.length - shown.length;
  const write = figures(shown.map(({ mean }) => mean));
  const lines = shown.map(
    (place, index): TimeLine => ({
      name: place.kind === 'lane' ? `${place.name} (lane)` : place.name,
      note: `mean ${write.short(place.mean)}`,
      values: place.series,
      colour: LINES[index]?.colour ?? '',
      dash: LINES[index]?.dash ?? [],
      width: place.kind === 'site' ? 2.5 : 1.5,
    }),
  );
  return timeChart(results, {
    finding:
      `${told(results.wip.total)} units are inside on average, ` +
      (places.length === 1 ? `in ${largest.name}` : `${told(largest.mean)} of them in ${largest.name}`),
    how:
      `Units inside each site and on each lane by ${results.series.unit}. Bands and brackets: ` +
      `${intervalNote(results)}.` +
      (left > 0 ? ` The ${left} smallest are in results.json.` : ''),
    lines,
    valueTitle: 'units',
    marked: weekMarks(results),
  });
}
