import type { Plugin } from 'chart.js';
import type { Estimate, Results } from '../../study/results.js';
import type { DaysQuantile, OutageDays, OutageResult } from '../../study/results-failures.js';
import { font, textWidth } from '../canvas.js';
import { bounds, count, intervalName, mean, number } from '../format.js';
import { datesOf } from '../page-tables-failures.js';
import { faded, INK, MUTED, PALETTE, SIZE } from '../style.js';
import { chart, valueAxis, type Chart } from './chart.js';
import { drawing } from './marks.js';

/** Open units day by day around the longest outage: what piles up, and when it is worked off. */
export function outageRecovery(results: Results): Chart | null {
  const outage = results.outages.find(({ byDay }) => byDay !== null), byDay = outage?.byDay ?? null;
  if (outage === undefined || byDay === null) return null;
  const unseen = { pointRadius: 0, borderWidth: 0, borderColor: 'transparent' };
  return chart({
    finding: finding(outage, results.level),
    how: `Units open (released and not yet out) at the start of each day: mean, and band from P10 to P90 of ${count(results.replications, 'replication')} (their spread, not an interval). `
      + 'Hatched: the outage. Dashed: mean of the units open when it began. Recovered: no more are open than when it began, each replication by its own level. Days are of 24 h.',
    bodyHeight: 440,
    type: 'line',
    data: {
      labels: [...byDay.dates],
      datasets: [
        { ...unseen, label: 'P10', data: [...byDay.p10] },
        { ...unseen, label: 'P90', data: [...byDay.p90], fill: '-1', backgroundColor: faded(PALETTE.blue, 0.2) },
        { label: 'mean', data: [...byDay.mean], borderColor: PALETTE.blue, borderWidth: 2.5, pointRadius: 0 },
      ],
    },
    scales: {
      x: {
        type: 'category', grid: { display: false }, title: { display: true, text: 'start of the day', color: MUTED, font: { size: SIZE.small } },
        ticks: { autoSkip: true, autoSkipPadding: 22, maxRotation: 0, color: MUTED, font: { size: SIZE.small } },
      },
      y: valueAxis('units open', { grace: '18%' }),
    },
    plugins: [shade(outage, byDay), levelLine(outage), recoveryMarks(outage, byDay)],
  });
}

function finding(outage: OutageResult, level: number): string {
  const [half, most] = outage.recoveryDays, head = `Outage (${datesOf(outage)}):`;
  if (half === undefined || half.days === null) return `${head} time to recover not known; ${half?.why ?? 'not asked'}`;
  return `${head} half of the builds are back to the ${mean(outage.openUnits)} units open before it within ${within(half, level, ' days')} of its end`
    + (most === undefined || most.days === null ? '' : `, eight in ten within ${within(most, level, '')}`);
}

function within(quantile: DaysQuantile, level: number, unit: string): string {
  const { low, high, why } = quantile;
  return `${daysOf(quantile)}${unit} (${low === null || high === null ? why ?? 'no interval' : `${intervalName(level)} ${bounds(asSpan(quantile))}`})`;
}

const asSpan = ({ days, low, high }: DaysQuantile): Estimate => ({ mean: days ?? 0, low, high, level: 0, n: 0 });
/** Days with the digits that their interval deserves. */
const daysOf = (quantile: DaysQuantile): string => mean(asSpan(quantile));

/** Place on the axis, in days from its first. */
const placeOf = ({ days }: OutageDays, sinceOutage: number): number => sinceOutage - (days[0] ?? 0);

/** Behind everything: the time of the outage. */
function shade(outage: OutageResult, byDay: OutageDays): Plugin {
  return {
    id: 'outage',
    beforeDatasetsDraw({ ctx, scales: { x }, chartArea: { left, right, top, bottom } }) {
      if (x === undefined) return;
      const from = Math.max(left, x.getPixelForValue(placeOf(byDay, 0))), to = Math.min(right, x.getPixelForValue(placeOf(byDay, outage.days)));
      ctx.save();
      ctx.beginPath();
      ctx.rect(from, top, Math.max(2, to - from), bottom - top);
      ctx.fillStyle = faded(PALETTE.black, 0.07);
      ctx.fill();
      ctx.clip();
      ctx.strokeStyle = faded(PALETTE.black, 0.22);
      ctx.beginPath();
      for (let at = from - (bottom - top); at < to; at += 12) { ctx.moveTo(at, bottom); ctx.lineTo(at + bottom - top, top); }
      ctx.stroke();
      ctx.restore();
    },
  };
}

function levelLine({ openUnits }: OutageResult): Plugin {
  return drawing('level', (context, { scales: { y }, chartArea: { left, right } }) => {
    if (y === undefined) return;
    const at = y.getPixelForValue(openUnits.mean);
    context.strokeStyle = PALETTE.vermillion;
    context.lineWidth = 2;
    context.setLineDash([8, 4]);
    context.beginPath();
    context.moveTo(left, at);
    context.lineTo(right, at);
    context.stroke();
    label(context, `open when it began: ${mean(openUnits)}`, left + 8, at + 13);
  });
}

/** Lines at the end of the outage and where it is made good. A later one is higher, so its name at the left passes over the earlier lines. */
function recoveryMarks(outage: OutageResult, byDay: OutageDays): Plugin {
  return drawing('recovery', (context, { scales: { x }, chartArea: { left, right, top, bottom } }) => {
    if (x === undefined) return;
    const marks = [
      { text: 'outage over', at: outage.days, dash: [] as number[] },
      ...outage.recoveryDays.flatMap((quantile) => {
        if (quantile.days === null) return [];
        const at = outage.days + quantile.days, date = byDay.dates[Math.floor(placeOf(byDay, at))];
        return date === undefined ? [] : [{ text: `recovered, P${number(quantile.p * 100)}: ${daysOf(quantile)} days later, ${date}`, at, dash: quantile.p > 0.5 ? [7, 4] : [] }];
      }),
    ];
    marks.forEach(({ text, at, dash }, index) => {
      const pixel = Math.min(right, x.getPixelForValue(placeOf(byDay, at))), row = top + 10 + 20 * (marks.length - 1 - index), width = textWidth(text, SIZE.small, '600');
      context.strokeStyle = INK;
      context.lineWidth = 1.5;
      context.setLineDash(dash);
      context.beginPath();
      context.moveTo(pixel, row - 10);
      context.lineTo(pixel, bottom);
      context.stroke();
      label(context, text, pixel - 7 - width < left ? pixel + 7 : pixel - 7 - width, row);
    });
  });
}

function label(context: Parameters<Parameters<typeof drawing>[1]>[0], text: string, x: number, y: number): void {
  context.font = font(SIZE.small, '600');
  context.textBaseline = 'middle';
  context.fillStyle = '#ffffffd9';
  context.fillRect(x - 3, y - 8, textWidth(text, SIZE.small, '600') + 6, 16);
  context.fillStyle = INK;
  context.fillText(text, x, y);
}
