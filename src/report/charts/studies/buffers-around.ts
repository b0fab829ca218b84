import type { PlacesAt } from '../../../study/buffers/around/results.js';
import { cliffsOf } from '../../../study/buffers/around/words.js';
import type { BufferResults } from '../../../study/buffers/results.js';
import { capital, count, exact, number } from '../../../study/format.js';
import { negated } from '../../../study/statistics/estimate.js';
import { faded, PALETTE } from '../../style.js';
import { type Chart, chart, type Dataset, intervalWords } from '../chart.js';
import { band, line } from '../datasets.js';
import { toldOf } from '../figures.js';
import { foremost } from '../foremost.js';
import { type PanelScale, Panels } from '../panels.js';

/** Places more and fewer, the same in each panel. */
const STEPS = [-3, -2, -1, 0, 1, 2, 3];
/** Where something loses so many times this share, what loses more than it runs out of its panel. */
const FAR_BELOW = 0.2,
  TOO_FAR = 2;

const labelOf = (by: number): string =>
  by === 0 ? 'as chosen' : `${Math.abs(by)} ${by < 0 ? 'fewer' : 'more'}`;

/**
 * What is shipped more with a few places more and fewer at each spot, a panel a spot, all on one scale; null
 * where nothing was looked at.
 */
export function placeByPlaceChart(results: BufferResults): Chart | null {
  const { placeByPlace, unit, zone, level } = results,
    all = placeByPlace?.spots.filter(({ points }) => points.length > 0) ?? [];
  if (placeByPlace === null || all.length === 0) return null;
  const { shown: spots, note } = foremost(all, mostChange, 'spots', 'where a place changes most'),
    matters = zone * placeByPlace.rate,
    { isCut, ...scale } = scaleOf(spots, placeByPlace.rate, matters),
    interval = intervalWords(placeByPlace.eachLevel);
  const panels = new Panels(
    spots.map((spot) => ({
      name: spot.name,
      foot: STEPS.map((by) => placesAt(spot, by)),
      values: STEPS.map((by) => (by === 0 ? 0 : (pointAt(spot, by)?.more.mean ?? null))),
    })),
    scale,
    STEPS.indexOf(0),
    matters,
  );
  return chart({
    finding: finding(results),
    how:
      `${capital(unit)} more than the chosen layout ships, with other places at one spot; below: places ` +
      'there. ' +
      `Band: intervals that all hold together, ${number(100 * level)} %, ` +
      `${count(placeByPlace.replications, 'build')}. Red: a cliff. Grey: within ${number(100 * zone)} %.` +
      `${isCut ? ' In figures: what runs out of the scale.' : ''}${note}`,
    bodyHeight: panels.bodyHeight,
    type: 'line',
    data: {
      labels: STEPS.map(labelOf),
      datasets: spots.flatMap((spot, i) => curveOf(spot, interval, scale.low, panels.of(i))),
    },
    scales: panels.axes(`more ${unit}`),
    plugins: panels.plugins,
  });
}

const mostChange = ({ points }: PlacesAt): number =>
  Math.max(...points.map(({ more }) => Math.abs(more.mean)));

const pointAt = ({ points }: PlacesAt, by: number) => points.find((point) => point.by === by);

function placesAt(spot: PlacesAt, by: number): string | null {
  const places = by === 0 ? spot.chosen : pointAt(spot, by)?.places;
  return places === undefined ? null : exact(places);
}

function scaleOf(
  spots: readonly PlacesAt[],
  rate: number,
  matters: number,
): PanelScale & { readonly isCut: boolean } {
  const values = spots.flatMap(({ points }) =>
      points.flatMap(({ more: { mean, low, high } }) => [low ?? mean, high ?? mean]),
    ),
    lowest = Math.min(-2 * matters, ...values),
    isCut = lowest < -TOO_FAR * FAR_BELOW * rate,
    low = isCut ? -FAR_BELOW * rate : lowest,
    highest = Math.max(2 * matters, ...values),
    room = 0.05 * (highest - low);
  return { low: low - room, high: highest + room, isCut };
}

/** @param low what lies below it has its figure, and no point that is cut */
function curveOf(spot: PlacesAt, interval: string, low: number, where: object): Dataset[] {
  const values = (of: 'mean' | 'low' | 'high'): number[] =>
    STEPS.map((by) => {
      const more = pointAt(spot, by)?.more;
      return by === 0 ? 0 : (more?.[of] ?? more?.mean ?? NaN);
    });
  const colours = STEPS.map((by) =>
    pointAt(spot, by)?.standing === 'cliff' ? PALETTE.vermillion : PALETTE.blue,
  );
  return [
    line(spot.name, values('mean'), PALETTE.blue, 2.2, {
      ...where,
      pointRadius: STEPS.map((by) => (by === 0 ? 6 : (pointAt(spot, by)?.more.mean ?? NaN) < low ? 0 : 3.8)),
      pointBackgroundColor: colours,
      pointBorderColor: colours,
    }),
    ...band(
      [`${spot.name}, ${interval} low`, values('low')],
      [`${spot.name}, ${interval} high`, values('high')],
      faded(PALETTE.blue, 0.2),
      where,
    ),
  ];
}

function finding({ placeByPlace, unit, zone }: BufferResults): string {
  const cliffs = placeByPlace === null ? [] : cliffsOf(placeByPlace),
    [worst] = cliffs.sort((a, b) => a.point.more.mean - b.point.more.mean);
  if (worst === undefined)
    return `No cliff: one place more or fewer does not surely lose ${number(300 * zone)} % or more`;
  const { at, point } = worst;
  return (
    `One place ${point.by < 0 ? 'fewer' : 'more'} at ${at.name} ` +
    (point.nothingIn > 0
      ? `ships nothing in ${exact(point.nothingIn)} of ${count(point.more.n, 'replication')}`
      : `loses ${toldOf(negated(point.more), unit)}`)
  );
}
