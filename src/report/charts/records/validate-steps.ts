import { capital, exact, number } from '../../../study/format.js';
import type { ValidateResults } from '../../../study/validate/results.js';
import {
  boundsText,
  byPosition,
  isJudged,
  type Judged,
  valueText,
} from '../../first/records/validate-told.js';
import { LAYOUT } from '../../style.js';
import { valueAxis, ZERO_GRID } from '../axes.js';
import { type Chart, intervalWords } from '../chart.js';
import { rowChart, rowsOf } from '../row-chart.js';
import { IN_WORDS, logMarks } from './in-band.js';

const TOP = 40,
  /** Per cent to either side. */
  LEAST_ROOM = 10;

/** How much longer a step takes in the log than in the model, per cent, beside where a build of it lies. */
export function stepTimes(results: ValidateResults): Chart | null {
  const steps = byPosition(
      results.measures
        .filter(isJudged)
        .filter(({ topic, simulated }) => topic === 'minutes' && simulated.middle > 0),
    ),
    most = Math.min(TOP, LAYOUT.mostRows),
    shown = steps.slice(0, most);
  if (shown.length === 0) return null;
  if (steps.length > most && most < TOP) LAYOUT.isCut = true;
  const longer = ({ simulated: { middle } }: Judged, value: number): number => 100 * (value / middle - 1),
    at = shown.map((each) => longer(each, each.real)),
    ends = (each: Judged): [number, number] => [
      longer(each, each.simulated.low),
      longer(each, each.simulated.high),
    ],
    farthest = (values: readonly number[]): number => Math.max(...values.map(Math.abs)),
    // A wide band would leave no room for the others: it goes on beyond the plot.
    room = Math.max(LEAST_ROOM, 10 * Math.ceil(farthest(at) / 5)),
    isWider = farthest(shown.flatMap(ends)) > room;
  return rowChart({
    finding: finding(steps, longer),
    how:
      'Mean working minutes of a visit, of a lane from loading to unloading. Bars: where a build of the ' +
      `model lies, all measures together ${number(100 * results.level)} %. ${IN_WORDS}` +
      (steps.length > shown.length
        ? ` The ${shown.length} nearest to an end or out; the table has all.`
        : ''),
    rows: rowsOf(shown, ({ of }) => of),
    columns: [
      [['log,', 'min'], (each) => valueText(each, each.real)],
      [['model,', 'min'], (each) => valueText(each, each.simulated.middle)],
      [['between'], boundsText],
      [['visits'], ({ n }) => exact(n)],
    ],
    values: valueAxis('log against model, %', {
      grid: ZERO_GRID,
      ...(isWider ? { min: -room, max: room } : {}),
    }),
    intervals: {
      of: 'log against model, %',
      sure: `in the model ${intervalWords(results.level)}`,
      ends,
      mean: (each) => longer(each, each.real),
    },
    plugins: [logMarks(shown.map(({ agrees }, i) => ({ agrees, x: at[i] ?? 0 })))],
  });
}

function finding(steps: readonly Judged[], longer: (each: Judged, value: number) => number): string {
  const out = steps.filter(({ agrees }) => !agrees),
    [first] = out,
    hasLane = steps.some(({ what }) => what !== 'working minutes');
  if (first === undefined)
    return steps.length === 1
      ? 'The time of the one step agrees'
      : `The times of all ${exact(steps.length)} ${hasLane ? 'steps and lanes' : 'steps'} agree`;
  const change = Math.round(longer(first, first.real)),
    others = out.length - 1;
  return (
    `${capital(first.of)} takes ${exact(Math.abs(change))} % ${change < 0 ? 'less' : 'more'} time in the ` +
    'log than in the model' +
    (others > 0 ? `; ${exact(others)} more do not agree` : '; all others agree')
  );
}
