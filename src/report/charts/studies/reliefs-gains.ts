import type { Plugin } from 'chart.js';
import { exact, short, withInterval } from '../../../study/format.js';
import { unitsEach } from '../../../study/planners-unit.js';
import type { ReliefsResults } from '../../../study/reliefs/results.js';
import { bestText } from '../../../study/reliefs/sentence.js';
import { axisOf, drawing } from '../../drawing.js';
import { countedIn, levelsText } from '../../reliefs.js';
import { PALETTE } from '../../style.js';
import { valueAxis, ZERO_GRID } from '../axes.js';
import type { Chart } from '../chart.js';
import { disc } from '../marks.js';
import { rowChart, rowsOf } from '../row-chart.js';

const TOP = 20;

/** The best reliefs, each a dot with its interval. */
export function reliefGains(results: ReliefsResults): Chart | null {
  const { reliefs, rateUnit } = results,
    units = unitsEach(rateUnit);
  if (reliefs.length === 0) return null;
  const shown = reliefs.slice(0, TOP),
    rows = rowsOf(shown, ({ text }) => text);
  return rowChart({
    finding:
      bestText(results) ??
      `No single relief surely ships more than the base, ${withInterval(results.base.throughput)} ` + units,
    how:
      `U${units.slice(1)} more than the base, ${countedIn(results)}, in pairs of replications ` +
      `with the same chance. Dot: mean; bar: ${levelsText(results)}. Right of the line at 0: ` +
      'ships more.',
    rows,
    columns: [
      [['gain', '(CI)'], ({ gain }) => short(gain)],
      [['replications'], ({ replications, isFresh }) => `${exact(replications)}${isFresh ? ' fresh' : ''}`],
    ],
    values: valueAxis(`gain, ${units}`, { grid: ZERO_GRID }),
    intervals: ['CI', ({ gain: { mean, low, high } }) => [low ?? mean, high ?? mean]],
    plugins: [dots(shown.map(({ gain }) => gain.mean))],
  });
}

/** A dot a row, over its interval. */
function dots(values: readonly number[]): Plugin {
  return drawing('dots', (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, 'y');
    context.fillStyle = PALETTE.blue;
    values.forEach((value, row) => {
      disc(context, x.getPixelForValue(value), y.getPixelForValue(row), 5);
    });
  });
}
