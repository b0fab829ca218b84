import type { SKRSContext2D } from '@napi-rs/canvas';
import type { FitResults, StepResult } from '../../../study/fit/results.js';
import type { QuantilePlot } from '../../../study/fit/shown/quantiles.js';
import { count, exact, number } from '../../../study/format.js';
import { polyline } from '../../drawing.js';
import { faded, MUTED, PALETTE } from '../../style.js';
import { type Chart, chart, type Dataset } from '../chart.js';
import { disc } from '../marks.js';
import { FitPanels, PARSING, type Panel, type Spot } from './fit-panels.js';
import { toLookAt } from './fit-steps.js';
import { asOf } from './fit-words.js';

type Plotted = StepResult & { readonly quantiles: QuantilePlot };
const isPlotted = (step: StepResult): step is Plotted => step.quantiles !== null && step.n > 1;

/** Of each step its times against those of the distribution, with how far they may stray by chance. */
export function fitQuantiles(results: FitResults): Chart | null {
  const { shown: all, note } = toLookAt(results),
    shown = all.filter(isPlotted);
  if (shown.length === 0) return null;
  const panels = new FitPanels(shown.map(panelOf));
  return chart({
    finding: findingOf(results.steps.filter(isPlotted)),
    how:
      'Up: times clocked; across: where the distribution has them, min. On the dashed line both are equal. ' +
      `Band: all points stay inside by chance, 95 of 100 times.${note}`,
    bodyHeight: panels.bodyHeight,
    type: 'line',
    data: { labels: shown.flatMap(labelsOf), datasets: datasetsOf(shown, panels) },
    options: { interaction: { axis: 'xy' } },
    scales: panels.scales,
    plugins: [
      panels.drawn('min', (context, p, spot) => {
        const step = shown[p];
        if (step !== undefined) drawPlot(context, step, panelOf(step), spot);
      }),
    ],
  });
}

function drawPlot(context: SKRSContext2D, { quantiles }: Plotted, panel: Panel, { x, y }: Spot): void {
  const { observed, fitted, low, high, isChosen } = quantiles,
    colour = isChosen ? PALETTE.blue : MUTED;
  context.beginPath();
  const [left, right, bottom, top] = [x(panel.x.low), x(panel.x.high), y(panel.y.low), y(panel.y.high)];
  context.rect(left, top, right - left, bottom - top);
  context.clip();
  if (low !== null && high !== null) {
    context.beginPath();
    fitted.forEach((at, i) => {
      context[i === 0 ? 'moveTo' : 'lineTo'](x(at), y(high[i] ?? NaN));
    });
    for (let i = fitted.length - 1; i >= 0; i--) context.lineTo(x(fitted[i] ?? NaN), y(low[i] ?? NaN));
    context.fillStyle = faded(colour, 0.22);
    context.fill();
  }
  context.strokeStyle = MUTED;
  context.lineWidth = 1.2;
  context.setLineDash([6, 4]);
  polyline(context, [x(panel.x.low), y(panel.x.low)], [x(panel.x.high), y(panel.x.high)]);
  context.setLineDash([]);
  observed.forEach((time, i) => {
    const [across, up] = [x(fitted[i] ?? NaN), y(time)],
      isOut = low !== null && high !== null && (time < (low[i] ?? -Infinity) || time > (high[i] ?? Infinity));
    context.fillStyle = isOut ? PALETTE.vermillion : colour;
    context.strokeStyle = PALETTE.vermillion;
    context.lineWidth = 2;
    if (!isOut) disc(context, across, up, 2.4);
    else {
      polyline(context, [across - 4, up - 4], [across + 4, up + 4]);
      polyline(context, [across - 4, up + 4], [across + 4, up - 4]);
    }
  });
}

function panelOf(step: Plotted): Panel {
  const { observed, fitted, against, isChosen, outside } = step.quantiles,
    least = Math.min(...observed, ...fitted),
    most = Math.max(...observed, ...fitted),
    edge = 0.04 * (most - least || Math.max(most, 1)),
    scale = { low: least - edge, high: most + edge };
  return {
    title: step.step,
    note: isChosen ? `against ${against}${asOf(step)}` : `the nearest, ${against}, does not stand`,
    warning: outside === null || outside === 0 ? '' : `${exact(outside)} outside the band`,
    x: scale,
    y: scale,
  };
}

const labelsOf = ({ step, quantiles: { fitted } }: Plotted): string[] =>
  fitted.map((time) => `${step}, ${number(time)} min by the distribution`);

/** What is drawn by the panels themselves, as points that tell their values. */
function datasetsOf(shown: readonly Plotted[], panels: FitPanels): Dataset[] {
  const unseen = { parsing: PARSING, showLine: false, pointRadius: 0, borderColor: PALETTE.blue };
  const points = (values: (plot: QuantilePlot) => readonly number[] | null): Dataset['data'] =>
    shown.flatMap(({ quantiles }, p) => {
      const all = values(quantiles);
      return quantiles.fitted.map((fitted, i) => {
        const value = all?.[i];
        return value === undefined ? { x: NaN, y: NaN, to: NaN, at: NaN } : panels.point(p, fitted, value);
      });
    });
  return [
    { ...unseen, label: 'clocked, min', data: points(({ observed }) => observed) },
    { ...unseen, label: 'clocked, min, by chance 95 % interval low', data: points(({ low }) => low) },
    { ...unseen, label: 'clocked, min, by chance 95 % interval high', data: points(({ high }) => high) },
  ];
}

function findingOf(plotted: readonly Plotted[]): string {
  const chosen = plotted.filter(({ quantiles: { isChosen, outside } }) => isChosen && outside !== null),
    inside = chosen.filter(({ quantiles: { outside } }) => outside === 0).length;
  if (chosen.length === 0) return 'No step has a distribution that was fitted';
  const all = chosen.length,
    out = all - inside,
    byChance = Math.round(all * 0.05);
  if (out === 0)
    return all === 1
      ? 'The distribution that stands keeps inside the band of chance'
      : `${all === 2 ? 'Both' : `All ${exact(all)}`} distributions that stand keep inside the band of chance`;
  return (
    `${exact(out)} of ${count(all, 'distribution')} that ${all === 1 ? 'stands' : 'stand'} ` +
    `${out === 1 ? 'strays' : 'stray'} outside the band, as ${
      byChance === 0 ? 'fewer than one' : `about ${exact(byChance)}`
    } would by chance`
  );
}
