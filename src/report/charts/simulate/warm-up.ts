import { bounds, count, number, signed } from '../../../study/format.js';
import type { Results } from '../../../study/simulate/results.js';
import { INK, MUTED, PALETTE, SIZE } from '../../style.js';
import { roomForText, valueAxis } from '../axes.js';
import { type Chart, chart } from '../chart.js';
import { line } from '../datasets.js';
import { topWithNames, uprightLines } from '../upright-lines.js';

const BODY_HEIGHT = 420;

/**
 * Units inside from the empty start of a steady-state run, with the warm-up given and the cut of MSER-5; null
 * for a programme.
 */
export function warmUp({ warmUp: seen }: Results): Chart | null {
  if (seen === null) return null;
  const { wip, partHours, givenHours, isFound, cutHours, advisedHours, bias, verdict, replications } = seen,
    hours = partHours * wip.length;
  const cut =
      cutHours === null || advisedHours === null
        ? 'No cut of MSER-5 could be trusted.'
        : `MSER-5 cuts at ${number(cutHours)} h; three times that is long enough.`,
    left =
      bias === null
        ? ''
        : ` What the start leaves in the mean: ${signed(bias.left)} (${bounds(bias.left)}); it matters ` +
          `beyond ${number(bias.matters)}.`;
  const lines = [
    ...(givenHours > 0
      ? [{ at: givenHours, name: isFound ? 'warm-up found' : 'warm-up given', colour: INK, dash: [] }]
      : []),
    ...(cutHours !== null && cutHours > 0 && cutHours < hours
      ? [{ at: cutHours, name: 'MSER-5', colour: PALETTE.vermillion, dash: [6, 4] }]
      : []),
  ];
  return chart({
    finding: {
      'long enough':
        `The warm-up of ${number(givenHours)} h` +
        `${isFound ? ', found by MSER-5 in runs without one,' : ''} is long enough`,
      'too short': `The line still fills after the warm-up of ${number(givenHours)} h`,
      'not known': `It cannot be told whether the warm-up of ${number(givenHours)} h is long enough`,
    }[verdict],
    how:
      `Mean units inside by part of ${number(partHours)} h, from the empty start, of ` +
      `${count(replications, 'build')}. ${cut}${left}`,
    bodyHeight: BODY_HEIGHT,
    type: 'line',
    data: {
      datasets: [
        line(
          'units inside',
          wip.map((units, part) => ({ x: (part + 0.5) * partHours, y: units })),
          PALETTE.blue,
          2,
        ),
      ],
    },
    scales: {
      x: valueAxis('hours since the start', {
        min: 0,
        max: hours,
        grid: { display: false },
        ticks: { color: MUTED, maxTicksLimit: 12, includeBounds: false, font: { size: SIZE.small } },
      }),
      y: valueAxis('units inside', {
        suggestedMax: topWithNames(Math.max(...wip), lines.length, BODY_HEIGHT),
      }),
      room: roomForText(24),
    },
    plugins: [uprightLines(lines)],
  });
}
