import { mean, percentWithInterval, short } from '../../../study/format.js';
import { type BottleneckResult } from '../../../study/sections/bottlenecks.js';
import { SHIFT_STATES, type ShiftState, type StationResult } from '../../../study/sections/stations.js';
import { type Results } from '../../../study/simulate/results.js';
import { sameAs } from '../../constraint.js';
import { STATE_FILLS, STATE_ORDER } from '../../style.js';
import { judgedText } from '../../tables/bottlenecks.js';
import { valueAxis } from '../axes.js';
import { BOX_LEGEND, type Chart, intervalHead, intervalNote } from '../chart.js';
import { filledBars } from '../datasets.js';
import { foremost } from '../foremost.js';
import { perRow, rowChart, rowHeight, rowsBySite } from '../row-chart.js';

/**
 * In the order of the fills. Off shift is told in a column: as a bar it would hide the rest of a one-shift
 * plant.
 */
const STATES = STATE_ORDER.filter((state): state is ShiftState =>
  (SHIFT_STATES as readonly string[]).includes(state),
);
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
  const { shown, note } = foremost(
      stations,
      ({ shareOnShift }) => 1 - shareOnShift.starved.mean,
      'stations',
      'least often starved',
    ),
    rows = rowsBySite(shown);
  return rowChart({
    finding: finding(stations, judged?.bottlenecks ?? results.bottlenecks, judged !== null),
    how:
      'Share of place time on shift by station, stations grouped by site in route order; each bar ' +
      `adds to 100 %${judged === null ? '' : `. Over ${judgedText(judged, results.replications)}`}. ` +
      `Figures at the right: mean, with ${intervalNote(seen)}; losses other than being starved.${note}`,
    above: 100,
    each: rowHeight(rows.length),
    rows,
    columns: [
      [['working', `% ${intervalHead(results)}`], (station) => short(station.shareOnShift.working, 100)],
      ...(judged === null ? [] : [workingWhole(results)]),
      [['largest loss on the spot', `% ${intervalHead(results)}`], lossText],
      [
        ['off shift,', '% of all time'],
        (station) => String(Math.round(station.share['off shift'].mean * 100)),
      ],
    ],
    values: valueAxis('share of place time on shift, %', { stacked: true, max: 100 }),
    stacked: true,
    datasets: STATES.map((state) =>
      filledBars(
        state,
        perRow(rows, (station) => station.shareOnShift[state].mean * 100),
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
    return same === undefined ? '' : mean(same.shareOnShift.working, 100);
  },
];

function largestLoss(station: StationResult): ShiftState {
  return LOSSES.reduce((worst, state) =>
    station.shareOnShift[state].mean > station.shareOnShift[worst].mean ? state : worst,
  );
}

function lossText(station: StationResult): string {
  const state = largestLoss(station);
  return station.shareOnShift[state].mean === 0
    ? 'none'
    : `${state} ${short(station.shareOnShift[state], 100)}`;
}

function finding(
  stations: readonly StationResult[],
  bottlenecks: readonly BottleneckResult[],
  isJudged: boolean,
): string {
  const busiest = bottlenecks
    .filter(({ kind }) => kind === 'station')
    .reduce<BottleneckResult | null>(
      (most, each) => (most === null || each.active.mean > most.active.mean ? each : most),
      null,
    );
  const loser = stations.reduce((most, station) =>
    station.shareOnShift[largestLoss(station)].mean > most.shareOnShift[largestLoss(most)].mean
      ? station
      : most,
  );
  const state = largestLoss(loser);
  const loss =
    loser.shareOnShift[state].mean === 0
      ? 'no station loses time on the spot'
      : `largest loss: ${state} at ${loser.name}, ${percentWithInterval(loser.shareOnShift[state])}`;
  const over = isJudged ? 'In the weeks judged, busiest' : 'Busiest';
  return busiest === null
    ? loss
    : `${over}: ${busiest.name}, active ${percentWithInterval(busiest.active)} of its time on shift; ${loss}`;
}
