import type { Plugin } from 'chart.js';
import type { FitResults, StepResult } from '../../../study/fit/results.js';
import { exact, number } from '../../../study/format.js';
import { mapped } from '../../../study/statistics/estimate.js';
import { axisOf, drawing } from '../../drawing.js';
import { DARK_EDGE, type Fill, INK, PALETTE } from '../../style.js';
import { valueAxis } from '../axes.js';
import { type Chart, type Dataset, intervalWords } from '../chart.js';
import { filledBars } from '../datasets.js';
import { toldShort } from '../figures.js';
import { foremost } from '../foremost.js';
import { diamondPath } from '../marks.js';
import { perRow, rowChart, rowsOf, span } from '../row-chart.js';

const MIDDLE: Fill = { colour: PALETTE.sky, hatch: 'plain', hatchColour: PALETTE.sky, edge: DARK_EDGE };

/** The steps in the order in which somebody should look at them; of many the first, with a note. */
export function toLookAt({ steps }: FitResults): ReturnType<typeof foremost<StepResult>> {
  return foremost(
    steps.toSorted((a, b) => a.rank - b.rank),
    ({ rank }) => -rank,
    'steps',
    'to look at first',
  );
}

/** Of each step how the times spread, how well their mean is known, and what the scenario has. */
export function fitSteps(results: FitResults): Chart {
  const { shown, note } = toLookAt(results),
    rows = rowsOf(shown, ({ step }) => step),
    share = (minutes: number, { mean }: StepResult): number => (100 * minutes) / mean.mean,
    hasNow = shown.some(({ againstScenario }) => againstScenario !== null);
  return rowChart({
    finding: findingOf(results),
    how:
      'By the mean that was clocked, which is 100 %. Bar: eight of ten times. ' +
      `Line across: ${intervalWords(results.level)} of the mean.` +
      `${hasNow ? ' Diamond: the mean in the scenario.' : ''}${note}`,
    rows,
    columns: [
      [['mean, min'], ({ mean }) => (mean.low === null ? number(mean.mean) : toldShort(mean))],
      ...(hasNow
        ? [
            [
              ['scenario,', 'min'],
              ({ againstScenario: now }: StepResult) => (now === null ? '' : number(now.now)),
            ] as const,
          ]
        : []),
      [['times'], ({ n }) => exact(n)],
    ],
    values: valueAxis('per cent of the mean clocked', { beginAtZero: false, grace: '5%' }),
    datasets: [
      {
        ...filledBars(
          'eight of ten times',
          perRow(rows, (step) => [share(step.p10, step), share(step.p90, step)]),
          MIDDLE,
          0.5,
        ),
        grouped: false,
      },
      unpainted(
        'mean',
        perRow(rows, () => 100),
        INK,
      ),
      ...(hasNow
        ? [
            unpainted(
              'in the scenario',
              perRow(rows, (step) =>
                step.againstScenario === null ? null : share(step.againstScenario.now, step),
              ),
              PALETTE.orange,
            ),
          ]
        : []),
    ],
    intervals: {
      of: 'mean',
      sure: intervalWords(results.level),
      ends: (step) => span(mapped(step.mean, (minutes) => share(minutes, step))),
    },
    plugins: hasNow ? [diamonds()] : [],
  });
}

/** What is drawn by plugins; its colour is that of the key. */
const unpainted = (label: string, data: (number | null)[], colour: string): Dataset => ({
  ...{ label, data, backgroundColor: 'transparent', borderColor: colour, borderWidth: 0, grouped: false },
});

/** What the scenario has, over the bars: the third dataset. */
const diamonds = (): Plugin =>
  drawing('diamonds', (context, chart) => {
    const x = axisOf(chart, 'x');
    chart.getDatasetMeta(2).data.forEach(({ y }, row) => {
      const value = chart.data.datasets[2]?.data[row];
      if (typeof value !== 'number') return;
      diamondPath(context, x.getPixelForValue(value), y, 6);
      context.fillStyle = PALETTE.orange;
      context.fill();
      context.strokeStyle = INK;
      context.lineWidth = 1.2;
      context.stroke();
    });
  });

function findingOf({ steps }: FitResults): string {
  const compared = steps.filter(({ againstScenario }) => againstScenario !== null),
    differing = compared.filter(({ againstScenario: now }) => now?.differs != null);
  if (compared.length === 0)
    return steps.length === 1 ? 'The times of one step' : `The times of ${exact(steps.length)} steps`;
  return differing.length === 0
    ? 'No step surely takes longer or shorter than the scenario has it'
    : `${exact(differing.length)} of ${exact(compared.length)} steps surely ` +
        `${differing.length === 1 ? 'takes' : 'take'} longer or shorter than the scenario has it`;
}
