import type { Plugin } from 'chart.js';
import { count, number, percentWithInterval, short, withInterval } from '../../../study/format.js';
import type { CrewResult } from '../../../study/sections/crews.js';
import type { Results } from '../../../study/simulate/results.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { font } from '../../canvas.js';
import { axisOf, drawing } from '../../drawing.js';
import { DARK_EDGE, type Fill, faded, GRID, INK, MUTED, PALETTE, SIZE } from '../../style.js';
import { fit } from '../../text.js';
import { type Axis, bucketTitle, categoryAxis, roomForText, TICKS, ticksAt } from '../axes.js';
import { type Chart, chart, type Dataset, intervalNote } from '../chart.js';
import { band, line } from '../datasets.js';
import { box, write } from '../marks.js';

const MOST_CREWS = 8,
  PANEL = 92,
  TEXT_ROOM = 240;
/** Overtime at the foot of a panel, CSS pixels. */
const MARK = { least: 4, most: 13 };
const OVERTIME: Fill = { colour: PALETTE.orange, hatch: 'rising', hatchColour: DARK_EDGE, edge: DARK_EDGE };

/** People engaged by week against those on shift, a panel a crew, the most loaded first. */
export function crewLoad(results: Results): Chart | null {
  const all = [...results.crews]
    .filter(({ series }) => series.present.some(({ n }) => n > 0))
    .sort((a, b) => b.busy.mean - a.busy.mean);
  const first = all[0];
  if (first === undefined) return null;
  const shown = all.slice(0, MOST_CREWS),
    left = all.length - shown.length,
    { unit } = results.series;
  const hasOvertime = shown.some(({ overtimeHours }) => overtimeHours.mean > 0);
  return chart({
    finding:
      `Most loaded crew: ${first.name}, engaged ${percentWithInterval(first.busy)} of its people's ` +
      `time on shift; ${busiest(first, results)}`,
    how:
      `People by ${unit}, on average over the hours of the crew; each scale ends with its largest ` +
      `shift. Blue: engaged, with ${intervalNote(results)}. Black steps: on shift (the mean of the ` +
      'shifts; people who are missing are taken off).' +
      (hasOvertime ? ` Orange blocks at the foot: ${unit}s with overtime, the higher the more.` : '') +
      (left > 0 ? ` ${count(left, 'crew')} less loaded: in results.json.` : ''),
    bodyHeight: 62 + PANEL * shown.length,
    type: 'line',
    data: {
      labels: [...results.series.labels],
      datasets: shown.flatMap((crew, panel) => panelData(crew, panelName(panel))),
    },
    scales: {
      x: categoryAxis(bucketTitle(unit)),
      // Axes of one stack stand on each other, the first at the bottom.
      ...Object.fromEntries(
        shown.map((crew, panel) => [panelName(panel), panelAxis(crew)] as const).reverse(),
      ),
      room: roomForText(TEXT_ROOM),
    },
    plugins: [panelText(shown), overtimeMarks(shown)],
  });
}

/** The bucket with most people engaged: the whole run has its ramps in it. */
function busiest(
  { series: { engaged, present } }: CrewResult,
  { series: { labels, unit } }: Results,
): string {
  const most = engaged.reduce(
      (best, each, b) => (each.n > 0 && each.mean > (engaged[best]?.mean ?? -1) ? b : best),
      0,
    ),
    each = engaged[most],
    there = present[most];
  return each === undefined || there === undefined
    ? ''
    : `in its busiest ${unit}, ${labels[most]}, ${withInterval(each)} of ${number(there.mean)} people there`;
}

const panelName = (panel: number): string => `y${panel}`;

function panelAxis(crew: CrewResult): Axis {
  const most = Math.max(crew.headcount, ...crew.series.engaged.map((each) => each.high ?? each.mean));
  return {
    type: 'linear',
    axis: 'y',
    position: 'left',
    stack: 'crews',
    stackWeight: 1,
    min: 0,
    max: most * 1.18,
    grid: { color: GRID, drawTicks: false },
    border: { color: MUTED },
    // Nobody and everybody: more labels would meet those of the next panel.
    afterBuildTicks: ticksAt([0, crew.headcount]),
    ticks: TICKS,
  };
}

function panelData({ name, series: { engaged, present } }: CrewResult, yAxisID: string): Dataset[] {
  const known = (all: readonly Estimate[], value: (each: Estimate) => number): (number | null)[] =>
    all.map((each) => (each.n > 0 ? value(each) : null));
  return [
    ...band(
      [`${name} engaged, low`, known(engaged, ({ low, mean }) => low ?? mean)],
      [`${name} engaged, high`, known(engaged, ({ high, mean }) => high ?? mean)],
      faded(PALETTE.blue, 0.45),
      { yAxisID },
    ),
    line(
      `${name} engaged`,
      known(engaged, ({ mean }) => mean),
      PALETTE.blue,
      2,
      { yAxisID, fill: 'origin', backgroundColor: faded(PALETTE.blue, 0.16) },
    ),
    line(
      `${name} on shift`,
      known(present, ({ mean }) => mean),
      PALETTE.black,
      1.6,
      { yAxisID, stepped: 'middle' },
    ),
  ];
}

/** Name, site and figures of each crew, at the right of its panel. */
function panelText(crews: readonly CrewResult[]): Plugin {
  return drawing('crew names', (context, chart) => {
    const x = chart.chartArea.right + 14,
      room = TEXT_ROOM - 16;
    context.textBaseline = 'middle';
    for (const [panel, { name, site, headcount, headcounts, busy, overtimeHours }] of crews.entries()) {
      const { top } = axisOf(chart, panelName(panel));
      const figures = [
        `${site}, ${headcounts === null ? headcount : headcounts.join(' and ')} on a shift`,
        `engaged, %: ${short(busy, 100)}`,
        ...(overtimeHours.mean > 0 ? [`overtime, h: ${short(overtimeHours)}`] : []),
      ];
      write(context, fit(name, room, SIZE.text, '600'), x, top + 14, INK, font(SIZE.text, '600'));
      for (const [line, text] of figures.entries())
        write(context, fit(text, room, SIZE.small), x, top + 31 + 17 * line, MUTED, font(SIZE.small));
    }
  });
}

/** Blocks at the foot of a panel in weeks with overtime, their height by the hours. */
function overtimeMarks(crews: readonly CrewResult[]): Plugin {
  return drawing('overtime', (context, chart) => {
    const x = axisOf(chart, 'x');
    const step = Math.abs(x.getPixelForValue(1) - x.getPixelForValue(0)) || 8,
      width = Math.max(2, Math.min(14, 0.7 * step));
    crews.forEach((crew, panel) => {
      const { bottom } = axisOf(chart, panelName(panel)),
        hours = crew.series.overtimeHours.map(({ mean }) => mean),
        most = Math.max(...hours);
      hours.forEach((each, week) => {
        if (each <= 0) return;
        const height = MARK.least + (MARK.most - MARK.least) * (each / most);
        box(context, x.getPixelForValue(week) - width / 2, bottom - height, width, height, OVERTIME);
      });
    });
  });
}
