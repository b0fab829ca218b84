import type { FitResults, StepResult } from '../../../study/fit/results.js';
import { capital, count, exact, number } from '../../../study/format.js';
import { polyline } from '../../drawing.js';
import { DARK_EDGE, type Fill, INK, PALETTE } from '../../style.js';
import { type Chart, chart, type Dataset } from '../chart.js';
import { box } from '../marks.js';
import { FitPanels, PARSING, type Panel } from './fit-panels.js';
import { toLookAt } from './fit-steps.js';
import { asOf, pWords, warningWords } from './fit-words.js';

const BAR: Fill = { colour: PALETTE.sky, hatch: 'plain', hatchColour: PALETTE.sky, edge: DARK_EDGE };

/** Of each step its times by how long they are, with the curve of what the scenario gets. */
export function fitHistograms(results: FitResults): Chart {
  const { shown, note } = toLookAt(results),
    panels = new FitPanels(shown.map(panelOf));
  return chart({
    finding: findingOf(results),
    how:
      'Bars: times by how long they are. Line: the distribution that the scenario gets. Without a line the ' +
      `times themselves stand.${note}`,
    bodyHeight: panels.bodyHeight,
    type: 'line',
    data: { labels: shown.flatMap(labelsOf), datasets: datasetsOf(shown, panels) },
    options: { interaction: { axis: 'xy' } },
    scales: panels.scales,
    plugins: [
      panels.drawn('min', (context, p, { x, y }) => {
        const { histogram, quantiles, n } = shown[p] ?? {};
        if (histogram === undefined) return;
        const { from, width, counts, curve } = histogram;
        counts.forEach((times, i) => {
          const left = x(from + i * width);
          if (times > 0) box(context, left, y(times), x(from + (i + 1) * width) - left, y(0) - y(times), BAR);
        });
        // Of a handful each time is marked.
        if (n !== undefined && n < FEW) {
          context.strokeStyle = INK;
          context.lineWidth = 1.4;
          for (const time of quantiles?.observed ?? [])
            polyline(context, [x(time), y(0)], [x(time), y(0) - 9]);
        }
        if (curve === null) return;
        context.strokeStyle = PALETTE.vermillion;
        context.lineWidth = 2.2;
        context.lineJoin = 'round';
        const top = topOf(histogram);
        polyline(context, ...curve.map(([minutes, times]) => [x(minutes), y(Math.min(times, top))] as const));
      }),
    ],
  });
}
const FEW = 20;

/** A density may be endless at its end: it is cut well above the bars. */
function topOf({ counts, curve }: StepResult['histogram']): number {
  const bars = Math.max(...counts),
    peak = Math.max(0, ...(curve ?? []).map(([, times]) => times));
  return 1.08 * Math.max(bars, Math.min(1.6 * bars, peak));
}

function panelOf(step: StepResult): Panel {
  const { histogram } = step,
    { from, width, counts } = histogram;
  return {
    title: step.step,
    note: `${count(step.fitted, 'time')}${asOf(step)}, ${step.distribution}${fitText(step)}`,
    warning: warningWords(step).join(', '),
    x: { low: from - width / 2, high: from + (counts.length + 0.5) * width },
    y: { low: 0, high: topOf(histogram), isCount: true },
  };
}

const fitText = ({ andersonDarling: test }: StepResult): string =>
  test === null ? '' : `, p ${pWords(test.p)}`;

const labelsOf = ({ step, histogram: { from, width, counts } }: StepResult): string[] =>
  counts.map((_, i) => `${step}, ${number(from + i * width)} to ${number(from + (i + 1) * width)} min`);

/** What is drawn by the panels themselves, as points that tell their values. */
function datasetsOf(shown: readonly StepResult[], panels: FitPanels): Dataset[] {
  const unseen = { parsing: PARSING, showLine: false, pointRadius: 0, borderColor: PALETTE.blue };
  const points = (values: (step: StepResult) => readonly (number | null)[]): Dataset['data'] =>
    shown.flatMap((step, p) => {
      const { from, width } = step.histogram;
      return values(step).map((value, i) =>
        value === null
          ? { x: NaN, y: NaN, to: NaN, at: NaN }
          : panels.point(p, from + (i + 0.5) * width, Number(value.toPrecision(3))),
      );
    });
  return [
    { ...unseen, label: 'times', data: points(({ histogram: { counts } }) => counts) },
    {
      ...unseen,
      label: 'by the line',
      data: points(({ histogram: { expected, counts } }) => expected ?? counts.map(() => null)),
    },
  ];
}

function findingOf({ steps }: FitResults): string {
  const fitted = steps.filter(({ andersonDarling }) => andersonDarling !== null).length,
    points = steps.filter(({ distribution }) => distribution === 'three points').length,
    rest = steps.length - fitted - points;
  const all = exact(steps.length),
    told = [
      ...(fitted > 0 ? [`a distribution fits ${exact(fitted)} of ${count(steps.length, 'step')}`] : []),
      ...(points > 0 ? [`three points stand for ${exact(points)}`] : []),
      ...(rest > 0 ? [`the times themselves stand for ${exact(rest)}`] : []),
    ];
  return capital(fitted > 0 ? told.join('; ') : `${told.join('; ')} of ${all}`);
}
