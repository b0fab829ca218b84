import type { BufferResults } from '../../../study/buffers/results.js';
import { count } from '../../../study/format.js';
import { mostNamed } from '../../buffers.js';
import { PALETTE } from '../../style.js';
import { TICKS, valueAxis } from '../axes.js';
import { BOX_LEGEND, type Chart } from '../chart.js';
import { filledBars } from '../datasets.js';
import { toldOf } from '../figures.js';
import { perRow, rowChart, rowsOf } from '../row-chart.js';

const BAR_ROW = 40;
const AS_IT_IS = { colour: '#b8b8b8', hatch: 'plain', hatchColour: '#b8b8b8', edge: '#7a7a7a' } as const,
  CHOSEN = { colour: PALETTE.blue, hatch: 'plain', hatchColour: PALETTE.blue, edge: PALETTE.blue } as const,
  BEST = { colour: '#ffffff', hatch: 'rising', hatchColour: PALETTE.blue, edge: PALETTE.blue } as const;

/** Places of each spot in the chosen layout, beside those that it has now and those of the best. */
export function placesLayout(results: BufferResults): Chart {
  const { spots, chosen, best, more, present, unit } = results;
  const rows = rowsOf(spots, ({ name }) => name);
  const moved = spots.filter((spot) => spot.chosen !== spot.present).length,
    hasBest = best !== null && more !== null;
  return rowChart({
    finding:
      moved === 0
        ? `The layout as it is stays, ${toldOf(chosen.rate, unit)}`
        : `${count(chosen.total, 'place')} chosen, ${present.total} as it is: ${moved} of ` +
          `${count(spots.length, 'spot')} change`,
    how:
      'Waiting places. Grey: as it is; blue: chosen' +
      (hasBest ? `; hatched: the best found with ${best.total}.` : '.'),
    abreast: hasBest ? 3 : 2,
    each: BAR_ROW,
    above: 96,
    rows,
    columns: [
      [['as it is'], (spot) => String(spot.present)],
      [['chosen'], (spot) => String(spot.chosen)],
      ...(hasBest
        ? [[[mostNamed(results)], ({ best }: (typeof spots)[number]) => String(best ?? '')] as const]
        : []),
    ],
    values: valueAxis('waiting places', { ticks: { ...TICKS, precision: 0 } }),
    legend: BOX_LEGEND,
    datasets: [
      filledBars(
        'as it is',
        perRow(rows, (spot) => spot.present),
        AS_IT_IS,
      ),
      filledBars(
        'chosen',
        perRow(rows, (spot) => spot.chosen),
        CHOSEN,
      ),
      ...(hasBest
        ? [
            filledBars(
              mostNamed(results),
              perRow(rows, (spot) => spot.best),
              BEST,
            ),
          ]
        : []),
    ],
  });
}
