import type { Plugin } from 'chart.js';
import { capital, exact, number } from '../../../study/format.js';
import { each, unitsEach } from '../../../study/planners-unit.js';
import type { ReliefsResults } from '../../../study/reliefs/results.js';
import { changeName } from '../../constraint.js';
import { axisOf, drawing } from '../../drawing.js';
import { countedIn } from '../../reliefs.js';
import { LAYOUT, PALETTE } from '../../style.js';
import { valueAxis, ZERO_GRID } from '../axes.js';
import { type Chart, intervalWords } from '../chart.js';
import { figures, told } from '../figures.js';
import { disc } from '../marks.js';
import { rowChart, rowsOf } from '../row-chart.js';

const TOP = 20;

/** The best reliefs, each a dot with its interval. */
export function reliefGains(results: ReliefsResults): Chart | null {
  const { reliefs, rateUnit } = results,
    units = unitsEach(rateUnit);
  if (reliefs.length === 0) return null;
  const most = Math.min(TOP, LAYOUT.mostRows),
    shown = reliefs.slice(0, most),
    write = figures(shown.map(({ gain }) => gain)),
    rows = rowsOf(shown, ({ text, offer }) => changeName(text, offer));
  if (reliefs.length > most && most < TOP) LAYOUT.isCut = true;
  return rowChart({
    finding: bestFinding(results),
    how:
      `${capital(units)} more than today, ${countedIn(results)}, under the same chance. Bars: all hold ` +
      `together, ${number(100 * results.level)} %. Right of the line at 0: ships more.`,
    rows,
    columns: [
      [[`more ${each(rateUnit)}`], ({ gain }) => write.short(gain)],
      [['builds'], ({ replications, isFresh }) => `${exact(replications)}${isFresh ? ' fresh' : ''}`],
    ],
    values: valueAxis(`gain, ${units}`, { grid: ZERO_GRID }),
    intervals: {
      of: 'gain',
      sure: intervalWords(results.level),
      ends: ({ gain: { mean, low, high } }) => [low ?? mean, high ?? mean],
      mean: ({ gain }) => gain.mean,
    },
    plugins: [dots(shown.map(({ gain }) => gain.mean))],
  });
}

/** The best, or that it is not told apart from others; nothing is best that does not surely gain. */
function bestFinding({ best, reliefs, base, rateUnit }: ReliefsResults): string {
  const [first] = reliefs,
    others = best === null ? 0 : best.named + best.others - 1;
  return best === null || first === undefined
    ? `No single change surely ships more than ${told(base.throughput)} ${each(rateUnit)}`
    : `${capital(changeName(first.text, first.offer))} brings ${told(first.gain)} ${each(rateUnit)}` +
        (others > 0 ? `, not told apart from ${exact(others)} more` : ', the most');
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
