import type { Plugin } from 'chart.js';
import type { ConstraintResult, Tried } from '../../../study/constraint/results.js';
import { stopsIt } from '../../../study/constraint/sentence.js';
import { capital, intervalName, number, short } from '../../../study/format.js';
import { type TrialVerdict, trialVerdict, waitingFor } from '../../constraint.js';
import { axisOf, drawing } from '../../drawing.js';
import { faded, PALETTE } from '../../style.js';
import { valueAxis, ZERO_GRID } from '../axes.js';
import { type Chart, intervalNote } from '../chart.js';
import { diamondPath, disc } from '../marks.js';
import { type Row, rowChart, rowsOf } from '../row-chart.js';

/** Room for what was tried, which is a sentence, CSS pixels. */
const NAME_ROOM = 430;
const COLOURS: Readonly<Record<TrialVerdict, string>> = {
  'stops it': PALETTE.vermillion,
  'helps too': PALETTE.blue,
  'too little to matter': '#8a8a8a',
  'no gain seen': '#8a8a8a',
  'not settled': '#8a8a8a',
};

/**
 * What one more of each of the likeliest brings; null where nothing was tried.
 * @param at what the title begins with, `at 3.5 a day`
 */
export function trialGains(found: ConstraintResult | null, at: string | null = null): Chart | null {
  const [first] = found?.tried ?? [];
  if (found === null || first === undefined) return null;
  const { tried, zone, replications } = found,
    ci = first.gain.low === null ? 'no interval' : intervalName(first.gain.level),
    rows = rowsOf(tried, ({ what }) => what, NAME_ROOM);
  return rowChart({
    finding: capital((at === null ? '' : `${at} `) + (stopsIt(found) ?? nothingHelps(found))),
    how:
      'Units a working day more with one more of each of the likeliest, and with an hour more, in pairs ' +
      'of replications with the same chance. Mark: mean; black: ' +
      intervalNote({ replications, level: first.gain.level }) +
      (replications < 2 ? '. ' : ', so that all hold together. ') +
      'Red diamond: what stops it; blue dot: helps too; grey dot: no gain, or too ' +
      `little. Grey band: gains below ${number(zone)}, which do not matter. Waiting: units that wait for ` +
      'it in the end, a hint by which trials are chosen.',
    rows,
    columns: [
      [['a day more', `(${ci})`], ({ gain }) => short(gain)],
      [['verdict'], (each) => trialVerdict(each, found)],
      [
        ['waiting,', 'units'],
        (each) => {
          const units = waitingFor(each, found);
          return units === null ? '' : number(units);
        },
      ],
    ],
    values: valueAxis('gain, units a working day', { grid: ZERO_GRID, grace: '3%' }),
    intervals: [ci, ({ gain: { mean, low, high } }) => [low ?? mean, high ?? mean]],
    plugins: [zoneBand(zone), marks(rows, found)],
  });
}

function nothingHelps({ outcome, tried }: ConstraintResult): string {
  if (outcome === 'not settled') return 'what stops it cannot be told from one replication';
  return tried.length === 1
    ? 'the one thing that was tried does not bring enough to matter'
    : `none of the ${tried.length} things that were tried brings enough to matter by itself`;
}

/** The gains on both sides of 0 that do not matter. */
const zoneBand = (zone: number): Plugin =>
  drawing(
    'zone',
    (context, chart) => {
      const x = axisOf(chart, 'x'),
        { top, height } = chart.chartArea,
        [from, to] = [Math.max(-zone, x.min), Math.min(zone, x.max)].map((each) => x.getPixelForValue(each));
      context.fillStyle = faded(PALETTE.black, 0.09);
      context.fillRect(from ?? 0, top, (to ?? 0) - (from ?? 0), height);
    },
    'beforeDatasetsDraw',
  );

/** A mark a row at its mean; what stops the build is a diamond, so that colour is not needed. */
function marks(rows: readonly Row<Tried>[], found: ConstraintResult): Plugin {
  return drawing('marks', (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, 'y');
    context.strokeStyle = '#ffffff';
    context.lineWidth = 1.2;
    rows.forEach(({ item }, row) => {
      if (item === null) return;
      const verdict = trialVerdict(item, found),
        [across, down] = [x.getPixelForValue(item.gain.mean), y.getPixelForValue(row)];
      context.fillStyle = COLOURS[verdict];
      if (verdict === 'stops it') {
        diamondPath(context, across, down, 7);
        context.fill();
      } else disc(context, across, down, 5);
      context.stroke();
    });
  });
}
