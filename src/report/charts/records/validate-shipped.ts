import { exact } from '../../../study/format.js';
import type { ValidateResults } from '../../../study/validate/results.js';
import { lastDay } from '../../first/records/validate-told.js';
import { INK, PALETTE } from '../../style.js';
import type { Chart } from '../chart.js';
import { addedUp } from './added-up.js';

/** Units shipped in the log, in the band of the simulated builds. */
export function shippedInBand(results: ValidateResults): Chart | null {
  const { byDay, replications } = results,
    last = byDay.at(-1);
  if (last === undefined) return null;
  const of = `${replications} of ${replications} builds`;
  return addedUp({
    finding:
      `${exact(last.real)} units shipped by ${lastDay(results)}; ` +
      `the model ships ${exact(last.low)} to ${exact(last.high)}`,
    how:
      `Units added up to the end of each day. Band: the least to the most of ${replications} builds, so the ` +
      'log leaves it on a day now and then even if the model is right; the measures decide.',
    days: byDay.map(({ date }) => date),
    band: { of, low: byDay.map(({ low }) => low), high: byDay.map(({ high }) => high) },
    lines: [
      {
        name: 'model',
        note: 'middle; band: all builds',
        colour: PALETTE.blue,
        dash: [6, 4],
        width: 1.6,
        values: byDay.map(({ middle }) => middle),
      },
      { name: 'log', note: '', colour: INK, dash: [], width: 2.5, values: byDay.map(({ real }) => real) },
    ],
  });
}
