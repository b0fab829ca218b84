import { exact } from '../../../study/format.js';
import type { ValidateResults } from '../../../study/validate/results.js';
import { lastDay } from '../../first/records/validate-told.js';
import type { Chart } from '../chart.js';
import { logPlots } from './plots.js';

/** Units shipped in the log, in the band of the simulated builds; and how far ahead of the model it is. */
export function shippedInBand(results: ValidateResults): Chart | null {
  const { byDay, replications, period } = results,
    last = byDay.at(-1);
  if (last === undefined || byDay.length < 2) return null;
  const ahead = (of: 'real' | 'low' | 'high'): number[] => byDay.map((day) => day[of] - day.middle);
  return logPlots({
    finding:
      `${exact(last.real)} units shipped by ${lastDay(results)}; ` +
      `the model ships ${exact(last.low)} to ${exact(last.high)}`,
    how:
      `To the end of each day. Line: log; dashed: middle of the model; band: least to most of its ` +
      `${replications} builds, which the log leaves now and then even if the model is right. ` +
      'The measures decide.',
    first: period.from,
    when: 'end of day',
    of: `${replications} of ${replications} builds`,
    plots: [
      {
        name: 'units shipped, added up',
        real: byDay.map(({ real }) => real),
        low: byDay.map(({ low }) => low),
        middle: byDay.map(({ middle }) => middle),
        high: byDay.map(({ high }) => high),
        share: 1.2,
      },
      { name: 'units ahead of the model', real: ahead('real'), low: ahead('low'), high: ahead('high') },
    ],
    height: 400,
  });
}
