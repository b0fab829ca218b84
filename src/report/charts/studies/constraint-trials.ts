import type { Plugin } from 'chart.js';
import type { ConstraintResult, Tried } from '../../../study/constraint/results.js';
import { calledThing } from '../../../study/constraint/sentence.js';
import { capital, number } from '../../../study/format.js';
import { changeName, type TrialVerdict, trialVerdict, waitingFor } from '../../constraint.js';
import { axisOf, drawing } from '../../drawing.js';
import { faded, PALETTE } from '../../style.js';
import { valueAxis, ZERO_GRID } from '../axes.js';
import { type Chart, intervalNote, intervalWords } from '../chart.js';
import { figures, told } from '../figures.js';
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
    rows = rowsOf(tried, ({ what, offer }) => changeName(what, offer));
  const sure = intervalWords(first.gain.level),
    write = figures(tried.map(({ gain }) => gain));
  return rowChart({
    finding: capital((at === null ? '' : `${at} `) + (stopped(found) ?? nothingHelps(found))),
    how:
      'One more of each of the likeliest, or an hour more, under the same chance; ' +
      (replications < 2 ? intervalNote({ replications, level: first.gain.level }) : INTERVALS) +
      '. Red diamond: stops it; blue: helps too; grey: too little or nothing. Grey band: does not matter.',
    rows,
    nameRoom: NAME_ROOM,
    columns: [
      [['a day more'], ({ gain }) => write.short(gain)],
      [['verdict'], (each) => trialVerdict(each, found)],
      [
        ['waiting', 'for it'],
        (each) => {
          const units = waitingFor(each, found);
          return units === null ? '' : number(Number(units.toPrecision(2)));
        },
      ],
    ],
    values: valueAxis('gain, units a working day', { grid: ZERO_GRID, grace: '3%' }),
    intervals: {
      of: 'gain',
      sure,
      ends: ({ gain: { mean, low, high } }) => [low ?? mean, high ?? mean],
      mean: ({ gain }) => gain.mean,
    },
    plugins: [zoneBand(zone), marks(rows, found)],
  });
}

const INTERVALS = 'the bars hold together';

/** What stops it and what one more of it brings, by the name that the scenario gives that. */
const stopped = ({ culprit }: ConstraintResult): string | null =>
  culprit === null
    ? null
    : `${calledThing(culprit.thing)} stops it: ${changeName(culprit.what, culprit.offer)} brings ` +
      `${told(culprit.gain)} a day`;

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
