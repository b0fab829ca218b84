import { count } from '../../../study/format.js';
import { type BottleneckResult } from '../../../study/sections/bottlenecks.js';
import {
  SHIFT_STATES,
  type ShiftState,
  type StationResult,
  shareIn,
} from '../../../study/sections/stations.js';
import { type Results } from '../../../study/simulate/results.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { sameAs } from '../../constraint.js';
import { STATE_FILLS, STATE_ORDER } from '../../style.js';
import { judgedText } from '../../tables/bottlenecks.js';
import { valueAxis } from '../axes.js';
import { BOX_LEGEND, type Chart, intervalHead, intervalNote } from '../chart.js';
import { filledBars } from '../datasets.js';
import { type Figures, figures, told } from '../figures.js';
import { foremost } from '../foremost.js';
import { perRow, rowChart, rowHeight, rowsBySite } from '../row-chart.js';

/**
 * In the order of the fills. Off shift is told in a column: as a bar it would hide the rest of a one-shift
 * plant.
 */
const STATES = STATE_ORDER.filter((state): state is ShiftState =>
  (SHIFT_STATES as readonly string[]).includes(state),
);
/** A station that stands empty for a greater share of its time is not drawn. */
const NEVER_USED = 0.995;
/** What a planner can act on here: not progress, and not want of units, which comes from elsewhere. */
const LOSSES = STATES.filter((state) => !['working', 'unattended', 'starved'].includes(state));

/**
 * What the places of every station do with their time on shift: one bar a station, nine states, adding to 100
 * %.
 */
export function placeTime(results: Results): Chart | null {
  const judged = results.constraint?.judged ?? null,
    stations = judged?.stations ?? results.stations,
    seen = { level: results.level, replications: judged?.replications ?? results.replications };
  if (stations.length === 0) return null;
  const busy = stations.filter(({ shareOnShift: { starved } }) => starved.mean < NEVER_USED),
    idle = stations.length - busy.length,
    { shown, note } = foremost(
      busy.length === 0 ? stations : busy,
      ({ shareOnShift }) => 1 - shareOnShift.starved.mean,
      'stations',
      'least often starved',
    ),
    rows = rowsBySite(shown),
    working = figures(
      shown.map(({ shareOnShift }) => shareOnShift.working),
      100,
    ),
    lost = figures(
      shown.map((station) => largestLoss(station)[1]),
      100,
    ),
    states = STATES.filter((state) => shown.some(({ shareOnShift }) => shareIn(shareOnShift, state) > 0));
  return rowChart({
    finding: finding(judged?.bottlenecks ?? results.bottlenecks, judged !== null),
    how:
      'Time on shift' +
      `${judged === null ? '' : `, ${judgedText(judged, judged.replications)}`}. ` +
      `Brackets: ${intervalNote(seen)}.` +
      (idle > 0 && busy.length > 0 ? ` ${count(idle, 'idle station')} not drawn.` : '') +
      note,
    above: 100,
    each: rowHeight(rows.length),
    rows,
    columns: [
      [['working', `% ${intervalHead(results)}`], (station) => working.short(station.shareOnShift.working)],
      ...(judged === null ? [] : [workingWhole(results)]),
      [['lost most', `% ${intervalHead(results)}`], (station) => lossText(station, lost)],
      [
        ['off shift,', '% of all time'],
        (station) => String(Math.round(station.share['off shift'].mean * 100)),
      ],
    ],
    values: valueAxis('share of place time on shift, %', { stacked: true, max: 100 }),
    stacked: true,
    datasets: states.map((state) =>
      filledBars(
        state,
        perRow(rows, (station) => shareIn(station.shareOnShift, state) * 100),
        STATE_FILLS[state],
      ),
    ),
    legend: BOX_LEGEND,
  });
}

const workingWhole = ({
  stations: whole,
}: Results): readonly [readonly string[], (station: StationResult) => string] => [
  ['whole run,', 'working %'],
  (station) => {
    const same = sameAs(station, whole);
    return same === undefined ? '' : told(same.shareOnShift.working, 100);
  },
];

function largestLoss({ shareOnShift: shares }: StationResult): readonly [ShiftState, Estimate] {
  return LOSSES.flatMap((state) => {
    const share = shares[state];
    return share === undefined ? [] : [[state, share] as const];
  }).reduce((worst, each) => (each[1].mean > worst[1].mean ? each : worst));
}

/** Less of its time is told as none. */
const LITTLE = 0.0005;

function lossText(station: StationResult, write: Figures): string {
  const [state, share] = largestLoss(station);
  return share.mean < LITTLE ? 'none' : `${state} ${write.short(share)}`;
}

function finding(bottlenecks: readonly BottleneckResult[], isJudged: boolean): string {
  const busiest = bottlenecks
    .filter(({ kind }) => kind === 'station')
    .reduce<BottleneckResult | null>(
      (most, each) => (most === null || each.active.mean > most.active.mean ? each : most),
      null,
    );
  return busiest === null
    ? 'No station is used'
    : `Busiest station${isJudged ? ' in the weeks judged' : ''}: ${busiest.name}, ` +
        `${told(busiest.active, 100)} % of its time on shift`;
}
