import { capital, exact, number } from '../../../study/format.js';
import { unitsEach } from '../../../study/planners-unit.js';
import type { ReliefsResults, VariedResult } from '../../../study/reliefs/results.js';
import { isSame } from '../../../study/statistics/estimate.js';
import { DARK_EDGE, isNarrow, LAYOUT, PALETTE } from '../../style.js';
import { valueAxis, ZERO_GRID } from '../axes.js';
import type { Chart } from '../chart.js';
import { figures } from '../figures.js';
import { perRow, rowChart, rowHeight, rowsOf } from '../row-chart.js';

const TOP = 20;

/** The same in every replication: it is of no consequence. */
const isStill = ({ gain }: VariedResult): boolean => gain.mean === 0 && isSame(gain);

/** Guesses and estimates by what they move, low and high, the greatest first. */
export function reliefTornado(results: ReliefsResults): Chart | null {
  const { assumptions, rateUnit, level } = results;
  const moving = assumptions.filter(
      ({ low, high }) => low === null || high === null || !isStill(low) || !isStill(high),
    ),
    still = assumptions.length - moving.length,
    most = Math.min(TOP, LAYOUT.mostRows);
  if (moving.length === 0) return null;
  if (moving.length > most && most < TOP) LAYOUT.isCut = true;
  const units = unitsEach(rateUnit),
    rows = rowsOf(moving.slice(0, most), ({ words }) => words),
    write = figures(moving.flatMap(({ low, high }) => [low, high].flatMap((end) => end?.gain ?? [])));
  const cell = (varied: VariedResult | null): string =>
    varied === null ? 'cannot be' : isNarrow() ? write.mean(varied.gain) : write.short(varied.gain);
  const end = (side: 'low' | 'high') => ({
    label: `${side} end`,
    data: perRow(rows, (each) => each[side]?.gain.mean ?? null),
    barPercentage: 0.9,
    categoryPercentage: 0.8,
  });
  return rowChart({
    finding: nextFinding(results) ?? 'No guess or estimate surely moves throughput by more than matters',
    how:
      `${capital(units)} more or less than today. A guess is moved 20 %, an estimate 10 %, a whole number ` +
      `1 at least. Brackets: all hold together, ${number(100 * level)} %.` +
      (still > 0 ? ` ${exact(still)} that change nothing are not drawn.` : ''),
    abreast: 2,
    above: 90,
    each: rowHeight(rows.length) + 10,
    rows,
    columns: [
      [['low end'], ({ low }) => cell(low)],
      [['high end'], ({ high }) => cell(high)],
    ],
    values: valueAxis(`gain, ${units}`, { grid: ZERO_GRID }),
    datasets: [
      { ...end('low'), backgroundColor: PALETTE.orange, borderColor: DARK_EDGE, borderWidth: 1 },
      { ...end('high'), backgroundColor: PALETTE.blue },
    ],
    legend: { display: true, position: 'bottom' },
  });
}

/** Which value to measure next, as the answer names it. */
const nextFinding = ({ measureNext }: ReliefsResults): string | null =>
  measureNext === null
    ? null
    : `Measure next: ${measureNext.words} (${measureNext.basis}, ${measureNext.now})`;
