import type { Plugin } from 'chart.js';
import { count, number } from '../../../study/format.js';
import type { CrewResult } from '../../../study/sections/crews.js';
import type { Results } from '../../../study/simulate/results.js';
import type { Estimate } from '../../../study/statistics/estimate.js';
import { font } from '../../canvas.js';
import { axisOf, drawing } from '../../drawing.js';
import { DARK_EDGE, type Fill, faded, GRID, isNarrow, LAYOUT, MUTED, PALETTE, SIZE } from '../../style.js';
import { fit } from '../../text.js';
import { type Axis, bucketTitle, categoryAxis, roomForText, TICKS, ticksAt } from '../axes.js';
import { type Chart, chart, type Dataset, intervalNote, intervalWords } from '../chart.js';
import { band, line } from '../datasets.js';
import { figures, told } from '../figures.js';
import { box, onWhite } from '../marks.js';
import { kindsOnly, markWeeks, weekMarks } from '../over-time/week-marks.js';

/** Crews of a PNG, and of any picture; widths and heights in CSS pixels. */
const MOST_CREWS = 8,
  ABOVE_ALL = 24,
  PANEL = 92,
  NARROW_PANEL = 120,
  TEXT_ROOM = 240;
/** On a phone the axis goes so far beyond all people, for the name to stand there. */
const NARROW_HEAD = 1.75;
const panelHeight = (): number => (isNarrow() ? NARROW_PANEL : PANEL);
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
  const most = LAYOUT.hasTitles
      ? MOST_CREWS
      : isNarrow()
        ? Math.ceil(0.4 * LAYOUT.mostRows)
        : Math.ceil(0.8 * LAYOUT.mostRows),
    shown = all.slice(0, Math.min(most, ABOVE_ALL)),
    left = all.length - shown.length,
    { unit } = results.series;
  if (left > 0) LAYOUT.isCut = true;
  const hasOvertime = shown.some(({ overtimeHours }) => overtimeHours.mean > 0);
  return chart({
    finding: `Most loaded crew: ${first.name}${busiest(first, results)}`,
    how:
      `People by ${unit}. Blue: engaged, with the ${intervalNote(results)}. Black: on shift.` +
      (hasOvertime ? ` Orange blocks at the foot: ${unit}s with overtime.` : '') +
      (left > 0 ? ` ${count(left, 'crew')} less loaded: in results.json.` : ''),
    bodyHeight: 62 + panelHeight() * shown.length,
    type: 'line',
    data: {
      labels: [...results.series.labels],
      datasets: shown.flatMap((crew, panel) =>
        panelData(crew, panelName(panel), intervalWords(results.level)),
      ),
    },
    scales: {
      x: categoryAxis(bucketTitle(unit)),
      // Axes of one stack stand on each other, the first at the bottom.
      ...Object.fromEntries(
        shown.map((crew, panel) => [panelName(panel), panelAxis(crew)] as const).reverse(),
      ),
      room: roomForText(isNarrow() ? 8 : TEXT_ROOM),
    },
    plugins: [markWeeks(kindsOnly(weekMarks(results))), panelText(shown), overtimeMarks(shown)],
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
    : `, in its busiest ${unit}, ${labels[most]}, ${told(each)} of ${number(there.mean)} people engaged`;
}

const panelName = (panel: number): string => `y${panel}`;

function panelAxis(crew: CrewResult): Axis {
  // Not by the intervals: a week that few builds reach has a wide one, and nobody is engaged who is absent.
  const most = Math.max(crew.headcount, ...crew.series.engaged.map(({ mean }) => mean));
  return {
    type: 'linear',
    axis: 'y',
    position: 'left',
    stack: 'crews',
    stackWeight: 1,
    min: 0,
    max: most * (isNarrow() ? NARROW_HEAD : 1.18),
    grid: { color: GRID, drawTicks: false },
    border: { color: MUTED },
    // Nobody and everybody: more labels would meet those of the next panel.
    afterBuildTicks: ticksAt([0, crew.headcount]),
    ticks: TICKS,
  };
}

function panelData(
  { name, headcount, series: { engaged, present } }: CrewResult,
  yAxisID: string,
  sure: string,
): Dataset[] {
  const known = (all: readonly Estimate[], value: (each: Estimate) => number): (number | null)[] =>
    all.map((each) => (each.n > 0 ? value(each) : null));
  return [
    ...band(
      [`${name} engaged, ${sure} low`, known(engaged, ({ low, mean }) => low ?? mean)],
      [
        `${name} engaged, ${sure} high`,
        known(engaged, ({ high, mean }) => Math.max(mean, Math.min(headcount, high ?? mean))),
      ],
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

/** Name, site and figures of each crew, at the right of its panel; on a phone in the head of it. */
function panelText(crews: readonly CrewResult[]): Plugin {
  const engaged = figures(
      crews.map(({ busy }) => busy),
      100,
    ),
    overtime = figures(crews.map(({ overtimeHours }) => overtimeHours));
  return drawing('crew names', (context, chart) => {
    const narrow = isNarrow(),
      x = narrow ? chart.chartArea.left + 4 : chart.chartArea.right + 14,
      room = narrow ? chart.chartArea.width - 8 : TEXT_ROOM - 16;
    context.textBaseline = 'middle';
    for (const [panel, { name, site, headcount, headcounts, busy, overtimeHours }] of crews.entries()) {
      const { top } = axisOf(chart, panelName(panel)),
        people = `${headcounts === null ? headcount : headcounts.join(' and ')} on a shift`,
        extra = overtimeHours.mean > 0 ? `overtime, h: ${overtime.short(overtimeHours)}` : '';
      const lines = narrow
        ? [`${people}, engaged ${engaged.mean(busy)} %`]
        : [`${site}, ${people}`, `engaged, %: ${engaged.short(busy)}`, ...(extra === '' ? [] : [extra])];
      context.font = font(SIZE.text, '600');
      onWhite(context, fit(name, room, SIZE.text, '600'), x, top + 14);
      context.font = font(SIZE.small);
      for (const [line, text] of lines.entries())
        onWhite(context, fit(text, room, SIZE.small), x, top + 31 + 17 * line, MUTED);
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
