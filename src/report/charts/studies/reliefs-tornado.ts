import { intervalName, short } from '../../../study/format.js';
import { unitsEach } from '../../../study/planners-unit.js';
import type { ReliefsResults, VariedResult } from '../../../study/reliefs/results.js';
import { nextText } from '../../../study/reliefs/sentence.js';
import { DARK_EDGE, PALETTE } from '../../style.js';
import { valueAxis, ZERO_GRID } from '../axes.js';
import type { Chart } from '../chart.js';
import { perRow, rowChart, rowHeight, rowsOf } from '../row-chart.js';

const TOP = 20;

/** Guesses and estimates by what they move, low and high, the greatest first. */
export function reliefTornado(results: ReliefsResults): Chart | null {
  const { assumptions, eachLevel, rateUnit } = results;
  if (assumptions.length === 0) return null;
  const units = unitsEach(rateUnit),
    rows = rowsOf(assumptions.slice(0, TOP), ({ words }) => words),
    ci = intervalName(eachLevel.assumptions);
  const cell = (varied: VariedResult | null): string => (varied === null ? 'cannot be' : short(varied.gain));
  const end = (side: 'low' | 'high') => ({
    label: `${side} end`,
    data: perRow(rows, (each) => each[side]?.gain.mean ?? null),
    barPercentage: 0.9,
    categoryPercentage: 0.8,
  });
  return rowChart({
    finding: nextText(results) ?? 'No guess or estimate surely moves throughput by more than matters',
    how:
      `U${units.slice(1)} more or less than the base where one guess is 20 % lower or higher, one ` +
      'estimate 10 %, a whole number 1 at least; the others stay. Orange: low end; blue: high end. ' +
      'Intervals stand at the right.',
    above: 90,
    each: rowHeight(rows.length) + 10,
    rows,
    columns: [
      [['low', `(${ci})`], ({ low }) => cell(low)],
      [['high', `(${ci})`], ({ high }) => cell(high)],
    ],
    values: valueAxis(`gain, ${units}`, { grid: ZERO_GRID }),
    datasets: [
      { ...end('low'), backgroundColor: PALETTE.orange, borderColor: DARK_EDGE, borderWidth: 1 },
      { ...end('high'), backgroundColor: PALETTE.blue },
    ],
    legend: { display: true, position: 'bottom' },
  });
}
