import type { ChartConfiguration, ChartOptions } from 'chart.js';
import type { Estimate, Results } from '../../../study/simulate/results.js';
import type { CrewResult } from '../../../study/sections/crews.js';
import { font } from '../../canvas.js';
import { count, number, percentWithInterval, short, withInterval } from '../../format.js';
import { paint } from '../../hatch.js';
import { DARK_EDGE, faded, GRID, INK, MUTED, PALETTE, SIZE, type Fill } from '../../style.js';
import { fit } from '../../text.js';
import { chart, intervalNote, roomAtRight, type Chart } from '../chart.js';
import { drawing } from '../marks.js';

const MOST_CREWS = 8,
  PANEL = 92,
  TEXT_ROOM = 240;
/** Overtime at the foot of a panel, CSS pixels. */
const MARK = { least: 4, most: 13 };
const OVERTIME: Fill = { colour: PALETTE.orange, hatch: 'rising', hatchColour: DARK_EDGE, edge: DARK_EDGE };
type Dataset = ChartConfiguration<'line'>['data']['datasets'][number];
type Scale = NonNullable<NonNullable<ChartOptions['scales']>[string]>;

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
      datasets: shown.flatMap((crew, panel) => panelData(crew, axisOf(panel))),
    },
    scales: {
      x: {
        type: 'category',
        grid: { display: false },
        title: {
          display: true,
          text: unit === 'week' ? 'ISO week' : 'part of the run',
          color: MUTED,
          font: { size: SIZE.small },
        },
        ticks: {
          autoSkip: true,
          autoSkipPadding: 22,
          maxRotation: 0,
          color: MUTED,
          font: { size: SIZE.small },
        },
      },
      // Axes of one stack stand on each other, the first at the bottom.
      ...Object.fromEntries(shown.map((crew, panel) => [axisOf(panel), panelAxis(crew)] as const).reverse()),
      room: roomAtRight(TEXT_ROOM),
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

const axisOf = (panel: number): string => `y${panel}`;

function panelAxis(crew: CrewResult): Scale {
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
    afterBuildTicks: (scale: { ticks: { value: number }[] }) => {
      scale.ticks = [{ value: 0 }, { value: crew.headcount }];
    },
    ticks: { color: MUTED, padding: 6, font: { size: SIZE.small } },
  };
}

function panelData(crew: CrewResult, yAxisID: string): Dataset[] {
  const { engaged, present } = crew.series,
    known = (each: Estimate, value: number | null): number | null => (each.n > 0 ? value : null);
  const unseen = { yAxisID, pointRadius: 0, borderWidth: 0, borderColor: 'transparent' };
  return [
    {
      ...unseen,
      label: `${crew.name} engaged, low`,
      data: engaged.map((each) => known(each, each.low ?? each.mean)),
    },
    {
      ...unseen,
      label: `${crew.name} engaged, high`,
      data: engaged.map((each) => known(each, each.high ?? each.mean)),
      fill: '-1',
      backgroundColor: faded(PALETTE.blue, 0.45),
    },
    {
      yAxisID,
      label: `${crew.name} engaged`,
      data: engaged.map((each) => known(each, each.mean)),
      borderColor: PALETTE.blue,
      borderWidth: 2,
      pointRadius: 0,
      fill: 'origin',
      backgroundColor: faded(PALETTE.blue, 0.16),
    },
    {
      yAxisID,
      label: `${crew.name} on shift`,
      data: present.map((each) => known(each, each.mean)),
      borderColor: PALETTE.black,
      borderWidth: 1.6,
      pointRadius: 0,
      stepped: 'middle',
    },
  ];
}

/** Name, site and figures of each crew, at the right of its panel. */
function panelText(crews: readonly CrewResult[]) {
  return drawing('crew names', (context, live) => {
    const x = live.chartArea.right + 14;
    context.textBaseline = 'middle';
    crews.forEach((crew, panel) => {
      const axis = live.scales[axisOf(panel)];
      if (axis === undefined) return;
      const lines: readonly (readonly [string, string, string])[] = [
        [crew.name, font(SIZE.text, '600'), INK],
        [
          `${crew.site}, ${crew.headcounts === null ? crew.headcount : crew.headcounts.join(' and ')} on a shift`,
          font(SIZE.small),
          MUTED,
        ],
        [`engaged, %: ${short(crew.busy, 100)}`, font(SIZE.small), MUTED],
        ...(crew.overtimeHours.mean > 0
          ? [[`overtime, h: ${short(crew.overtimeHours)}`, font(SIZE.small), MUTED] as const]
          : []),
      ];
      lines.forEach(([text, face, colour], line) => {
        context.font = face;
        context.fillStyle = colour;
        context.fillText(
          fit(text, TEXT_ROOM - 16, line === 0 ? SIZE.text : SIZE.small, line === 0 ? '600' : 'normal'),
          x,
          axis.top + 14 + 17 * line,
        );
      });
    });
  });
}

/** Blocks at the foot of a panel in weeks with overtime, their height by the hours. */
function overtimeMarks(crews: readonly CrewResult[]) {
  return drawing('overtime', (context, live) => {
    const x = live.scales['x'];
    if (x === undefined) return;
    const step = Math.abs(x.getPixelForValue(1) - x.getPixelForValue(0)) || 8,
      width = Math.max(2, Math.min(14, 0.7 * step));
    crews.forEach((crew, panel) => {
      const axis = live.scales[axisOf(panel)],
        hours = crew.series.overtimeHours.map(({ mean }) => mean),
        most = Math.max(...hours);
      if (axis === undefined || !(most > 0)) return;
      context.fillStyle = paint(OVERTIME);
      context.strokeStyle = OVERTIME.edge;
      context.lineWidth = 0.8;
      hours.forEach((each, week) => {
        if (each <= 0) return;
        const height = MARK.least + (MARK.most - MARK.least) * (each / most),
          at = x.getPixelForValue(week) - width / 2;
        context.fillRect(at, axis.bottom - height, width, height);
        context.strokeRect(at, axis.bottom - height, width, height);
      });
    });
  });
}
