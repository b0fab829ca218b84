import { exact, number } from '../../../study/format.js';
import type { Compared, ValidateResults } from '../../../study/validate/results.js';
import { font } from '../../canvas.js';
import { axisOf, drawing } from '../../drawing.js';
import { isJudged, positionOf } from '../../first/records/validate-told.js';
import { faded, INK, PALETTE, SIZE } from '../../style.js';
import { fit } from '../../text.js';
import { valueAxis } from '../axes.js';
import { type Chart, chart } from '../chart.js';
import { band, line } from '../datasets.js';
import { foremost } from '../foremost.js';
import { onWhite } from '../marks.js';
import { dayAxis, momentOf } from '../over-time/days.js';

type Place = ValidateResults['wipByDay'][number];

/** Height of a plot with its name, and of all of them, CSS pixels. */
const HEIGHT = 150,
  ALL = 880,
  NAME = 20;

/** Units at each site and on each lane by day, the log in the band of the model, one plot under the other. */
export function wipInBands(results: ValidateResults): Chart | null {
  const { wipByDay, byDay, replications } = results,
    start = momentOf(byDay[0]?.date ?? ''),
    of = `${replications} of ${replications} builds`,
    measures = results.measures.filter(({ topic }) => topic === 'units inside');
  const { shown, note } = foremost(
    wipByDay,
    ({ place }) => away(measures.find((each) => each.of === place)),
    'sites and lanes',
    'nearest to an end of their bands',
  );
  if (shown.length === 0 || byDay.length < 2) return null;
  const points = (values: readonly number[]) => values.map((y, i) => ({ x: start + i + 0.5, y })),
    height = Math.min(HEIGHT, ALL / shown.length);
  return chart({
    finding: finding(measures),
    how: `Mean units by day. Band: the least to the most of ${replications} builds; dashed: their middle.${note}`,
    bodyHeight: 40 + height * shown.length,
    type: 'line',
    data: {
      datasets: shown.flatMap(({ place, low, middle, high, real }, i) => {
        const axis = { yAxisID: `y${i}` },
          log = nameOf(shown[i]);
        return [
          ...band(
            [`${log}, ${of} low`, points(low)],
            [`${log}, ${of} high`, points(high)],
            faded(PALETTE.blue, 0.22),
            axis,
          ),
          line(`${place}, model`, points(middle), PALETTE.blue, 1.4, { ...axis, borderDash: [6, 4] }),
          line(log, points(real), INK, 2, axis),
        ];
      }),
    },
    scales: {
      x: dayAxis(start, start + byDay.length, 1),
      ...Object.fromEntries(
        shown.map((place, i) => [
          `y${i}`,
          valueAxis('', {
            stack: 'places',
            weight: -i,
            max: topOf(place, height),
            ticks: { maxTicksLimit: 4, padding: 6 },
            afterFit: (axis: { width: number }) => {
              axis.width = 44;
            },
          }),
        ]),
      ),
    },
    plugins: [
      drawing('names', (context, live) => {
        const { left, right } = live.chartArea;
        context.font = font(SIZE.small, '600');
        context.textBaseline = 'middle';
        for (const [i, place] of shown.entries())
          onWhite(
            context,
            fit(nameOf(place), right - left - 8, SIZE.small, '600'),
            left + 4,
            axisOf(live, `y${i}`).top + NAME / 2,
          );
      }),
    ],
  });
}

const nameOf = (place: Place | undefined): string =>
  place === undefined ? '' : place.kind === 'lane' ? `${place.place} (lane)` : place.place;

/** How high its axis goes, so that nothing runs through its name. */
function topOf({ real, high }: Place, height: number): number {
  const most = Math.max(1, ...real, ...high);
  return Math.ceil(most / (1 - NAME / (height - 10)));
}

const away = (measure: Compared | undefined): number =>
  measure !== undefined && isJudged(measure) ? Math.abs(positionOf(measure)) : -1;

function finding(measures: readonly Compared[]): string {
  const judged = measures.filter(isJudged),
    [first, ...others] = judged.filter(({ agrees }) => !agrees).toSorted((a, b) => away(b) - away(a));
  if (first === undefined)
    return judged.length === 1
      ? `Units inside ${judged[0]?.of ?? ''} agree on average`
      : `Units inside agree on average at all ${exact(judged.length)} sites and lanes`;
  return (
    `${first.of} holds ${number(first.real)} units in the log, ${number(first.simulated.middle)} in the model` +
    (others.length > 0 ? `; ${exact(others.length)} more do not agree` : '')
  );
}
