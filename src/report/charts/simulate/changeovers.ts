import type { Plugin } from 'chart.js';
import type { Results } from '../../../study/simulate/results.js';
import { axisOf, drawing } from '../../drawing.js';
import { GRID, isNarrow } from '../../style.js';
import { roomForText, TICKS, ticksAt } from '../axes.js';
import { type Chart, chart } from '../chart.js';
import { told, toldShort } from '../figures.js';
import { drawStation, MOST_PLACES, type Strip, stationHeight } from './changeover-strip.js';

const MOST_STATIONS = 3;
/** Height of the axis, room for the numbers of places where a station has several; CSS pixels. */
const AXIS = 34,
  LABEL_ROOM = 64;

/**
 * Stations with changeovers over a week: whose turn it was on each place, the changeovers, and the units of
 * one value in a row.
 */
export function changeovers(results: Results): Chart | null {
  const all = results.changeovers.filter((each): each is Strip => each.strip !== null);
  const shown = all.slice(0, MOST_STATIONS),
    [first] = shown;
  if (first === undefined) return null;
  const left = all.length - shown.length,
    { strip } = first,
    cut = shown.some(({ places }) => places > MOST_PLACES);
  const labelRoom = shown.some(({ places }) => places > 1) ? LABEL_ROOM : 0;
  return chart({
    finding:
      `${first.name}: ${told(first.per100Units)} changeovers in 100 units, ` +
      `${told(first.hoursPerWeek)} h a week`,
    how:
      `Replication ${strip.replication}, ${strip.days[0] ?? ''} to ${strip.days.at(-1) ?? ''}, the week ` +
      `with most changeovers at ${first.name}. A block is a unit; above: units of one ${first.option} in ` +
      'a row.' +
      (cut ? ` The first ${MOST_PLACES} places of a station are shown.` : '') +
      (left > 0 ? ` ${left} more, less loaded, in results.json.` : ''),
    bodyHeight: AXIS + shown.reduce((height, each) => height + stationHeight(each, figuresOf(each)), 0),
    type: 'scatter',
    data: { datasets: [] },
    scales: {
      x: {
        type: 'linear',
        min: 0,
        max: strip.hours,
        border: { display: false },
        grid: { color: GRID, drawTicks: false },
        afterBuildTicks: ticksAt(strip.days.map((_, i) => 24 * i)),
        ticks: {
          ...TICKS,
          align: 'start',
          maxRotation: 0,
          autoSkip: false,
          callback: (_: unknown, i: number) => dayName(strip.days[i] ?? ''),
        },
      },
      y: { ...roomForText(labelRoom, 'left'), min: 0, max: 1 },
    },
    plugins: [strips(shown, strip.hours, labelRoom)],
  });
}

function strips(shown: readonly Strip[], hours: number, labelRoom: number): Plugin {
  return drawing('strips', (context, chart) => {
    const x = axisOf(chart, 'x'),
      { left, right, top } = chart.chartArea;
    let below = top;
    for (const each of shown) {
      drawStation(context, each, figuresOf(each), {
        left: left - labelRoom,
        right,
        top: below,
        x: (hour) => x.getPixelForValue(Math.max(0, Math.min(hours, hour))),
      });
      below += stationHeight(each, figuresOf(each));
    }
  });
}

const figuresOf = ({ per100Units, hoursPerWeek }: Strip): string =>
  isNarrow()
    ? `${told(per100Units)} in 100 units, ${told(hoursPerWeek)} h a week`
    : `${toldShort(per100Units)} in 100 units, ${toldShort(hoursPerWeek)} h a week`;

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
/** `Mon 2027-03-01`, on a phone `Mon`. */
function dayName(date: string): string {
  if (date === '') return '';
  const day = WEEKDAYS[new Date(`${date}T12:00:00Z`).getUTCDay()] ?? '';
  return isNarrow() ? day : `${day} ${date}`;
}
