import type { Plugin } from 'chart.js';
import { count, number } from '../../../study/format.js';
import type { RecoveryDays, RecoveryResult } from '../../../study/sections/outages.js';
import type { Results } from '../../../study/simulate/results.js';
import { axisOf, drawing } from '../../drawing.js';
import { dateText } from '../../first/first.js';
import { faded, INK, PALETTE } from '../../style.js';
import { categoryAxis, roomForText, valueAxis } from '../axes.js';
import { type Chart, chart } from '../chart.js';
import { band } from '../datasets.js';
import { told } from '../figures.js';
import { lineNames, nameRoom } from '../over-time/line-names.js';
import { lineWords } from '../over-time/line-words.js';
import { shadeTime } from '../over-time/shade.js';
import { lineDatasets, type TimeLine } from '../over-time/time.js';
import { topWithNames, type UprightLine, uprightLines } from '../upright-lines.js';

const BODY_HEIGHT = 480,
  HAIR = 0.5,
  /** Days. */
  AN_HOUR = 0.05;

/** The build with and without the outage that costs most, day by day, and the units that lie between. */
export function outageRecovery(results: Results): Chart | null {
  const recovery = results.recoveries.find(({ byDay }) => byDay !== null),
    byDay = recovery?.byDay ?? null;
  if (recovery === undefined || byDay === null) return null;
  const lines: TimeLine[] = [
    {
      name: 'units behind',
      note: recovery.replications < 2 ? '1 build' : 'mean; band: 8 of 10 builds',
      values: byDay.behind,
      colour: PALETTE.vermillion,
      dash: [],
      width: 3,
    },
    {
      name: 'shipped in a week with it',
      note: '',
      values: byDay.shippedWith,
      colour: PALETTE.blue,
      dash: [],
      width: 2,
    },
    {
      name: 'shipped without it',
      note: '',
      values: byDay.shippedWithout,
      colour: PALETTE.black,
      dash: [6, 4],
      width: 1.6,
    },
  ];
  const marks = recoveryMarks(recovery, byDay);
  return chart({
    finding: finding(recovery),
    how:
      'The same builds with and without it, under the same chance: units of the seven days up to each, and ' +
      `units behind since the start; ${count(recovery.replications, 'build')}. Hatched: the outage.` +
      laterText(recovery),
    bodyHeight: BODY_HEIGHT,
    type: 'line',
    data: {
      labels: [...byDay.dates],
      datasets: [
        ...band(
          ['units behind, 8 of 10 builds low', [...byDay.behindP10]],
          ['units behind, 8 of 10 builds high', [...byDay.behindP90]],
          faded(PALETTE.vermillion, 0.2),
        ),
        ...lineDatasets(lines, results.level),
      ],
    },
    scales: {
      x: categoryAxis('end of the day'),
      y: valueAxis('units', {
        // Ahead by a hair is no reason for an axis below 0.
        ...(Math.min(...byDay.behind, ...byDay.behindP10) > -HAIR ? { min: 0 } : {}),
        suggestedMax: topWithNames(
          Math.max(...byDay.behindP90, ...byDay.shippedWith, ...byDay.shippedWithout),
          marks.length,
          BODY_HEIGHT,
        ),
      }),
      room: roomForText(nameRoom(lines)),
    },
    plugins: [shade(recovery, byDay), uprightLines(marks), lineNames(lines), lineWords(lines)],
  });
}

function finding(recovery: RecoveryResult): string {
  const { behindMost, caughtUp, names } = recovery,
    [half] = recovery.caughtUpBy,
    behind = told(behindMost.units);
  const caught =
    half?.date == null
      ? `${caughtUp.count} of ${count(caughtUp.n, 'build')} catch up before the run ends`
      : `half catch up by ${dateText(half.date)}`;
  return (
    `“${names.join('” and “')}” puts the build ${behind} ${behind === '1' ? 'unit' : 'units'} behind at ` +
    `worst; ${caught}`
  );
}

/** The end of the programme, where it moves. */
function laterText({ daysLater }: RecoveryResult): string {
  if (daysLater === null || Math.abs(daysLater.mean) < AN_HOUR) return '';
  const days = told(daysLater);
  return ` The last unit is ${days} ${days === '1' ? 'day' : 'days'} later.`;
}

/** Place on the axis, in days from its first; a day's value stands at its end. */
const placeOf = ({ days }: RecoveryDays, sinceOutage: number): number => sinceOutage - (days[0] ?? 0);

/** Behind everything: the time of the outage. */
function shade(recovery: RecoveryResult, byDay: RecoveryDays): Plugin {
  const first = placeOf(byDay, 0),
    last = placeOf(byDay, lastDay(recovery));
  return drawing(
    'outage',
    (context, chart) => {
      const x = axisOf(chart, 'x'),
        { left, right, top, bottom } = chart.chartArea;
      shadeTime(context, {
        left: Math.max(left, x.getPixelForValue(first - 1)),
        right: Math.min(right, x.getPixelForValue(last)),
        top,
        bottom,
      });
    },
    'beforeDatasetsDraw',
  );
}

/** The last day of an outage, counted from its first. */
function lastDay({ from, to }: RecoveryResult): number {
  const dayOf = (time: number): number => Math.floor(time / 86_400_000);
  return dayOf(Date.parse(`${to}Z`) - 1) - dayOf(Date.parse(`${from}Z`));
}

/** Where the build is furthest behind, and where it has caught up. */
function recoveryMarks({ behindMost, caughtUpBy }: RecoveryResult, byDay: RecoveryDays): UprightLine[] {
  const mark = (date: string | null, name: string, dash: readonly number[]): UprightLine[] => {
    const at = date === null ? -1 : byDay.dates.indexOf(date);
    return at < 0 ? [] : [{ name, at, colour: INK, dash }];
  };
  return [
    ...mark(behindMost.date, `furthest behind, ${behindMost.date}`, [2, 3]),
    ...caughtUpBy.flatMap(({ p, date, days }) =>
      mark(
        date,
        `${p === 0.5 ? 'half' : `${number(10 * p)} of 10`} caught up, ${days ?? 0} days after`,
        p > 0.5 ? [7, 4] : [],
      ),
    ),
  ];
}
