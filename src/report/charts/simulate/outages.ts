import type { Plugin } from 'chart.js';
import { bounds, count, intervalName, mean, number } from '../../../study/format.js';
import type { DaysQuantile, OutageDays, OutageResult } from '../../../study/sections/outages.js';
import type { Results } from '../../../study/simulate/results.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { axisOf, drawing } from '../../drawing.js';
import { faded, INK, PALETTE } from '../../style.js';
import { datesOf } from '../../tables/outages.js';
import { categoryAxis, roomForText, valueAxis } from '../axes.js';
import { type Chart, chart } from '../chart.js';
import { band } from '../datasets.js';
import { lineNames, nameRoom } from '../line-names.js';
import { lineDatasets, type TimeLine } from '../time.js';
import { topWithNames, type UprightLine, uprightLines } from '../upright-lines.js';

const BODY_HEIGHT = 440;

/** Open units day by day around the longest outage: what piles up, and when it is worked off. */
export function outageRecovery(results: Results): Chart | null {
  const outage = results.outages.find(({ byDay }) => byDay !== null),
    byDay = outage?.byDay ?? null;
  if (outage === undefined || byDay === null) return null;
  const lines: TimeLine[] = [
    {
      name: 'units open',
      note: results.replications < 2 ? '1 replication' : 'mean; band: P10 to P90',
      values: byDay.mean,
      colour: PALETTE.blue,
      dash: [],
      width: 2.5,
    },
    {
      name: `${mean(outage.openUnits)} open`,
      note: 'when the outage began',
      values: byDay.mean.map(() => outage.openUnits.mean),
      colour: PALETTE.vermillion,
      dash: [8, 4],
      width: 2,
    },
  ];
  const marks = recoveryMarks(outage, byDay);
  return chart({
    finding: finding(outage, results.level),
    how:
      'Units open (released and not yet out) at the start of each day: mean, and band from P10 to ' +
      `P90 of ${count(results.replications, 'replication')} (their spread, not an interval). ` +
      'Hatched: the outage. Dashed: mean of the units open when it began. Recovered: no more are ' +
      'open than when it began, each replication by its own level. Days are of 24 h.',
    bodyHeight: BODY_HEIGHT,
    type: 'line',
    data: {
      labels: [...byDay.dates],
      datasets: [
        ...band(['P10', [...byDay.p10]], ['P90', [...byDay.p90]], faded(PALETTE.blue, 0.2)),
        ...lineDatasets(lines, results.level),
      ],
    },
    scales: {
      x: categoryAxis('start of the day'),
      y: valueAxis('units open', {
        suggestedMax: topWithNames(
          Math.max(...[...byDay.p90, ...byDay.mean].map((units) => units ?? 0), outage.openUnits.mean),
          marks.length,
          BODY_HEIGHT,
        ),
      }),
      room: roomForText(nameRoom(lines)),
    },
    plugins: [shade(outage, byDay), uprightLines(marks), lineNames(lines)],
  });
}

function finding(outage: OutageResult, level: number): string {
  const [half, most] = outage.recoveryDays,
    head = `Outage (${datesOf(outage)}):`;
  if (half === undefined || half.days === null)
    return `${head} time to recover not known; ${half?.why ?? 'not asked'}`;
  return (
    `${head} half of the builds are back to the ${mean(outage.openUnits)} units open before it ` +
    `within ${within(half, level, ' days')} of its end` +
    (most === undefined || most.days === null ? '' : `, eight in ten within ${within(most, level, '')}`)
  );
}

function within(quantile: DaysQuantile, level: number, unit: string): string {
  const { low, high, why } = quantile;
  const interval =
    low === null || high === null
      ? (why ?? 'no interval')
      : `${intervalName(level)} ${bounds(asSpan(quantile))}`;
  return `${daysOf(quantile)}${unit} (${interval})`;
}

const asSpan = ({ days, low, high }: DaysQuantile): Estimate => ({
  mean: days ?? 0,
  low,
  high,
  level: 0,
  n: 0,
});
/** Days with the digits that their interval deserves. */
const daysOf = (quantile: DaysQuantile): string => mean(asSpan(quantile));

/** Place on the axis, in days from its first. */
const placeOf = ({ days }: OutageDays, sinceOutage: number): number => sinceOutage - (days[0] ?? 0);

/** Behind everything: the time of the outage. */
function shade(outage: OutageResult, byDay: OutageDays): Plugin {
  return drawing(
    'outage',
    (context, chart) => {
      const x = axisOf(chart, 'x'),
        { left, right, top, bottom } = chart.chartArea,
        from = Math.max(left, x.getPixelForValue(placeOf(byDay, 0))),
        to = Math.min(right, x.getPixelForValue(placeOf(byDay, outage.days)));
      context.beginPath();
      context.rect(from, top, Math.max(2, to - from), bottom - top);
      context.fillStyle = faded(PALETTE.black, 0.07);
      context.fill();
      context.clip();
      context.strokeStyle = faded(PALETTE.black, 0.22);
      context.beginPath();
      for (let at = from - (bottom - top); at < to; at += 12) {
        context.moveTo(at, bottom);
        context.lineTo(at + bottom - top, top);
      }
      context.stroke();
    },
    'beforeDatasetsDraw',
  );
}

/** The end of the outage, and where it is made good. */
function recoveryMarks(outage: OutageResult, byDay: OutageDays): UprightLine[] {
  return [
    { name: 'outage over', at: placeOf(byDay, outage.days), colour: INK, dash: [] },
    ...outage.recoveryDays.flatMap((quantile) => {
      if (quantile.days === null) return [];
      const at = placeOf(byDay, outage.days + quantile.days),
        date = byDay.dates[Math.floor(at)];
      return date === undefined
        ? []
        : [
            {
              name: `recovered, P${number(quantile.p * 100)}: ${daysOf(quantile)} days later, ${date}`,
              at,
              colour: INK,
              dash: quantile.p > 0.5 ? [7, 4] : [],
            },
          ];
    }),
  ];
}
