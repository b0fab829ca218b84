import { number } from '../../study/format.js';
import type { StationResult } from '../../study/sections/stations.js';
import type { Results } from '../../study/simulate/results.js';
import { type Column, columns, type PageTable, percent } from '../columns.js';
import { STATE_ORDER } from '../style.js';

export function stations(results: Results, interval: string): PageTable {
  return {
    id: 'stations',
    title: 'Stations',
    note: `Share of place time in per cent, each row adds to 100; ${interval}.`,
    ...columns(results.stations, [
      ['Station', 'name'],
      ['Site', 'site'],
      ['Places', 'places'],
      ...STATE_ORDER.map(
        (state): Column<StationResult> => [`${state}, %`, ({ share }) => percent(share[state])],
      ),
      ['Visits per unit', 'visitsPerUnit'],
    ]),
  };
}

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
      ['Trucks busy, %', 'truckBusy', percent],
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
      ['Target stock', ({ target }) => number(target)],
      ['Mean stock', 'stock'],
      ['Out, % of time', 'out', percent],
    ]),
  };
}
