import { short, withInterval } from '../../../study/format.js';
import type { Results } from '../../../study/simulate/results.js';
import { LINES } from '../../style.js';
import { type Chart, intervalNote } from '../chart.js';
import { type TimeLine, timeChart } from '../time.js';

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
  const lines = shown.map(
    (place, index): TimeLine => ({
      name: place.kind === 'lane' ? `${place.name} (lane)` : place.name,
      note: `mean ${short(place.mean)}`,
      values: place.series,
      colour: LINES[index]?.colour ?? '',
      dash: LINES[index]?.dash ?? [],
      width: place.kind === 'site' ? 2.5 : 1.5,
    }),
  );
  return timeChart(results, {
    finding:
      `WIP averages ${withInterval(results.wip.total, 'units')}; most of it in ${largest.name}, ` +
      withInterval(largest.mean),
    how:
      `Units inside each site and on each lane by ${results.series.unit}; bands and figures in ` +
      `brackets: ${intervalNote(results)}.` +
      (left > 0 ? ` The ${left} smallest are in results.json.` : ''),
    lines,
    valueTitle: 'units',
  });
}
