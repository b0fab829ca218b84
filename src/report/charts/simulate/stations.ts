import { percentWithInterval, short } from '../../../study/format.js';
import { type BottleneckResult } from '../../../study/sections/bottlenecks.js';
import { SHIFT_STATES, type ShiftState, type StationResult } from '../../../study/sections/stations.js';
import { type Results } from '../../../study/simulate/results.js';
import { paint } from '../../hatch.js';
import { STATE_FILLS, STATE_ORDER } from '../../style.js';
import { valueAxis } from '../axes.js';
import { BOX_LEGEND, type Chart, intervalHead, intervalNote } from '../chart.js';
import { rowChart, rowHeight } from '../row-chart.js';
import { column, perRow, rowsBySite } from '../rows.js';

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
  const { stations } = results;
  if (stations.length === 0) return null;
  const rows = rowsBySite(stations);
  const columns = [
    column(['working', `% ${intervalHead(results)}`], rows, (station) =>
      short(station.shareOnShift.working, 100),
    ),
    column(['largest loss on the spot', `% ${intervalHead(results)}`], rows, lossText),
    column(['off shift,', '% of all time'], rows, (station) =>
      String(Math.round(station.share['off shift'].mean * 100)),
    ),
  ];
  return rowChart({
    finding: finding(results),
    how:
      'Share of place time on shift by station, stations grouped by site in route order; each bar ' +
      'adds to 100 %. ' +
      `Figures at the right: mean, with ${intervalNote(results)}; losses other than being starved.`,
    bodyHeight: 100 + rows.length * rowHeight(rows.length),
    rows,
    columns,
    values: valueAxis('share of place time on shift, %', { position: 'top', stacked: true, max: 100 }),
    stacked: true,
    datasets: STATES.map((state) => ({
      label: state,
      data: perRow(rows, (station) => station.shareOnShift[state].mean * 100),
      backgroundColor: paint(STATE_FILLS[state]),
      borderColor: STATE_FILLS[state].edge,
      borderWidth: 0.6,
      borderSkipped: false as const,
      barPercentage: 0.8,
      categoryPercentage: 1,
    })),
    legend: BOX_LEGEND,
  });
}

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

function finding({ stations, bottlenecks }: Results): string {
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
  return busiest === null
    ? loss
    : `Busiest: ${busiest.name}, active ${percentWithInterval(busiest.active)} of its time on shift; ${loss}`;
}
