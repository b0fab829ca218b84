import type { PlaceState, Results, StationResult } from '../../study/results.js';
import { FONT_FAMILY } from '../canvas.js';
import { paint } from '../hatch.js';
import { percentWithInterval, short } from '../format.js';
import { INK, SIZE, STATE_FILLS, STATE_ORDER } from '../style.js';
import { chart, intervalHead, intervalNote, roomAtRight, valueAxis, type Chart } from './chart.js';
import { column, columnsRoom, nameAxis, perRow, rowHeight, rowsBySite, textColumns } from './rows.js';

/** Losses are what a planner can act on: neither progress nor the planned rest. */
const LOSSES = STATE_ORDER.filter((state) => !['working', 'unattended', 'off shift'].includes(state));
/** Up to this share of off-shift time bars are drawn whole; beyond, the axis is cut, as the rest would be unreadable. */
const WHOLE_UP_TO = 0.35;

/** What the places of every station do with their time: one bar a station, ten states, adding to 100 %. */
export function placeTime(results: Results): Chart | null {
  const { stations } = results;
  if (stations.length === 0) return null;
  const rows = rowsBySite(stations);
  const end = axisEnd(stations);
  const columns = [
    column(['working', `% ${intervalHead(results)}`], rows, (station) => short(station.share.working, 100)),
    column(['largest loss', `% ${intervalHead(results)}`], rows, lossText),
  ];
  return chart({
    finding: finding(stations),
    how: `Share of place time by station, stations grouped by site in route order. Figures at the right: mean, with ${intervalNote(results)}. `
      + (end === 100 ? 'Each bar adds to 100 %.' : `The axis is cut at ${end} %: the rest of every bar, up to 100 %, is off shift.`),
    bodyHeight: 100 + rows.length * rowHeight(rows.length),
    type: 'bar',
    data: {
      labels: rows.map((row) => row.label),
      datasets: STATE_ORDER.map((state) => ({
        label: state,
        data: perRow(rows, (station) => station.share[state].mean * 100),
        backgroundColor: paint(STATE_FILLS[state]), borderColor: STATE_FILLS[state].edge, borderWidth: 0.6, borderSkipped: false as const,
        barPercentage: 0.8, categoryPercentage: 1,
      })),
    },
    options: { indexAxis: 'y' },
    scales: { x: valueAxis('share of place time, %', { position: 'top', stacked: true, max: end }), y: nameAxis(rows, { stacked: true }), room: roomAtRight(columnsRoom(columns)) },
    legend: { display: true, position: 'top', align: 'start', onClick: () => undefined, labels: { color: INK, boxWidth: 26, boxHeight: 13, padding: 12, font: { family: FONT_FAMILY, size: SIZE.small } } },
    plugins: [textColumns(columns)],
  });
}

/** 100, or the next 5 % above the greatest on-shift share where every station rests for long. */
function axisEnd(stations: readonly StationResult[]): number {
  const onShift = Math.max(...stations.map((station) => 1 - station.share['off shift'].mean));
  return 1 - onShift < WHOLE_UP_TO ? 100 : Math.max(5, Math.ceil(onShift * 20) * 5);
}

function largestLoss(station: StationResult): PlaceState {
  return LOSSES.reduce((worst, state) => station.share[state].mean > station.share[worst].mean ? state : worst);
}

function lossText(station: StationResult): string {
  const state = largestLoss(station);
  return station.share[state].mean === 0 ? 'none' : `${state} ${short(station.share[state], 100)}`;
}

function finding(stations: readonly StationResult[]): string {
  const busiest = stations.reduce((most, station) => station.share.working.mean > most.share.working.mean ? station : most);
  const loser = stations.reduce((most, station) => station.share[largestLoss(station)].mean > most.share[largestLoss(most)].mean ? station : most);
  const state = largestLoss(loser);
  const loss = loser.share[state].mean === 0 ? 'no station loses time' : `largest loss: ${state} at ${loser.name}, ${percentWithInterval(loser.share[state])}`;
  return `Works most: ${busiest.name}, ${percentWithInterval(busiest.share.working)}; ${loss}`;
}
