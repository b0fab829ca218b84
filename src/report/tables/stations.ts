import type { StationResult } from '../../study/sections/stations.js';
import type { Results } from '../../study/simulate/results.js';
import { type Column, columns, type PageTable } from '../columns.js';
import { judgedFirst, sameAs } from '../constraint.js';
import { percent, rounded } from '../sheets/cells.js';
import { STATE_ORDER } from '../style.js';
import { judgedText } from './bottlenecks.js';

/** In the weeks that are judged, the working share of the whole run beside; without such weeks that alone. */
export function stations(results: Results, interval: string): PageTable {
  const judged = results.constraint?.judged ?? null,
    rows = judged?.stations ?? results.stations,
    seen = judged === null ? '' : judgedText(judged, results.replications);
  return {
    id: 'stations',
    title: 'Stations',
    note:
      `Share of place time in per cent, each row adds to 100${judged === null ? '' : `; over ${seen}`}; ` +
      `${interval}.`,
    ...columns(rows, [
      ['Station', 'name'],
      ['Site', 'site'],
      ['Places', 'places'],
      ...STATE_ORDER.filter((state) => rows.some(({ share }) => share[state] !== undefined)).map(
        (state): Column<StationResult> => [
          `${state}, %`,
          ({ share: { [state]: share } }) => (share === undefined ? '' : percent(share)),
        ],
      ),
      ...(judged === null ? [] : [workingWhole(results)]),
      ['Visits per unit', 'visitsPerUnit'],
    ]),
  };
}

const workingWhole = ({ stations: whole }: Results): Column<StationResult> => [
  'working over the whole run, %',
  (station) => {
    const same = sameAs(station, whole);
    return same === undefined ? '' : percent(same.share.working);
  },
];

export function lanes(results: Results, interval: string): PageTable {
  return {
    id: 'lanes',
    title: 'Lanes',
    note:
      'Fill: share of truck spaces used; wait: for a truck; busy: away and not blocked; blocked: waiting ' +
      `for room at the other end; free: at base; ${interval}.`,
    ...columns(results.lanes, [
      ['Lane', 'name'],
      ['Trips', 'trips'],
      ['Fill, %', 'fill', percent],
      ['Wait, h', 'waitHours'],
      ...judgedFirst('Trucks busy, %', results.constraint?.judged?.lanes, ({ truckBusy }) => truckBusy),
      ['Blocked, %', 'truckBlocked', percent],
      ['Free, %', 'truckFree', percent],
    ]),
  };
}

export function feeders(results: Results, interval: string): PageTable {
  return {
    id: 'feeders',
    title: 'Feeders',
    note: `Out: share of time without a finished sub-assembly; ${interval}.`,
    ...columns(results.feeders, [
      ['Feeder', 'name'],
      ['Target stock', ({ target }) => rounded(target)],
      ['Mean stock', 'stock'],
      ...judgedFirst('Out, % of time', results.constraint?.judged?.feeders, ({ out }) => out),
    ]),
  };
}
